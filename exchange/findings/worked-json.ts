import type { Amount, Input, Inputs, Origin, Worked, WorkedUnit, WorkedValue } from '../../orders';
import { code, json, list, plain, plainPower, said } from './plain';

/** A worked-out figure as the text of a `WorkedJson`. */
export function workedInJson({ what, eye, values, refused, formula, inputs, source, assumed }: Worked): string {
  const why = refused ? `,"refused":"${refused}"` : '';
  return `{"what":"${what}","eye":${code(eye)},"values":${amountsInJson(values)}${why},"formula":${said(formula)},"inputs":${inputsInJson(inputs)},"source":${said(source)},"assumed":${list(assumed, said)}}`;
}

function amountsInJson(amounts: Worked['values']): string {
  let text = '';
  for (const name in amounts) {
    const { value, unit } = amounts[name] as Amount;
    text += opening(name) + valueInJson(value) + UNITS[unit ?? 'none'];
  }
  return `{${text.slice(1)}}`;
}

function inputsInJson(inputs: Inputs): string {
  let text = '';
  for (const name in inputs) {
    const { value, unit, from } = inputs[name] as Input;
    text += opening(name) + valueInJson(value) + ORIGINS[from][unit ?? 'none'];
  }
  return `{${text.slice(1)}}`;
}

const OPENINGS = new Map<string, string>();

/** What stands before a value, a comma first. There are few names, and hundreds of values in an order. */
function opening(name: string): string {
  let known = OPENINGS.get(name);
  if (known === undefined) {
    known = `,${json(name)}:{"value":`;
    OPENINGS.set(name, known);
  }
  return known;
}

/** What stands behind a value: its unit, and for an input where it came from. */
const endings = (more: string): Readonly<Record<Exclude<WorkedUnit, null> | 'none', string>> => ({
  none: `,"unit":null${more}}`,
  D: `,"unit":"D"${more}}`,
  mm: `,"unit":"mm"${more}}`,
  deg: `,"unit":"deg"${more}}`,
  prism: `,"unit":"prism"${more}}`,
  percent: `,"unit":"percent"${more}}`,
  g: `,"unit":"g"${more}}`,
  'g/cm3': `,"unit":"g/cm3"${more}}`,
});

const UNITS = endings('');
const ORIGINS: Readonly<Record<Origin, typeof UNITS>> = {
  ordered: endings(',"from":"ordered"'),
  materials: endings(',"from":"materials"'),
  worked: endings(',"from":"worked"'),
  assumed: endings(',"from":"assumed"'),
};

function valueInJson(value: WorkedValue): string {
  if (typeof value === 'number') return plain(value);
  if ('sphere' in value) return plainPower(value);
  if ('meridian' in value) return `{"meridian":${plain(value.meridian)},"power":${plain(value.power)}}`;
  return `{"in":${plain(value.in)},"up":${plain(value.up)}}`;
}
