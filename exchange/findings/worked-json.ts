import type { Amount, Worked, WorkedValue } from '../../orders';
import { plainPower } from './plain';
import type { AmountJson, InputJson, WorkedJson } from './shape';

/** A worked-out figure for JSON; its figures are rounded already. */
export function workedInJson({ what, eye, values, refused, formula, inputs, source, assumed }: Worked): WorkedJson {
  return {
    what,
    eye,
    values: mapped(values, amountInJson),
    ...(refused ? { refused } : {}),
    formula,
    inputs: mapped(inputs, (input): InputJson => ({ ...amountInJson(input), from: input.from })),
    source,
    assumed,
  };
}

const amountInJson = ({ value, unit }: Amount): AmountJson => ({ value: valueInJson(value), unit });

/** The axis of a sphere is a convention and stays out. */
const valueInJson = (value: WorkedValue): AmountJson['value'] =>
  typeof value === 'object' && 'sphere' in value ? plainPower(value) : value;

const mapped = <A, B>(record: Readonly<Record<string, A>>, to: (one: A) => B): Record<string, B> =>
  Object.fromEntries(Object.entries(record).map(([name, one]) => [name, to(one)]));
