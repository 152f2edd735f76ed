/** Public door of plots: SVG text from numbers. */
export { barPlot } from './barPlot.ts';
export { linePlot, type LineSeries } from './linePlot.ts';
export { INKS, inlineSvg, standaloneSvg, type Plot } from './markup.ts';
export { hatchSample, PLANE_FIELD, planePlot, type Hatch } from './planePlot.ts';
export { polarPlot, type PolarSeries } from './polarPlot.ts';
