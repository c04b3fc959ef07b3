import type { Feature } from '../sheet/index.js';
import type { FingerStrikes } from './fingerStrikes.js';
import { clearAtStop, clearMovedBack } from './gaugeClearance.js';
import type { Setting } from './setting.js';
import { RETRACTS, type StopChoice, sameFeature } from './stopChoice.js';
import { heights, mostApart, span, taperedTargets } from './stopTargets.js';
import type { ToolClearance } from './toolClearance.js';

/** Shares of the room along an edge by which a finger is set in from its end, the widest stance first. */
const INSETS = [[0, 0], [0.25, 0], [0, 0.25], [0.25, 0.25]] as const;

/**
 * A stop for two fingers on X axes of their own against an edge that runs at a slant to the bed; each touches with the corner of its face
 * that meets the edge first. Null where no such edge is in reach. Asked for only where nothing square can be touched.
 */
export const taperedStop = (setting: Setting, ways: Pick<ToolClearance, 'wayIn' | 'wayOut'>, strikes: FingerStrikes, without: readonly Feature[]): StopChoice | null => {
  const { machine: { gauge } } = setting;
  const [xLeast, xMost] = span(gauge.x);
  const { width } = gauge.finger;
  const inReach = (x: number): boolean => x >= xLeast && x <= xMost;
  for (const target of taperedTargets(setting)) {
    if (without.some((f) => sameFeature(f, target.feature))) continue;
    const taper = target.taper!;
    const [from, to] = [target.along[0] + width / 2, target.along[1] - width / 2];
    for (const face of gauge.finger.faces) {
      for (const [left, right] of INSETS) {
        const places = [from + left * (to - from), to - right * (to - from)] as const;
        const spread = places[1] - places[0];
        const skew = taper * spread;
        if (spread < gauge.apart || spread > mostApart(gauge) || Math.abs(skew) > gauge.ownX!.most) continue;
        // the corner that meets the edge first lies on the side to which the edge runs back
        const touching = target.back + taper * (places[0] - target.along[0]) + (Math.abs(taper) * width) / 2;
        const x = touching - face.behind;
        const xs = [x, x + skew];
        if (!xs.every(inReach)) continue;
        for (const r of heights(target, face, setting)) {
          if (!xs.every((own) => clearAtStop(setting, own, r, ways.wayIn.opening))) continue;
          const free = (by: number, kind: 'arriving' | 'bending'): boolean => places.every((z, i) => {
            const { where, beam } = strikes(target, xs[i]! + by, r, kind, by > 0);
            return !beam && where.every(([p, q]) => z + width / 2 <= p || z - width / 2 >= q);
          });
          if (!free(0, 'arriving')) continue;
          const retract = RETRACTS.find((by) => (by === 0 || (gauge.x.drive === 'powered' && xs.every((own) => inReach(own + by))))
            && xs.every((own) => clearMovedBack(setting, own + by, r, ways.wayOut.opening)) && free(by, 'bending'));
          if (retract === undefined) continue;
          return {
            kind: 'edge', plate: target.view.plate, face: face.name, x: touching, axisX: x, r, z: places, retract, spread, skew,
            feature: target.feature, height: 0, touching: width,
          };
        }
      }
    }
  }
  return null;
};
