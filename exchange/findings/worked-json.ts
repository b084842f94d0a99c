import type { Amount, Input, Inputs, Worked, WorkedValue } from '../../orders';
import { code, list, plain, plainPower, said } from './plain';

/** A worked-out figure as the text of a `WorkedJson`. */
export function workedInJson({ what, eye, values, refused, formula, inputs, source, assumed }: Worked): string {
  const why = refused ? `,"refused":"${refused}"` : '';
  return `{"what":"${what}","eye":${code(eye)},"values":${amountsInJson(values)}${why},"formula":${said(formula)},"inputs":${inputsInJson(inputs)},"source":${said(source)},"assumed":${list(assumed, said)}}`;
}

function amountsInJson(amounts: Worked['values']): string {
  let text = '';
  for (const name in amounts) {
    const amount = amounts[name] as Amount;
    text += `${text === '' ? '{' : ','}${said(name)}:{${amountInJson(amount)}}`;
  }
  return text === '' ? '{}' : `${text}}`;
}

function inputsInJson(inputs: Inputs): string {
  let text = '';
  for (const name in inputs) {
    const input = inputs[name] as Input;
    text += `${text === '' ? '{' : ','}${said(name)}:{${amountInJson(input)},"from":"${input.from}"}`;
  }
  return text === '' ? '{}' : `${text}}`;
}

const amountInJson = ({ value, unit }: Amount): string => `"value":${valueInJson(value)},"unit":${code(unit)}`;

function valueInJson(value: WorkedValue): string {
  if (typeof value === 'number') return plain(value);
  if ('sphere' in value) return plainPower(value);
  if ('meridian' in value) return `{"meridian":${plain(value.meridian)},"power":${plain(value.power)}}`;
  return `{"in":${plain(value.in)},"up":${plain(value.up)}}`;
}
