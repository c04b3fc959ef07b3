/** A stretch of a scene's axis shown on the paper from `at` on, `scale` mm of paper for a mm. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  /** -1 where the axis runs against the paper's (up against down). */
  readonly way: 1 | -1;
  readonly scale: number;
}

export const onStretch = (s: Stretch, v: number): number => s.at + s.way * (v - s.from) * s.scale;

/** mm of paper left open where an axis is broken. */
export const BREAK_GAP = 3;

/** The paper that the stretches take up at a scale. */
export const brokenLength = (parts: readonly (readonly [number, number])[], scale: number): number =>
  parts.reduce((sum, [from, to]) => sum + (to - from) * scale, 0) + BREAK_GAP * (parts.length - 1);

/** Lays the stretches one after another from `at` on. */
export const layOut = (
  parts: readonly (readonly [number, number])[], at: number, way: 1 | -1, scale: number,
): Stretch[] => {
  let here = at;
  return parts.map(([from, to]) => {
    const stretch: Stretch = { from, to, at: here, way, scale };
    here += way * ((to - from) * scale + BREAK_GAP);
    return stretch;
  });
};

/** Where a value lies on the paper: on its stretch, or carried on from the nearest. */
export const place = (stretches: readonly Stretch[], v: number): number => {
  const within = stretches.find((s) => v >= s.from && v <= s.to);
  if (within) return onStretch(within, v);
  const before = [...stretches].reverse().find((s) => v > s.to);
  return onStretch(before ?? stretches[0]!, v);
};
