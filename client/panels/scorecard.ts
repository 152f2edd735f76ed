import type { JudgedContact, Scorecard, TableView } from '../../engine/table/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { SCORECARD, SECTION, TITLE_BLOCK } from '../text/en.ts';
import { isLevel } from '../text/ground.ts';
import { degrees, distance, mass, percent, speed } from '../text/numbers.ts';
import { gaveWay, isBroken } from '../scenes/pose.ts';
import { figureOf } from '../views/lander/figure.ts';
import { turnLine } from './turnLine.ts';
import { beliefTable, defectLine, failureLine, surpriseLine } from './beliefTable.ts';
import { checkCommand, createCheck } from './checkCommand.ts';
import { CONTACT_HEIGHT, drawContact } from './contactDrawing.ts';
import { contactList, contactName } from './contactList.ts';
import { againButton, button, drawing, element, entry, leaveButton } from './element.ts';
import { outsideAtTouchdown, outsideInSimulation } from './outsideAtTouchdown.ts';
import { simulateCommand } from './simulateCommand.ts';
import { drawSpeedScale, limitWords, SCALE_WIDTH, statedWords } from './speedScale.ts';
import { tableSheet } from './tableSheet.ts';
import { type Deciding, decidingContact, hasFallen, isCrash, isMoving, namedContacts, verdictOf } from './verdict.ts';
import { explained, term } from '../terms/term.ts';

export interface ScorecardActions {
  readonly again: () => void;
  /** Another landing, in which something else fails; undefined at a shared table, and where nothing was to fail. */
  readonly another: (() => void) | undefined;
  /** Hands the record over as a file. */
  readonly save: () => void;
  readonly worlds: () => void;
  readonly look: () => void;
  readonly leave: () => void;
  /** To the debrief, and to the report. */
  readonly ways: readonly HTMLElement[];
}

/** Nearer than this the spot was met [m]. */
const AT_SPOT = 0.5;

/** Of the view at rest: how it lies, and what Site had said. */
type AtRest = Pick<TableView, 'flight' | 'site'>;

/** The sheet that is laid beside the lander at rest: what happened, why, the reason drawn, and the figures behind it. */
export function createScorecard(
  card: Scorecard,
  view: AtRest,
  plan: PlayedPlan,
  actions: ScorecardActions,
): HTMLElement {
  const { another, save } = actions;
  const { flight } = view;
  const verdict = verdictOf(card, flight);
  const place = TITLE_BLOCK.place(plan.siteName, plan.setup.lander.name, plan.world.name);
  const deciding = decidingContact(card);
  const worst = deciding?.contact;
  const worlds = button('', actions.worlds);
  worlds.append(element('span', { class: 'long' }, SCORECARD.worldsLead), SCORECARD.worlds);
  return tableSheet(
    {
      kind: 'scorecard',
      label: SCORECARD.label,
      actions: [
        ...againButton(actions.again),
        ...actions.ways,
        another === undefined ? undefined : button(SCORECARD.another, another),
        ...(worst === undefined ? [] : [worlds]),
        button(SCORECARD.look, actions.look, { class: 'look' }),
        button(SCORECARD.print, () => window.print()),
        saveButton(save),
        leaveButton(actions.leave),
      ],
    },
    element('p', { class: 'sheet-head' }, element('span', {}, SCORECARD.label), element('span', {}, place)),
    element('h2', { tabindex: -1 }, verdict.headline),
    element('p', { class: 'why' }, verdict.why),
    failureLine(card),
    defectLine(card),
    turnLine(card),
    surpriseLine(card),
    contactList(card),
    deciding === undefined ? undefined : reason(card, deciding, plan, view),
    beliefTable(card),
    facts(card, view, worst),
    worst === undefined ? undefined : limitNotes(worst, plan),
  );
}

/** Short where a phone has no room; whole in its name. */
function saveButton(save: () => void): HTMLElement {
  const node = explained(button(SCORECARD.save, save), 'record');
  node.append(element('span', { class: 'room' }, SCORECARD.saveWhat));
  return node;
}

