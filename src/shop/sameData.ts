const isTree = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null;

/** Whether two pieces of plain data say the same, in whatever order their fields stand; a field that is undefined is not there. */
export const sameData = (a: unknown, b: unknown): boolean => {
  if (!isTree(a) || !isTree(b)) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((value, i) => sameData(value, b[i]));
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].every((key) => sameData(a[key], b[key]));
};
