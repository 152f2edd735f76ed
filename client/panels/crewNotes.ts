import { SEATS, type Seat, type TableView } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { CREW_NOTES, NAMED_CAUSE_WORDS, SEAT_NAMES, SOURCE_NAMES, TALK } from '../text/en.ts';
import { TURNED } from '../text/facing.ts';
import { degrees, percent, seconds, speed } from '../text/numbers.ts';
import { element } from './element.ts';
import { addresseeWords } from './sentenceWords.ts';
import { aheadWords } from './siteWords.ts';

/** A lander that has turned by less has not [rad]: half a degree. */
const HARDLY_TURNED = Math.PI / 360;

/** One thing that a seat has set or said, or that is still to be done by it. */
export interface CrewNote {
  readonly seat: Seat;
  readonly words: string;
}

/** What the seats have set and said, as the whole crew is told; what stands as it began is left out. */
export function crewNotes(view: TableView): readonly CrewNote[] {
  return [...engineNotes(view), ...siteNotes(view), ...sourceNotes(view)];
}

/** A line a seat: 'Site: spot 10 m, limit 0.40 m/s'. */
export function noteLines(notes: readonly CrewNote[]): readonly string[] {
  return SEATS.flatMap((seat) => {
    const own = notes.filter((one) => one.seat === seat).map(({ words }) => words);
    return own.length === 0 ? [] : [`${SEAT_NAMES[seat]}: ${own.join(' · ')}`];
  });
}

/** What waits for somebody: words not said yet, and what was begun and not brought to an end. */
export function openMatters({
  site,
  rejected,
  named,
  aligning,
  engine,
  waiting,
  talk,
  flight,
}: TableView): readonly CrewNote[] {
  const unnamed = rejected.filter((source) => named.every((one) => one.source !== source));
  return [
    ...unnamed.map((source) => note('sensors', CREW_NOTES.causeOpen(SOURCE_NAMES[source].toLowerCase()))),
    ...(aligning === undefined ? [] : [note('sensors', CREW_NOTES.aligning(seconds(Math.ceil(aligning))))]),
    ...(engine.cutOff === 'armed' ? [note('propellant', CREW_NOTES.armed)] : []),
    ...(site.spot === undefined ? [note('site', CREW_NOTES.noSpot)] : []),
    ...(site.limitHundredths === undefined ? [note('site', CREW_NOTES.noLimit)] : []),
    ...waiting.map(({ name }) => note('lead', CREW_NOTES.waits(name))),
    ...talk.open.map(({ from, to, after, isReadBack }) =>
      note(from, TALK.loop(addresseeWords(to), seconds(Math.floor(flight.tick / TICK_RATE - after)), isReadBack)),
    ),
  ];
}

/** A list of notes, a line each, made anew when a word of it changes. */
export function createNoteList(): { readonly list: HTMLElement; show(lines: readonly string[]): void } {
  const list = element('ul', { class: 'note-list' });
  let shown = '';
  return {
    list,
    show(lines) {
      list.hidden = lines.length === 0;
      if (lines.join('\n') === shown) return;
      shown = lines.join('\n');
      list.replaceChildren(...lines.map((words) => element('li', {}, words)));
    },
  };
}

/** For the own card: what the others have set and said. Lead has it on a card of its own. */
export function createNoteLine(): { readonly list: HTMLElement; refresh(view: TableView): void } {
  const notes = createNoteList();
  const { list } = notes;
  list.setAttribute('aria-label', CREW_NOTES.label);
  return {
    list,
    refresh(view) {
      const { seat } = view.you;
      const isTold = view.stage === 'descending' && seat !== 'lead';
      notes.show(isTold ? noteLines(crewNotes(view).filter((one) => one.seat !== seat)) : []);
    },
  };
}

function note(seat: Seat, words: string): CrewNote {
  return { seat, words };
}

function engineNotes({ engine }: TableView): readonly CrewNote[] {
  const { ceilingPercent, cutOff, cutAtContact, lineShut } = engine;
  const said = [
    cutOff === 'fired' ? CREW_NOTES.fired : undefined,
    ceilingPercent < 100 ? CREW_NOTES.ceiling(percent(ceilingPercent / 100)) : undefined,
    lineShut ? CREW_NOTES.lineShut : undefined,
    cutAtContact ? undefined : CREW_NOTES.noCutAtContact,
  ];
  return said.filter((words) => words !== undefined).map((words) => note('propellant', words));
}

function siteNotes({ site, flight }: TableView): readonly CrewNote[] {
  const { spot, ground, limitHundredths, facing } = site;
  const said = [
    spot === undefined
      ? undefined
      : CREW_NOTES.spot(aheadWords(spot.meters, flight.x), CREW_NOTES.approaches[spot.approach]),
    limitHundredths === undefined ? undefined : CREW_NOTES.limit(speed(limitHundredths / 100)),
    ground === 'as mapped' ? undefined : CREW_NOTES.ground(ground),
    facing === undefined ? undefined : TURNED.ordered(facing, nowWords(flight.facing?.yaw)),
  ];
  return said.filter((words) => words !== undefined).map((words) => note('site', words));
}

/** How far it has turned, where it has. */
function nowWords(yaw = 0): string {
  const angle = degrees(Math.abs(yaw), 0);
  return Math.abs(yaw) < HARDLY_TURNED ? '' : TURNED.now(angle, yaw > 0 ? 'left' : 'right');
}

function sourceNotes({ rejected, named }: TableView): readonly CrewNote[] {
  const causes = named.map(({ source, cause }) =>
    note('sensors', CREW_NOTES.named(SOURCE_NAMES[source].toLowerCase(), NAMED_CAUSE_WORDS[cause])),
  );
  const others = rejected.filter((source) => named.every((one) => one.source !== source));
  return [
    ...causes,
    ...others.map((source) => note('sensors', CREW_NOTES.rejected(SOURCE_NAMES[source].toLowerCase()))),
  ];
}
