import type { CellKind } from './machineCells.js';

/** A column of a table of machines: where its value stands in a machine's data, and in an option's where an option may change it. */
export interface MachineColumn {
  readonly path: string;
  readonly as: 'text' | 'figure' | 'yes or no' | CellKind;
  /** May be empty on a machine: then the field is not in its data. */
  readonly mayStayOut?: true;
  readonly inOption?: string;
}

/** Lengths mm, forces N, speeds mm/s, masses kg; what the fields mean: machine.ts. */
const COLUMNS = {
  id: { path: 'id', as: 'text', inOption: 'id' },
  name: { path: 'name', as: 'text', inOption: 'name' },
  demo: { path: 'demo', as: 'yes or no' },
  summary: { path: 'summary', as: 'text' },
  condition: { path: 'condition', as: 'text' },
  rating: { path: 'rating', as: 'figure' },
  rating_per_length: { path: 'ratingPerLength', as: 'figure' },
  length: { path: 'length', as: 'figure' },
  between_frames: { path: 'betweenFrames', as: 'figure' },
  throat: { path: 'throat', as: 'figure', inOption: 'effect.throat' },
  open_height: { path: 'openHeight', as: 'figure', inOption: 'effect.openHeight' },
  shut_height: { path: 'shutHeight', as: 'figure' },
  cylinder_spacing: { path: 'cylinders.spacing', as: 'figure' },
  synchronisation: { path: 'cylinders.synchronisation', as: 'text' },
  approach_speed: { path: 'speeds.approach', as: 'figure' },
  bend_speed: { path: 'speeds.bend', as: 'figure' },
  return_speed: { path: 'speeds.return', as: 'figure' },
  change_point: { path: 'changePoint', as: 'figure' },
  x: { path: 'gauge.x', as: 'axis', inOption: 'effect.x' },
  r: { path: 'gauge.r', as: 'axis', inOption: 'effect.r' },
  z: { path: 'gauge.z', as: 'axis', inOption: 'effect.z' },
  fingers: { path: 'gauge.fingers', as: 'figure' },
  finger_width: { path: 'gauge.finger.width', as: 'figure' },
  finger_profile: { path: 'gauge.finger.profile', as: 'section' },
  finger_faces: { path: 'gauge.finger.faces', as: 'faces' },
  gauge_beam: { path: 'gauge.beam', as: 'section' },
  fingers_apart: { path: 'gauge.apart', as: 'figure' },
  own_x: { path: 'gauge.ownX.most', as: 'figure', mayStayOut: true, inOption: 'effect.ownX.most' },
  play: { path: 'gauge.play', as: 'known', mayStayOut: true },
  squareness: { path: 'gauge.squareness', as: 'known', mayStayOut: true },
  beam: { path: 'beam', as: 'sections' },
  clamp: { path: 'clamp', as: 'sections' },
  bed: { path: 'bed', as: 'sections' },
  punch_tangs: { path: 'clampFamilies', as: 'list' },
  die_seats: { path: 'seatFamilies', as: 'list' },
  crowning: { path: 'crowning', as: 'text', inOption: 'effect.crowning' },
  station_seconds: { path: 'stationSeconds', as: 'figure', mayStayOut: true, inOption: 'effect.stationSeconds' },
  bed_height: { path: 'bedHeight', as: 'figure' },
  ram_repeats: { path: 'repeatability.ram', as: 'known' },
  x_repeats: { path: 'repeatability.x', as: 'known' },
  r_repeats: { path: 'repeatability.r', as: 'known' },
  wear: { path: 'seats', as: 'wear', mayStayOut: true },
  beware: { path: 'beware', as: 'list', mayStayOut: true },
  price: { path: 'price', as: 'figure', inOption: 'price' },
  currency: { path: 'currency', as: 'text' },
  mass: { path: 'site.mass', as: 'figure' },
  footprint_width: { path: 'site.footprint.0', as: 'figure' },
  footprint_depth: { path: 'site.footprint.1', as: 'figure' },
  height: { path: 'site.height', as: 'figure' },
  supply: { path: 'site.supply', as: 'text' },
} as const satisfies Readonly<Record<string, MachineColumn>>;

export type MachineColumnName = keyof typeof COLUMNS;

export const machineColumns: readonly (readonly [MachineColumnName, MachineColumn])[] = Object.entries(COLUMNS) as [MachineColumnName, MachineColumn][];
