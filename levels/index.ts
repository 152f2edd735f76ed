// The public door of the levels: explicit names, one block a folder.

// levels/drills
export { DRILLS, findDrill } from './drills/findDrill.ts';
export { choiceOfDrill, layDrill } from './drills/layDrill.ts';
export { DRILL_BUDGET } from './drills/drillRanges.ts';
export { parseDrill } from './drills/parseDrill.ts';
export { parseDrillText } from './drills/parseDrillText.ts';

// levels/hall
export type { DialScene, FilmScene, FlightScene, Hall, HallArrival, HallDescent, HallScene } from './hall/hall.ts';
export { HALL_BUDGET, parseHall, parseHallText } from './hall/parseHall.ts';
export { FLIES, MOST_POINTS, parsePhoneLanding } from './hall/phoneLanding.ts';
export type { PathPoint, PhoneContact, PhoneLanding } from './hall/phoneLanding.ts';
export { choiceOfHall, parseHallDescent } from './hall/readFlight.ts';
export { HALL, HALL_TEXT } from './hall/scenes.ts';

// levels/landers
export { LANDERS, findLander } from './landers.ts';

// levels/limits
export { findLimits } from './limits/findLimits.ts';

// levels/plans
export { firstChoice, firstLanding } from './plans/firstLanding.ts';
export { findStart, STARTS } from './plans/findStart.ts';
export { whyNotFlown, worldsFor } from './plans/flyable.ts';
export { layOut } from './plans/layOut.ts';
export { layPlan } from './plans/layPlan.ts';
export { layWhatIf } from './plans/layWhatIf.ts';
export { parsePlanChoice } from './plans/parsePlanChoice.ts';
export { seededTrouble } from './plans/seededTrouble.ts';

// levels/sites
export { findSite, SITES } from './sites/findSite.ts';
export { parseSite } from './sites/parseSite.ts';
export { parseSiteText } from './sites/parseSiteText.ts';
export type { GroundShape, Site } from './sites/site.ts';
export { SITE_BUDGET } from './sites/siteRanges.ts';

// levels/terrain
export { createGround } from './terrain/createGround.ts';
