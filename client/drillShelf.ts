/**
 * The drills that come with the program, and what lays one out: a part of the page by itself, fetched by whoever chooses or runs a drill, and by everybody at rest.
 * Until then a crew's page holds no event list.
 */
export { choiceOfDrill, DRILLS, layPlan, parseDrill } from '../levels/index.ts';
