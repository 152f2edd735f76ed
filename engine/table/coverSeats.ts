import type { Terrain } from '../ground/terrain.ts';
import { logStandIns } from '../talk/crewLog.ts';
import type { DescentState } from '../world/descent.ts';
import { isCovered } from './attendance.ts';
import { setEngine, throttled } from './engineSettings.ts';
import { setByWatch, watchPropellant } from './propellantStandIn.ts';
import { readLegs, readPropellant } from './seatReadings.ts';
import { judgeByWatch, watchSources } from './sensorsStandIn.ts';
import { orderFacing } from './siteNotes.ts';
import { headedFor, noteByMap } from './siteStandIn.ts';
import { noteDoubts } from './sourceNotes.ts';
import type { Table } from './table.ts';
import { turnByWatch, watchLegs } from './turnStandIn.ts';

/** What the stand-ins do in this tick at the seats where nobody is: by what those seats read, and after the time a person would take. Flying has its own pilot. */
export function coverSeats(table: Table, known: DescentState): void {
  const { plan, state, run } = table;
  if (plan.instruments?.standIns === 'asleep') return;
  const { judgments, engine, site } = state;
  if (isCovered(state, 'sensors') && run.believed !== undefined) {
    state.watch = watchSources(state.watch, run.believed);
    const before = state.judgments;
    state.judgments = judgeByWatch(state.watch, before);
    noteDoubts(state, run.flight.tick, before);
  }
  if (isCovered(state, 'propellant')) {
    const readings = readPropellant({ plan, run, known }, state.reckonedBurn);
    const commandedPercent = throttled(state.commanded, state.engine).thrustPercent;
    const { cutAtContact } = state.engine;
    const seen = { load: plan.setup.propellant, known, cutAtContact, commandedPercent };
    state.propellantWatch = watchPropellant(state.propellantWatch, readings, seen);
    setEngine(state, run.flight.tick, setByWatch(state.propellantWatch, state.engine));
  }
  if (isCovered(state, 'site')) coverSite(table, known);
  logStandIns(table, { judgments, engine, site });
}

function coverSite(table: Table, known: DescentState): void {
  const { plan, state, run } = table;
  const map = groundKnown(table);
  const noted = noteByMap(state.site, map, known);
  const { locked, legsState } = readLegs({ run, known });
  // what is not valid says nothing of the legs
  state.legWatch = watchLegs(state.legWatch, legsState === 'valid' ? locked : []);
  // only the stand-in at Flying is sure to make for the spot
  const x = (isCovered(state, 'flying') ? noted.spot?.meters : undefined) ?? headedFor(known);
  const next = turnByWatch(state.legWatch, noted, { setup: plan.setup, map, known, locked, x });
  if (next.facing === noted.facing) state.site = noted;
  else orderFacing(state, run.flight.tick, next);
}

function groundKnown({ plan, run }: Table): Terrain {
  return run.instruments?.map.terrain ?? plan.setup.terrain;
}
