import type { Drill, EventRow } from '../../engine/drill/index.ts';
import { report, type ProblemList } from '../../engine/fieldReader.ts';
import { findWorld } from '../../engine/worlds.ts';
import { findLander } from '../landers.ts';
import { findStart } from '../plans/findStart.ts';
import { whyNotFlown } from '../plans/flyable.ts';

/** What the fields of a drill must be to each other: names that are there, once; injects that can come; a plan that can be flown. */
export function checkDrill(list: ProblemList, drill: Drill): void {
  const { objectives, ruleCard, courses, events, questions } = drill;
  checkOnce(
    list,
    objectives.map(({ id }, i) => [`objectives[${i}].id`, id]),
  );
  checkOnce(
    list,
    ruleCard.map(({ id }, i) => [`ruleCard[${i}].id`, id]),
  );
  checkOnce(
    list,
    courses.map((course, i) => [`courses[${i}]`, course]),
  );
  checkOnce(
    list,
    events.map(({ id }, i) => [`events[${i}].id`, id]),
  );
  checkOnce(
    list,
    responsesOf(events).map(({ path, response }) => [`${path}.id`, response.id]),
  );
  checkOnce(
    list,
    faultsOf(drill).map(({ path, name }) => [`${path}.name`, name]),
  );
  const known = objectives.map(({ id }) => id);
  questions.forEach(({ objective }, i) => checkNamed(list, `questions[${i}].objective`, objective, known));
  events.forEach((row, i) => checkRow(list, drill, row, `events[${i}]`));
  checkCycles(list, events);
  checkLegs(list, drill);
  checkPlan(list, drill);
  checkProfile(list, drill);
}

type Places = readonly (readonly [path: string, name: string])[];

function checkOnce(list: ProblemList, places: Places): void {
  const before = new Map<string, string>();
  for (const [path, name] of places) {
    const first = before.get(name);
    if (first === undefined) before.set(name, path);
    else report(list, 'name-twice', { path, expected: `another name than that of ${first}`, came: quoted(name) });
  }
}

function checkNamed(list: ProblemList, path: string, name: string, known: readonly string[]): void {
  if (known.includes(name)) return;
  const expected = known.length === 0 ? 'none: there is nothing to name' : `one of ${known.map(quoted).join(', ')}`;
  report(list, 'names-nothing', { path, expected, came: quoted(name) });
}

function checkRow(list: ProblemList, drill: Drill, row: EventRow, path: string): void {
  const { objectives, courses, events, plan } = drill;
  const { course, trigger, unless, kind } = row;
  checkNamed(
    list,
    `${path}.objective`,
    row.objective,
    objectives.map(({ id }) => id),
  );
  if (course !== undefined) checkNamed(list, `${path}.course`, course, courses);
  // a row of another course is not played beside this one
  const others = events.filter((other) => other !== row && (other.course ?? course) === course);
  if (trigger.on === 'inject')
    checkNamed(
      list,
      `${path}.trigger.inject`,
      trigger.inject,
      others.map(({ id }) => id),
    );
  if (unless !== undefined)
    checkNamed(
      list,
      `${path}.unless`,
      unless,
      others.flatMap(({ responses }) => responses.map(({ id }) => id)),
    );
  if ((kind === 'contingency') !== (unless !== undefined))
    report(list, 'contingency', {
      path: `${path}.unless`,
      expected:
        kind === 'contingency'
          ? 'the response that makes it needless'
          : 'nothing: only a contingency has a response to wait for',
      came: unless === undefined ? 'nothing' : quoted(unless),
    });
  const start = findStart(plan.start);
  if (trigger.on === 'height' && start !== undefined && trigger.meters >= start.height)
    report(list, 'too-high', {
      path: `${path}.trigger.meters`,
      expected: `less than the ${start.height} m from which the descent begins`,
      came: String(trigger.meters),
    });
  checkMends(list, drill, row, path);
}

