import { useMemo, useState } from 'react';
import type { Developed, Feature } from '../../sheet/index.js';

import { SheetBody } from '../scene/bodies.js';
import { extentOf } from '../scene/extent.js';
import { largestPlate, letterSpots } from '../scene/letterSpot.js';
import { type Lit, flatPlates, sheetMesh } from '../scene/sheetMesh.js';
import { type Ray, pickFeature } from '../scene/pickFeature.js';
import { View3d } from '../scene/View3d.js';
import { Drawing } from '../sheet/Drawing.js';

interface FoldViewProps {
  /** Of a part that is kept: its drawing stands in where there is no WebGL. */
  readonly id?: string;
  readonly name: string;
  readonly sheet: Developed;
  readonly lit: Lit;
  /** A face or edge was touched; while undefined, touching does nothing. */
  readonly pick?: ((feature: Feature) => void) | undefined;
}

const FROM = { round: 35, up: 32 } as const;
/** Hatch lines across the largest part that the view can show. */
const HATCHES = 34;
/** An edge within so many pixels of the finger goes before the face under it. */
const EDGE_PIXELS = 9;

const anglesAt = (sheet: Developed, share: number): number[] => sheet.part.bends.map(({ bendAngle }) => bendAngle * share);

/** The part in space, between flat and folded. */
export const FoldView = ({ id, name, sheet, lit, pick }: FoldViewProps) => {
  const [share, setShare] = useState(1);
  const plates = useMemo(() => flatPlates(sheet), [sheet]);
  const spots = useMemo(() => letterSpots(sheet.part), [sheet]);
  const root = largestPlate(sheet.part);
  const mesh = useMemo(
    () => sheetMesh(sheet, plates, anglesAt(sheet, share), root, undefined, lit),
    [sheet, plates, share, root, lit],
  );
  // both ends of the slider's way fit in, so that the view does not jump
  const extent = useMemo(() => extentOf(FROM, ...[0, 0.5, 1].map((s) => sheetMesh(sheet, plates, anglesAt(sheet, s), root).edges)), [sheet, plates, root]);
  const touch = (ray: Ray, pixel: number): void => {
    const feature = pickFeature(sheet, mesh.poses, ray, EDGE_PIXELS * pixel);
    if (feature) pick?.(feature);
  };
  return (
    <figure className={pick ? 'fold-view picking-view' : 'fold-view'}>
      <View3d label={`${name} in space, ${share === 1 ? 'folded' : share === 0 ? 'flat' : 'partly folded'}.`} extent={extent} from={FROM} touch={pick && touch} instead={id === undefined ? <p>This browser cannot draw in space.</p> : <Drawing path={`/api/parts/${encodeURIComponent(id)}/picture.svg`} />}>
        <SheetBody mesh={mesh} spots={spots} thickness={sheet.part.thickness} pitch={(2 * extent.radius) / HATCHES} />
      </View3d>
      <div className="slider no-print">
        <button type="button" onClick={() => setShare(0)} aria-pressed={share === 0}>Flat</button>
        <label><span className="hidden">From flat to folded</span>
          <input type="range" min={0} max={100} value={Math.round(share * 100)} aria-valuetext={`${Math.round(share * 100)} % of every bend angle`} onChange={(event) => setShare(Number(event.target.value) / 100)} />
        </label>
        <button type="button" onClick={() => setShare(1)} aria-pressed={share === 1}>Folded</button>
      </div>
      <figcaption className="small soft view-caption">
        <span>A side plain, B side hatched. Drag or use the arrow keys to turn it.</span>
        {id !== undefined && <a className="button no-print" href={`/api/parts/${encodeURIComponent(id)}/part.step?fold=${Math.round(share * 100) / 100}`} download>STEP, folded as shown</a>}
      </figcaption>
    </figure>
  );
};
