export * from './vec.js';
export * from './rigid.js';
export * from './contour.js';
export * from './intervals.js';
export * from './convex.js';
export * from './solid.js';
export * from './decompose.js';
export * from './shape.js';
