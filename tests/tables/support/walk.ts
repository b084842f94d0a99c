export interface Found {
  readonly path: string;
  readonly node: Readonly<Record<string, unknown>>;
}

/** Every object inside a piece of data, with the path to it. */
export function objectsIn(data: unknown, path = ''): Found[] {
  if (Array.isArray(data)) return data.flatMap((item, at) => objectsIn(item, `${path}[${at}]`));
  if (typeof data !== 'object' || data === null) return [];
  const node = data as Readonly<Record<string, unknown>>;
  const below = Object.entries(node).flatMap(([key, value]) => objectsIn(value, path === '' ? key : `${path}.${key}`));
  return [{ path, node }, ...below];
}
