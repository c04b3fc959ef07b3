import { length3, sub3 } from '../../geometry/index.js';
import { SAME_POINT } from '../tolerances.js';
import type { Brep, EdgeUse, Face } from './brep.js';
import { signedFaceArea } from './faceArea.js';

/** Whether each edge of a loop begins where the one before ends; a loop turned inside out is listed against its run. */
const runsOn = (loop: readonly EdgeUse[], { edges }: Brep): boolean =>
  loop.every(({ edge, forward }, i) => {
    const next = loop[(i + 1) % loop.length]!;
    const [here, there] = [edges[edge]!, edges[next.edge]!];
    return length3(sub3(forward ? here.to : here.from, next.forward ? there.from : there.to)) < SAME_POINT;
  });

/** Whether the loops of a plane or cylinder have the face to their left. */
const liesLeft = ({ surface, loops }: Face, { edges }: Brep): boolean => (signedFaceArea(surface, loops, edges) ?? 1) > 0;

/**
 * Whether a solid as a file writes it can be taken without the kernel's mending: every edge bounds two faces, once each way, every loop
 * closes, every face lies to the left of its loops, and all of it holds metal. Such a boundary has its normals outwards.
 */
export const isSound = (brep: Brep): boolean => {
  const [uses, forward] = [brep.edges.map(() => 0), brep.edges.map(() => 0)];
  for (const use of brep.faces.flatMap((face) => face.loops.flat())) {
    uses[use.edge]!++;
    if (use.forward) forward[use.edge]!++;
  }
  return (
    brep.volume > 0 &&
    uses.every((n, edge) => n === 2 && forward[edge] === 1) &&
    brep.faces.every((face) => face.loops.length > 0 && face.loops.every((loop) => loop.length > 0 && (runsOn(loop, brep) || runsOn([...loop].reverse(), brep))) && liesLeft(face, brep))
  );
};