/** The contact that decided as a drawing, and its speed on a scale with the tip limit. */
function reason(card: Scorecard, deciding: Deciding, { setup }: PlayedPlan, { flight, site }: AtRest): HTMLElement {
  const worst = deciding.contact;
  const { arrival, limit } = worst;
  const contact = drawContact(worst, figureOf(setup.lander), {
    broken: [isBroken(flight, 'left'), isBroken(flight, 'right')],
    fill: card.propellantLeft / Math.max(1, setup.propellant),
    height: matchMedia('(max-height: 48em)').matches ? CONTACT_HEIGHT.low : CONTACT_HEIGHT.full,
  });
  const isOneOfMany = namedContacts(card).length > 1;
  const which = isOneOfMany ? SCORECARD.nthContact(contactName(deciding, card)) : SCORECARD.contact;
  const figure = element('figure', { class: 'reason' }, element('figcaption', {}, SCORECARD.contactDrawn(which)));
  figure.append(drawing(contact.markup, { viewBox: contact.viewBox, class: 'contact-drawing' }));
  // where the fall itself broke it, or nothing would have helped, a scale of sideways speeds says nothing
  if (limit === undefined || limit.tip === 0 || isCrash(card)) return figure;
  const arrived = Math.abs(arrival.vx);
  const stated = site.limitHundredths === undefined ? undefined : site.limitHundredths / 100;
  const finding = { speed: arrived, tip: limit.tip, upTo: limit.upTo, stated };
  const width = matchMedia('(max-width: 35em)').matches ? SCALE_WIDTH.narrow : SCALE_WIDTH.full;
  const { markup, viewBox } = drawSpeedScale(finding, width);
  const label = SCORECARD.speedInWords(
    speed(arrived),
    [limitWords(finding), statedWords(finding)].filter(Boolean).join('; '),
  );
  figure.append(drawing(markup, { viewBox, label, class: 'speed-scale' }));
  return figure;
}

function facts(card: Scorecard, { flight, site }: AtRest, worst: JudgedContact | undefined): HTMLElement {
  const list = element('dl', { class: 'facts' });
  if (worst !== undefined) {
    const { descentRate, slope, vx, angle } = worst.arrival;
    list.append(
      entry(SCORECARD.descentRate, speed(descentRate)),
      entry(SCORECARD.slope, slopeWords(slope, vx)),
      entry(SCORECARD.lean, leanWords(angle)),
    );
    list.append(entry(term('crush', SCORECARD.strokes), ...strokeWords(card.strokeUsed)));
    if (!isMoving(flight)) list.append(restEntry(card, flight.angle));
    else if (isCrash(card)) list.append(entry(SCORECARD.rest, SCORECARD.stillMoving));
  }
  list.append(
    entry(SCORECARD.propellant, mass(card.propellantLeft)),
    ...siteEntries(site, worst === undefined ? undefined : flight.x),
  );
  return list;
}

/** What Site had marked and said of the ground, against where it came to rest; nothing of a spot where it never touched down. */
function siteEntries({ spot, ground }: TableView['site'], restX: number | undefined): readonly HTMLElement[] {
  const marked =
    spot === undefined || restX === undefined ? [] : [entry(SCORECARD.spot, missWords(spot.meters - restX))];
  const noted = ground === 'as mapped' ? [] : [entry(SCORECARD.groundSaid, SCORECARD.thanMapped(ground))];
  return [...marked, ...noted];
}

/** How far a spot lies from where the lander is, and to which side. */
function missWords(meters: number): string {
  if (Math.abs(meters) < AT_SPOT) return SCORECARD.atSpot;
  return SCORECARD.besideSpot(distance(Math.abs(meters)), meters > 0 ? 'right' : 'left');
}

/** How it stands or lies, and how much farther it could turn. */
function restEntry({ staticTilt }: Scorecard, attitude: number): HTMLElement {
  if (hasFallen(attitude)) return entry(SCORECARD.rest, SCORECARD.lies);
  const left = staticTilt?.left ?? 0;
  return entry(SCORECARD.rest, leanWords(attitude), left > 0 ? SCORECARD.restLeft(degrees(left, 0)) : undefined);
}

/** The lean from upright, whichever way round it got there. */
function leanWords(attitude: number): string {
  const lean = Math.acos(Math.min(1, Math.cos(attitude)));
  return lean < 0.01 ? SCORECARD.upright : degrees(lean);
}

/** How many legs gave way, or how far the hardest pressed one is crushed. */
function strokeWords(strokes: readonly number[]): readonly [string, string] {
  const gone = strokes.filter((strokeUsed) => gaveWay({ strokeUsed })).length;
  const [most, count] = [Math.max(0, ...strokes), strokes.length];
  return gone > 0
    ? [SCORECARD.legsGone(gone, count), SCORECARD.legsGoneNote]
    : [percent(most), SCORECARD.strokesNote(count)];
}

function slopeWords(slope: number, vx: number): string {
  if (isLevel(slope)) return SECTION.level;
  const direction = Math.abs(vx) < 0.005 ? '' : vx * slope < 0 ? SCORECARD.movingDown : SCORECARD.movingUp;
  return `${degrees(Math.abs(slope))}${direction}`;
}

/** How the limit was found, what of it was not checked, the reference, and the commands: folded away. */
function limitNotes({ arrival, limit }: JudgedContact, plan: PlayedPlan): HTMLElement {
  const outside = [...outsideAtTouchdown(plan.setup, arrival), ...outsideInSimulation(plan, arrival)];
  return createCheck({
    limit,
    arrival,
    formula: checkCommand(plan.setup, arrival),
    simulation: simulateCommand(plan, arrival),
    outside: [...new Set(outside)],
  });
}
