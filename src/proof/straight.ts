import { type Body, sweptSolid } from './body.js';
import type { Kernel, Manifold } from './engine.js';
import { type Question, boxLook, depthOf, lookAt } from './pair.js';
import type { StraightPhase } from './phase.js';
import { type StepLog, find, gapSentence, mm, noteGap, sizes, tooNear } from './stepLog.js';
import { NEAR } from './tolerances.js';

/** What the bodies cover in one straight phase, each made when first asked for. */
export class Sweeps {
  readonly #made = new Map<Body, Manifold>();

  constructor(
    private readonly kernel: Kernel,
    private readonly phase: StraightPhase,
  ) {}

  of(body: Body): Manifold {
    let solid = this.#made.get(body);
    if (solid === undefined) {
      solid = sweptSolid(this.kernel, body, this.phase.sweep[body.carrier]!);
      this.#made.set(body, solid);
    }
    return solid;
  }

  freeAll(): void {
    for (const solid of this.#made.values()) solid.delete();
    this.#made.clear();
  }
}

/** One pair over a whole straight phase: a single question against all that the body covers on its way. */
export const checkStraight = (q: Question, sweeps: Sweeps, thickness: number, log: StepLog): void => {
  const { element, body, phase, rule } = q;
  const box = boxLook(q, 0, thickness);
  if (rule === 'clear' ? box >= NEAR && box >= log.smallest : box > 0) return;
  const look = lookAt(q, 0, sweeps.of(body), thickness);
  if (rule === 'clear') {
    noteGap(log, phase.name, phase.at(0), element.name, body.name, look.gap);
    if (tooNear(look.gap)) find(log, phase.name, phase.at(0), gapSentence(element.name, body.name, look.gap, look.shared));
    return;
  }
  if (look.shared === null) return;
  const deeper = rule === 'nose' && look.deep !== true ? 'beyond the reach of the stroke' : `deeper than ${mm(depthOf(q))} mm`;
  find(log, phase.name, phase.at(0), `${element.name} runs into ${body.name} ${deeper}; they share a space of ${sizes(look.shared)}.`);
};
