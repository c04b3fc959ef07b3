import { asDrawn, demoShopData } from '../../shop/index.js';
import { withAt } from './tree.js';

/** What only the machine's own papers can say: empty until it is typed, for a figure that nobody gave would be planned with as if it were true. */
const EMPTY = [
  'name', 'summary', 'condition', 'rating', 'ratingPerLength', 'length', 'betweenFrames', 'throat', 'openHeight', 'shutHeight', 'bedHeight', 'cylinders.spacing', 'cylinders.synchronisation', 'crowning',
  'speeds.approach', 'speeds.bend', 'speeds.return', 'changePoint', 'gauge.fingers', 'gauge.finger.width', 'gauge.apart', ...['x', 'r', 'z'].flatMap((axis) => [`gauge.${axis}.min`, `gauge.${axis}.max`]),
  'gauge.x.speed', 'gauge.r.speed', 'gauge.z.seconds', 'price', 'currency', 'site.mass', 'site.footprint.0', 'site.footprint.1', 'site.height', 'site.supply',
];

/** A new machine as it is first typed on: a usual cross-section, no figures, no options, nothing known of its repeatability. */
export const freshMachine = (): unknown => {
  const unknown = { source: 'not known' };
  const shape = { ...asDrawn(demoShopData().machines[1]) as object, id: 'new-machine', demo: false, options: [], clampFamilies: [], seatFamilies: [], repeatability: { ram: unknown, x: unknown, r: unknown } };
  return EMPTY.reduce<unknown>((data, path) => withAt(data, path, ''), shape);
};
