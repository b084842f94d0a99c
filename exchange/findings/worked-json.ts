import type { Amount, Eye, Input, Inputs, Origin, Worked, WorkedUnit, WorkedValue } from '../../orders';
import { code, json, list, onceMade, plain, plainPower, said } from './plain';

/**
 * A worked-out figure as the text of a `WorkedJson`. Most of that are the same few texts again and again, so what stands
 * between two values is kept in one piece: the fewer pieces, the sooner they are put together.
 */
export function workedInJson({ what, eye, values, refused, formula, inputs, source, assumed }: Worked): string {
  const why = refused ? `,"refused":"${refused}"` : '';
  const taken = assumed.length === 0 ? '[]}' : `${list(assumed, said)}}`;
  return (
    OF_EYE[eye ?? 'pair'](what) +
    amountsInJson(values) +
    why +
    byFormula(formula) +
    inputsInJson(inputs) +
    from(source) +
    taken
  );
}

const ofEye = (eye: Eye | null) => onceMade((what) => `{"what":"${what}","eye":${code(eye)},"values":`);
const OF_EYE = { R: ofEye('R'), L: ofEye('L'), pair: ofEye(null) };
const byFormula = onceMade((formula) => `,"formula":${json(formula)},"inputs":`);
const from = onceMade((source) => `,"source":${json(source)},"assumed":`);

function amountsInJson(amounts: Worked['values']): string {
  let text = '';
  for (const name in amounts) {
    const { value, unit } = amounts[name] as Amount;
    text += (text === '' ? first(name) : next(name)) + valueInJson(value) + UNITS[unit ?? 'none'];
  }
  return text === '' ? '{}' : `${text}}`;
}

function inputsInJson(inputs: Inputs): string {
  let text = '';
  for (const name in inputs) {
    const { value, unit, from } = inputs[name] as Input;
    text += (text === '' ? first(name) : next(name)) + valueInJson(value) + ORIGINS[from][unit ?? 'none'];
  }
  return text === '' ? '{}' : `${text}}`;
}

const first = onceMade((name) => `{${json(name)}:{"value":`);
const next = onceMade((name) => `,${json(name)}:{"value":`);

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
