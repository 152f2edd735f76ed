/** Public door of the ground: heights along a section. */
export { groundHeight, type Terrain } from './terrain.ts';
