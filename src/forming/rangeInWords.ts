interface Range {
  readonly min: number;
  readonly max: number;
}

/** How figures are to be shown, with their unit; `bare` is a length without it. */
export interface RangeFigures {
  readonly angle: (degrees: number) => string;
  readonly length: (mm: number) => string;
  readonly bare: (mm: number) => string;
}

/** "Bend angle 88.9° to 91.2°, peak force 120 to 155 N/mm, each flange -0.04 to 0.05 mm": a bend at the ends of the stock's range. */
export const rangeInWords = (
  { bendAngleReleased, peakForcePerLength, flangeChange }: { readonly bendAngleReleased: Range; readonly peakForcePerLength: Range; readonly flangeChange: Range },
  { angle, length, bare }: RangeFigures,
): string =>
  `Bend angle ${angle(bendAngleReleased.min)} to ${angle(bendAngleReleased.max)}, peak force ${peakForcePerLength.min.toFixed(0)} to ${peakForcePerLength.max.toFixed(0)} N/mm, ` +
  `each flange ${bare(flangeChange.min)} to ${length(flangeChange.max)}`;
