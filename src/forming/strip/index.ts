export { type Equilibrium } from './equilibrium.js';
export { type StripCase } from './halfStrip.js';
export { type Released, releasedShape } from './released.js';
export { type Section, sectionOf } from './section.js';
export { beginStroke, type Stroke } from './stroke.js';
