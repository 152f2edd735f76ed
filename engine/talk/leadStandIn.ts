import type { AbortSign, EventRow } from '../drill/drill.ts';
import { isCovered } from '../table/attendance.ts';
import { paceNow } from '../table/pace.ts';
import { isCarriedOut } from '../table/responses.ts';
import type { Table } from '../table/table.ts';
import type { DescentState } from '../world/descent.ts';
import { TICK_RATE } from '../world/constants.ts';
import { ANSWERS_TO } from './commands.ts';
import { addLine } from './crewLog.ts';
import { callPoll, decide, questionNow } from './poll.ts';
import { memoryOf, remember } from './standInMemory.ts';
import { hasPassed } from './standIns.ts';
import { openPoll, type Poll } from './talk.ts';

/**
 * The stand-in at Lead, in a drill: polls where an inject on its screen asks for that, decides by the answers, and gives the landing up after a no-go, where an
 * inject asks for it, and by the rules of the card that name a sign which its own screen shows. It reads nothing else. Seconds of the clock, as of every stand-in.
 */

/** From words on the screen to doing what they ask for. */
const HEED_AFTER = 5;
/** From the last answer to the decision, and from a no-go to the abort. */
const DECIDE_AFTER = 3;
const ABORT_AFTER = 2;
/** So long it waits for answers; then no answer counts as no. */
const PATIENCE = 25;
/** Looks in a row after which a rule counts as broken, and the lander as down: three seconds and one and a half. */
const LOOKS_BROKEN = 6;
const LOOKS_DOWN = 3;
const LEAD = { seat: 'lead' } as const;

/** One look, twice a second while the clock runs. */
export function leadAsStandIn(table: Table, known: DescentState): void {
  const { state, plan } = table;
  const { drill, instruments } = plan;
  if (drill === undefined || instruments?.standIns === 'asleep' || !isCovered(state, 'lead')) return;
  const { talk } = state;
  const poll = openPoll(talk);
  if (poll !== undefined) return decideOpen(table, poll);
  if (state.stage !== 'descending') return;
  if (talk.isDown) return askToStay(table);
  if (state.abortedAt !== undefined) return;
  if (isGivenUp(table) || isRuleBroken(table, known)) return abort(table);
  for (const row of drill.events) if (isDue(table, row)) heed(table, row);
}

/** By the answers that are in: one no is enough, and none at all is one. */
function decideOpen(table: Table, poll: Poll): void {
  const { state } = table;
  const { by, allIn, question, answers } = poll;
  if (by.seat !== 'lead') return;
  const isReady = allIn === undefined ? hasPassed(state, poll, PATIENCE) : hasPassed(state, allIn, DECIDE_AFTER);
  if (!isReady) return;
  const [yes, no] = ANSWERS_TO[question];
  decide(table, LEAD, allIn !== undefined && answers.every(({ answer }) => answer === yes) ? yes : no);
}

/** It decided against going on itself, a moment ago. What a person decides, a person carries out. */
function isGivenUp({ state }: Table): boolean {
  const decided = state.talk.polls.at(-1)?.decided;
  if (decided?.decision !== 'noGo' || decided.member !== undefined) return false;
  return decided.seat === 'lead' && hasPassed(state, decided, ABORT_AFTER);
}

function isRuleBroken(table: Table, known: DescentState): boolean {
  const { broken } = memoryOf(table);
  const rules = (table.plan.drill?.ruleCard ?? []).flatMap(({ id, abort: sign }) => (sign ? [{ id, sign }] : []));
  const next = Object.fromEntries(
    rules.map(({ id, sign }) => [id, calls(table, sign, known) ? (broken[id] ?? 0) + 1 : 0]),
  );
  remember(table, { broken: next });
  return Object.values(next).some((looks) => looks >= LOOKS_BROKEN);
}

function calls({ state, run }: Table, sign: AbortSign, { height }: DescentState): boolean {
  if (height >= sign.below) return false;
  if (sign.when === 'noSpot') return state.site.spot === undefined;
  return run.believed !== undefined && 2 * run.believed.sigma.height > sign.over;
}

/** Sent, with words for Lead, long enough ago, and not answered yet. */
function isDue(table: Table, { id }: EventRow): boolean {
  const { events } = table.state;
  const told = events?.told.find(({ inject, to }) => inject === id && to.includes('lead'));
  if (told === undefined || memoryOf(table).heeded.includes(id)) return false;
  return table.run.flight.tick - told.tick >= HEED_AFTER * TICK_RATE * paceNow(table.state);
}

/** Does of what the inject asks of Lead what it can; once. */
function heed(table: Table, { id, responses, unless }: EventRow): void {
  const { drill } = table.plan;
  remember(table, { heeded: [...memoryOf(table).heeded, id] });
  const asked = responses.filter(({ seat }) => seat === 'lead').map(({ seen }) => seen.by);
  const isNeedless = drill !== undefined && unless !== undefined && isCarriedOut(table, drill, unless);
  if (asked.includes('abort') && !isNeedless) abort(table);
  else if (asked.includes('poll') && openPoll(table.state.talk) === undefined)
    callPoll(table, LEAD, questionNow(table.state));
}

function askToStay(table: Table): void {
  const { down } = memoryOf(table);
  remember(table, { down: down + 1 });
  if (down + 1 === LOOKS_DOWN) callPoll(table, LEAD, 'stay');
}

function abort(table: Table): void {
  const { state } = table;
  addLine(table, { ...LEAD, what: { kind: 'abort' } });
  state.abortedAt = state.tick;
}
