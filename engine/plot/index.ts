/** Public door of plots: SVG text from numbers. */
export { barPlot } from './barPlot.ts';
export { cellPlot, type Cell } from './cellPlot.ts';
export { landerPlot } from './landerPlot.ts';
export { linePlot, type LineSeries } from './linePlot.ts';
export { escapeMarkup, INKS, inlineSvg, standaloneSvg, type Plot } from './markup.ts';
export { hatchSample, PLANE_FIELD, planePlot, type Hatch } from './planePlot.ts';
export { withKey, type KeyEntry } from './plotKey.ts';
export { polarPlot, type PolarSeries } from './polarPlot.ts';
