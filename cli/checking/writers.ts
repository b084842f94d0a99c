// From their own files: through the face of the room the start would load every format there is.
import { jsonWriter } from '../../exchange/findings/json';
import { jsonLinesWriter } from '../../exchange/findings/jsonl';
import { junitWriter } from '../../exchange/findings/junit';
import { sarifWriter } from '../../exchange/findings/sarif';
import { textWriter } from '../../exchange/findings/text';
import type { FindingsWriter } from '../../exchange/findings/writer';
import { inkFor } from '../ink';
import type { CheckFormat, Wanted } from './task';

const WRITERS: Readonly<Record<CheckFormat, (wanted: Wanted) => FindingsWriter>> = {
  text: ({ painted }) => textWriter(inkFor(painted)),
  json: jsonWriter,
  jsonl: jsonLinesWriter,
  sarif: sarifWriter,
  junit: () => junitWriter(),
};

export const writerFor = (wanted: Wanted): FindingsWriter => WRITERS[wanted.format](wanted);
