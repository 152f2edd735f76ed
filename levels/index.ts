// The public door of the levels: explicit names, one block a folder.

// levels/landers
export { LANDERS, findLander } from './landers.ts';

// levels/limits
export { findLimits } from './limits/findLimits.ts';
export { limitAxes } from './limits/limitAxes.ts';

// levels/scenarios
export { firstLanding } from './scenarios/firstLanding.ts';

// levels/sites
export { findSite, SITES } from './sites/findSite.ts';
export { parseSite } from './sites/parseSite.ts';
export { parseSiteText } from './sites/parseSiteText.ts';
export type { BaseSlope, CraterField, GroundShape, Site, StepField, Undulation } from './sites/site.ts';
export { SITE_BUDGET } from './sites/siteRanges.ts';

// levels/terrain
export { createGround } from './terrain/createGround.ts';
