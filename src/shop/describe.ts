import type { Axis, Known, Machine } from './machine.js';
import type { Tool } from './tool.js';

const axisWords = (name: string, axis: Axis): string =>
  axis.drive === 'fixed' ? `${name} fixed at ${axis.at} mm` : `${name} ${axis.drive}, ${axis.min} to ${axis.max} mm`;

const knownWords = (what: string, known: Known): string =>
  known.source === 'not known' ? `${what} not known` : `${what} ${known.value} mm ${known.source}`;

/** A machine in one line: rating in kN, lengths in mm. */
export const describeMachine = (m: Machine): string =>
  [
    `${m.id}${m.demo ? ' (demo)' : ''}: ${m.rating / 1000} kN, bed ${m.length} mm, between frames ${m.betweenFrames} mm`,
    `throat ${m.throat} mm, die seat to punch shoulder ${m.shutHeight} to ${m.openHeight} mm`,
    `${axisWords('X', m.gauge.x)}, ${axisWords('R', m.gauge.r)}, ${axisWords('Z', m.gauge.z)}${m.gauge.ownX ? `, an X axis for each finger (up to ${m.gauge.ownX.most} mm apart)` : ''}`,
    `crowning ${m.crowning}`,
    `repeats ${knownWords('ram', m.repeatability.ram)}, ${knownWords('X', m.repeatability.x)}, ${knownWords('R', m.repeatability.r)}`,
    `${m.condition}, ${m.price} ${m.currency}`,
  ].join('; ');

/** A tool in one line: angles included, lengths in mm, rating in N/mm. */
export const describeTool = (t: Tool): string => {
  const shape =
    t.kind === 'punch'
      ? `${t.shape} punch, ${t.includedAngle} degrees included, tip radius ${t.tipRadius} mm`
      : t.shape === 'anvil'
        ? 'anvil'
        : `V ${t.v} mm (${t.vConvention === 'sharp' ? 'between sharp corners' : 'between tangent points'}), ` +
          `${t.includedAngle} degrees included, shoulder radius ${t.shoulderRadius} mm`;
  const atHand = t.segments.reduce((sum, s) => sum + s.length * s.count, 0);
  return `${t.id}${t.demo ? ' (demo)' : ''}: ${shape}, ${t.height} mm high, ${t.rating} N/mm, ${t.tang}, ${atHand} mm at hand`;
};
