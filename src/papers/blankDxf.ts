import { Colors, DxfWriter, LWPolylineFlags, Units, point2d, point3d } from '@tarikjabiri/dxf';
import type { Contour } from '../geometry/index.js';
import type { Blank } from '../sheet/index.js';
import { bendLineWords, blankPlaced } from './blankPlaced.js';

/** Decimals of angles and radii: what is read back is the same bend within a part in ten thousand of what a brake can tell. */
const DIGITS = 6;
/** Lettering on the bend lines, mm. */
const TEXT_HEIGHT = 3;

const contour = (dxf: DxfWriter, ring: Contour): void => {
  dxf.addLWPolyline(
    ring.map((v) => ({ point: point2d(v.x, v.y), ...(v.bulge === 0 ? {} : { bulge: v.bulge }) })),
    { flags: LWPolylineFlags.Closed, layerName: 'CUT' },
  );
};

/**
 * The blank as a DXF drawing in millimetres, seen from its A side, length along x: outline and holes on layer CUT as
 * polylines with true arcs, bend lines on BEND-A (long dashes) and BEND-B (short dashes) with id, side, bend angle and
 * inside radius (the words that `readDxfPart` reads back), and a note on layer NOTE: thickness, and the rule by which the blank is nominal.
 */
export const blankDxf = (blank: Blank, options: { readonly rule?: string } = {}): string => {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  // element lengths in mm: a dash, a gap
  dxf.addLType('LONG_DASH', '____  ____  ____', [8, -2]);
  dxf.addLType('SHORT_DASH', '_ _ _ _ _ _', [2.5, -2]);
  dxf.addLayer('CUT', Colors.White);
  dxf.addLayer('BEND-A', Colors.Blue, 'LONG_DASH');
  dxf.addLayer('BEND-B', Colors.Cyan, 'SHORT_DASH');
  dxf.addLayer('NOTE', Colors.Green);
  const { outline, holes, bendLines } = blankPlaced(blank);
  for (const ring of [outline, ...holes]) contour(dxf, ring);
  for (const line of bendLines) {
    const layerName = `BEND-${line.direction}`;
    const [from, to] = line.from[0] <= line.to[0] ? [line.from, line.to] : [line.to, line.from];
    dxf.addLine(point3d(from[0], from[1]), point3d(to[0], to[1]), { layerName });
    const rotation = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
    dxf.addText(point3d((from[0] + to[0]) / 2, (from[1] + to[1]) / 2), TEXT_HEIGHT, `${bendLineWords(line, '%%d', DIGITS)}, inside radius ${Number(line.insideRadius.toFixed(DIGITS))}`, { layerName, rotation });
  }
  const nominal = options.rule === undefined ? '' : ` Nominal by rule ${options.rule}.`;
  dxf.addText(point3d(0, -3 * TEXT_HEIGHT), TEXT_HEIGHT, `${blank.name}, ${blank.thickness} mm thick, A side up.${nominal}`, { layerName: 'NOTE' });
  return dxf.stringify();
};