function checkMends(list: ProblemList, { truth, events }: Drill, { effects, course }: EventRow, path: string): void {
  const played = events.filter((other) => (other.course ?? course) === course);
  const failed = effectsOf(played).flatMap(({ effect }) => (effect.do === 'fail' ? [effect.name] : []));
  const known = [...truth.faults.map(({ name }) => name), ...failed];
  effects.forEach((effect, i) => {
    if (effect.do === 'mend') checkNamed(list, `${path}.effects[${i}].name`, effect.name, known);
  });
}

/** An inject that waits for another, which waits for it, never comes. */
function checkCycles(list: ProblemList, events: readonly EventRow[]): void {
  const awaited = new Map(events.map(({ id, trigger }) => [id, trigger.on === 'inject' ? trigger.inject : undefined]));
  events.forEach(({ id }, i) => {
    const chain = [id];
    let next = awaited.get(id);
    while (next !== undefined && !chain.includes(next)) {
      chain.push(next);
      next = awaited.get(next);
    }
    // an inject that only leads into a cycle is not on it
    if (next !== id) return;
    const came = [...chain, id].map(quoted).join(' after ');
    report(list, 'cycle', {
      path: `events[${i}].trigger.inject`,
      expected: 'an inject that does not wait for this one',
      came,
    });
  });
}

function checkLegs(list: ProblemList, drill: Drill): void {
  const { plan } = drill;
  const legs = findLander(plan.lander)?.legs.length ?? 0;
  for (const { path, fault } of faultsOf(drill)) {
    if (!('leg' in fault.parameters) || fault.parameters.leg < legs) continue;
    const expected = `a leg of ${plan.lander}, 0 to ${legs - 1}`;
    report(list, 'no-such-leg', { path: `${path}.fault.parameters.leg`, expected, came: String(fault.parameters.leg) });
  }
}

function checkPlan(list: ProblemList, { plan }: Drill): void {
  const lander = findLander(plan.lander);
  const world = findWorld(plan.world);
  const why = lander && world && whyNotFlown(lander, world);
  if (why !== undefined)
    report(list, 'not-flyable', { path: 'plan.world', expected: `one that ${plan.lander} can fly`, came: why });
}

/** From high to low, the last from the ground on; in the tenths in which a descent rate is ordered. */
function checkProfile(list: ProblemList, { profile }: Drill): void {
  profile.forEach(({ above, rate }, i) => {
    const before = profile[i - 1]?.above;
    if (before !== undefined && above >= before)
      report(list, 'profile', { path: `profile[${i}].above`, expected: `less than ${before} m`, came: String(above) });
    if (i === profile.length - 1 && above !== 0)
      report(list, 'profile', {
        path: `profile[${i}].above`,
        expected: '0 m, since it is the last',
        came: String(above),
      });
    if (Math.abs(10 * rate - Math.round(10 * rate)) > 1e-9)
      report(list, 'profile', { path: `profile[${i}].rate`, expected: 'whole tenths of a m/s', came: String(rate) });
  });
}

/** What fails, from the start and by injects. */
function faultsOf({ truth, events }: Drill) {
  const dealt = effectsOf(events).flatMap(({ path, effect }) =>
    effect.do === 'fail' ? [{ path, name: effect.name, fault: effect.fault }] : [],
  );
  return [...truth.faults.map(({ name, fault }, i) => ({ path: `truth.faults[${i}]`, name, fault })), ...dealt];
}

function responsesOf(events: readonly EventRow[]) {
  return events.flatMap(({ responses }, i) =>
    responses.map((response, j) => ({ path: `events[${i}].responses[${j}]`, response })),
  );
}

function effectsOf(events: readonly EventRow[]) {
  return events.flatMap(({ effects }, i) =>
    effects.map((effect, j) => ({ path: `events[${i}].effects[${j}]`, effect })),
  );
}

function quoted(name: string): string {
  return JSON.stringify(name);
}
