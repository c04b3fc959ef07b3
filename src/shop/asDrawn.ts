const isCorner = (value: unknown): value is { readonly x: number; readonly y: number; readonly bulge: number } =>
  typeof value === 'object' && value !== null && 'x' in value && 'y' in value && 'bulge' in value;

/** Cross-sections as this program prints them, corner by corner, in the words that the shop's parsers take; all else as it is. */
export const asDrawn = (value: unknown): unknown => {
  if (Array.isArray(value)) {
    const all: readonly unknown[] = value;
    return all.length > 0 && all.every(isCorner)
      ? { shape: 'contour', corners: all.map(({ x, y, bulge }) => (bulge === 0 ? [x, y] : [x, y, bulge])) }
      : all.map(asDrawn);
  }
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, asDrawn(inner)]));
};
