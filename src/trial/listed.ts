/** "b1", "b1 and b2", "b1, b2 and b3". */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]!}`;
