import { type Rack, demoRack } from '../../src/shop/index.js';

export type OracleRack = 'three punches' | 'two punches' | 'one punch';

/** Racks small enough for an oracle that leaves nothing out, by the name that a repro file keeps. One punch comes without ears. */
export const oracleRack = (name: OracleRack): Rack => {
  if (name === 'one punch') return plainRack('gooseneck');
  const whole = demoRack();
  const punches = whole.punches.filter((p) => ['straight-r1', 'gooseneck', 'acute-30'].includes(p.id));
  return { ...whole, dies: whole.dies.filter((d) => d.v === 8 || d.v === 12), punches: name === 'two punches' ? punches.slice(0, 2) : punches };
};

/** One punch in plain segments, and two V dies: much is refused with it, and no ear is ever tried. */
export const plainRack = (punch: string): Rack => {
  const whole = demoRack();
  const punches = whole.punches.filter((p) => p.id === punch).map((p) => ({ ...p, segments: p.segments.filter((s) => !s.ear) }));
  return { ...whole, dies: whole.dies.filter((d) => d.v === 8 || d.v === 12), punches };
};
