import { expect, it } from 'vitest';
import { metalById } from '../metal/index.js';
import { type Sketch, grow, partOf, polygon } from '../sheet/index.js';
import { demoFloor, demoRack, withOptions } from '../shop/index.js';
import { planTrial } from '../trial/index.js';
import { cutPlace } from './cutPlace.js';
import { filmOf } from './film.js';
import { rootOf } from './record.js';
import { sheetSection } from './sheetSection.js';

it('where two fingers have an X each the section is cut where the tapered edge touches the left one', () => {
  // 300 wide, 100 deep at one end and 130 at the other: no square edge
  const sketch: Sketch = { plates: [{ outline: polygon([[0, 0], [300, 0], [300, 130], [0, 100]]), holes: [] }], bends: [] };
  grow(sketch, 0, { from: [0, 0], to: [300, 0] }, 90, 1.5, polygon([[0, 0], [300, 0], [300, 40], [0, 55]]));
  const machine = withOptions(demoFloor().find((m) => m.id === 'deep-throat')!, ['own X']);
  const trial = planTrial({ part: partOf('tapered angle', 1.5, sketch, 'Typed for this test.'), machine, rack: demoRack(), metal: metalById('dc01')!, quantity: 1 });
  const step = trial.steps[0]!;
  expect(step.stop.skew).not.toBeUndefined();
  const { angles, pose } = filmOf(trial, step)(0.36);
  const backs = sheetSection(trial.sheet, angles, rootOf(trial, step), pose, cutPlace(trial, step)).flat().map(([back]) => back);
  // 0.1371 mm beside the corner that touches: 0.014 of the edge
  expect(Math.max(...backs)).toBeCloseTo(step.stop.x, 1);
});
