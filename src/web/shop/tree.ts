/** Plain data as it is typed: any field may be wrong until the shop's parser has read it. */
export type Tree = Readonly<Record<string, unknown>>;

export const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && !Array.isArray(value);

/** What stands at a path ('gauge.x.min', 'beam.0'). */
export const at = (data: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (typeof value === 'object' && value !== null ? (value as Tree)[key] : undefined), data);

/** The data with one field set, or taken out by undefined, with what held nothing else; all else shared. */
export const withAt = (data: unknown, path: string, value: unknown): unknown => {
  const [key, ...rest] = path.split('.');
  const inner = rest.length === 0 ? value : withAt(at(data, key!), rest.join('.'), value);
  if (Array.isArray(data)) return data.map((old: unknown, i) => (i === Number(key) ? inner : old));
  const tree = isTree(data) ? data : {};
  const gone = inner === undefined || (value === undefined && isTree(inner) && Object.keys(inner).length === 0);
  if (gone) return Object.fromEntries(Object.entries(tree).filter(([name]) => name !== key));
  return { ...tree, [key!]: inner };
};
