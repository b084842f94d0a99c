import type { Scene } from './scene';

/** Heights read in both lenses, less the ordered ones, millimetres, or null where one of them is not known. */
export function heightErrors({
  order,
  values,
}: Pick<Scene, 'order' | 'values'>): { readonly R: number; readonly L: number } | null {
  const { R, L } = values.figures.height ?? {};
  const [right, left] = [order.lenses.R.height, order.lenses.L.height];
  return R && L && right && left ? { R: R.value - right.value, L: L.value - left.value } : null;
}
