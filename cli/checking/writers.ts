import { type FindingsWriter, jsonLinesWriter, jsonWriter, junitWriter, sarifWriter, textWriter } from '../../exchange';
import { inkFor } from '../ink';
import type { CheckFormat, Wanted } from './task';

const WRITERS: Readonly<Record<CheckFormat, (wanted: Wanted) => FindingsWriter>> = {
  text: ({ painted }) => textWriter(inkFor(painted)),
  json: jsonWriter,
  jsonl: jsonLinesWriter,
  sarif: sarifWriter,
  junit: ({ strict }) => junitWriter(strict),
};

export const writerFor = (wanted: Wanted): FindingsWriter => WRITERS[wanted.format](wanted);
