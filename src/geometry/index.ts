export * from './vec.js';
export * from './rigid.js';
export * from './contour.js';
