import type { Rack, Segment, Tool } from '../../shop/index.js';
import type { Placed, Trial } from '../../trial/index.js';
import { type KitRiser, kitRisers } from './kitRisers.js';

/** One length of one tool that the day needs. */
interface KitTool {
  readonly kind: 'punch' | 'die';
  readonly id: string;
  readonly name: string;
  readonly demo: boolean;
  /** mm */
  readonly length: number;
  readonly ear?: 'left' | 'right';
  /** At the same time, by the part that needs most. */
  readonly needed: number;
  /** Of the rack. */
  readonly atHand: number;
  /** kg of one. */
  readonly weight: number;
}

export type KitItem = KitTool | KitRiser;

/** mm within which two lengths are one and the same segment. */
const SAME = 0.01;

const countOf = (placed: readonly Placed[], { length, ear }: Pick<KitTool, 'length' | 'ear'>): number =>
  placed.filter((s) => Math.abs(s.length - length) < SAME && s.ear === ear).length;

const has = (segments: readonly Segment[], { length, ear }: Pick<KitTool, 'length' | 'ear'>): number =>
  segments.filter((s) => Math.abs(s.length - length) < SAME && s.ear?.hand === ear).reduce((sum, s) => sum + s.count, 0);

/** The tools to lay out for these trials, by tool and length, and the risers under them: no more stand at one time than the part with most needs. */
export const kitList = (trials: readonly Trial[], rack: Rack): readonly KitItem[] => {
  const items: KitTool[] = [];
  for (const kind of ['punch', 'die'] as const) {
    const tools = new Map(trials.flatMap((t): readonly Tool[] => (kind === 'punch' ? t.punches : t.dies)).map((tool) => [tool.id, tool]));
    for (const tool of tools.values()) {
      const stock = (kind === 'punch' ? rack.punches : rack.dies).find(({ id }) => id === tool.id)?.segments ?? [];
      const inUse = trials.map(({ stations }) => stations.flatMap((s) => (s[kind] === tool.id ? (kind === 'punch' ? s.punchSegments : s.dieSegments) : [])));
      const lengths = new Map(inUse.flat().map(({ length, ear }) => [`${length.toFixed(2)} ${ear ?? ''}`, { length, ...(ear && { ear }) }]));
      for (const what of [...lengths.values()].sort((a, b) => b.length - a.length)) {
        items.push({
          kind, id: tool.id, name: tool.name, demo: tool.demo, ...what, needed: Math.max(...inUse.map((placed) => countOf(placed, what))),
          atHand: has(stock, what), weight: (tool.weight * what.length) / 1000,
        });
      }
    }
  }
  return [...items, ...kitRisers(trials, rack)];
};
