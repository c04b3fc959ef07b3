import { describe, expect, it } from 'vitest';
import { apply } from '../geometry/index.js';
import { demoParts, develop, fold } from '../sheet/index.js';
import { shapeOf } from './bendShape.js';
import { platePoses } from './fold.js';

// Two foldings written apart from the same page of formulas: the planner's room folds by its own code.

describe('folding, written twice', () => {
  for (const part of demoParts()) {
    it(`${part.name}: both put every plate in the same place, from every root, part-way and finished`, () => {
      const sheet = develop(part, { name: 'K-factor', k: 0.42 });
      const shapes = part.bends.map((_, i) => shapeOf(sheet, i));
      for (const share of [0, 0.3, 1]) {
        const degrees = part.bends.map((b, i) => b.bendAngle * (i % 2 === 0 ? share : 1));
        for (let root = 0; root < part.plates.length; root++) {
          const theirs = fold(sheet, degrees, root).poses;
          const ours = platePoses(sheet, shapes, degrees.map((d) => (d * Math.PI) / 180), root);
          part.plates.forEach((plate, i) => {
            for (const v of plate.outline) {
              const [p, q] = [apply(ours.get(i)!, [v.x, v.y, 1]), apply(theirs[i]!, [v.x, v.y, 1])];
              expect(Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])).toBeLessThan(1e-6);
            }
          });
        }
      }
    });
  }
});
