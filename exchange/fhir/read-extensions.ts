/** Facts in extensions of ours; those of others are told. */
import type { Eye } from '../../orders';
import { checkedFigure } from '../parts/checked';
import { PART_UNITS, type PartCode, type PartUnit } from '../parts/part';
import { inWords, isList, isNumber, isObject, type Json } from '../safe-json';
import { extensionOf, ucumOf } from './codes';
import { NotTaken, type Taking } from './taking';

export function readExtensions(
  list: Json,
  path: string,
  eye: Eye | null,
  codes: readonly PartCode[],
  taking: Taking,
): void {
  if (list === undefined) return;
  for (const [at, one] of (isList(list) ? list : [list]).entries()) {
    const code = codes.find((known) => isObject(one) && one.url === extensionOf(known));
    const value = code && isObject(one) ? valueIn(one.valueQuantity, code) : undefined;
    if (!code || value === undefined) taking.lose(`${path}extension[${at}] ${inWords(one)}`, 'no-place', eye);
    else taking.fact(code, eye, value);
  }
}

function valueIn(quantity: Json, code: PartCode): number | undefined {
  const unit = PART_UNITS[code] as Exclude<PartUnit, 'words'>;
  if (!isObject(quantity) || quantity.code !== ucumOf(unit) || !isNumber(quantity.value)) return undefined;
  const checked = checkedFigure(code, quantity.value.value);
  if ('error' in checked) throw new NotTaken(checked.error);
  return checked.value;
}
