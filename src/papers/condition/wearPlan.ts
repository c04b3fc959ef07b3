import type { Vec2 } from '../../geometry/index.js';
import type { ConditionState } from '../../shop/index.js';
import { type Item, type Picture, polyline, strokes, text } from '../picture.js';

/** mm of height that the picture spans at least, so that a straight bed does not look hilly. */
const LEAST_SPAN = 0.1;
const [LEFT, RIGHT, TOP, BOTTOM] = [14, 4, 4, 6];

/** Bed seat (full line) and ram seat (dashes) along the bed, heights much enlarged. */
export const wearPlan = (state: ConditionState, length: number, width: number, height: number): Picture => {
  const heights = state.wear.flatMap(({ bed, ram }) => [bed, ram]).filter((h) => h !== null);
  const items: Item[] = [];
  const px = (along: number): number => LEFT + (along / length + 0.5) * (width - LEFT - RIGHT);
  items.push(strokes('thin', [[[LEFT, height - BOTTOM], [width - RIGHT, height - BOTTOM]], [[LEFT, TOP], [LEFT, height - BOTTOM]]]));
  for (const along of [-length / 2, 0, length / 2]) items.push(text([px(along), height - 1.5], along.toFixed(0).replace('-', '−'), 2.2));
  if (heights.length > 1) {
    const [low, high] = [Math.min(...heights), Math.max(...heights)];
    const span = Math.max(LEAST_SPAN, high - low);
    const py = (up: number): number => TOP + 2 + (0.5 - (up - (low + high) / 2) / span) * (height - TOP - BOTTOM - 4);
    for (const up of [low, high]) items.push(text([LEFT - 1.5, py(up) + 0.8], up.toFixed(2).replace('-', '−'), 2.2, { anchor: 'end' }));
    const lineOf = (of: 'bed' | 'ram'): Vec2[] => state.wear.filter((p) => p[of] !== null).map((p): Vec2 => [px(p.along), py(p[of]!)]);
    const [bed, ram] = [lineOf('bed'), lineOf('ram')];
    items.push(polyline('outline', bed), polyline('hidden', ram));
    for (const [points, name, off] of [[bed, 'bed seat', 3], [ram, 'ram seat', -1.4]] as const) {
      const end = points.at(-1);
      if (end) items.push(text([end[0] - 1, end[1] + off], name, 2.2, { anchor: 'end' }));
    }
  }
  return { width, height, items, title: 'Wear of bed and ram seats along the bed' };
};
