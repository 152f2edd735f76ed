/** Public door of the ground: heights along a section, and how it gives. */
export { readSoil } from './readSoil.ts';
export type { Soil } from './soil.ts';
export { groundHeight, type Profile, type Terrain } from './terrain.ts';
