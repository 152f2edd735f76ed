// The public door of the levels: explicit names, one block a folder.

// levels/landers
export { LANDERS, findLander } from './landers.ts';
