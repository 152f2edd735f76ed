import { SEATS } from '../../engine/table/index.ts';
import type { RunSummary, TableRecord } from '../../engine/record/index.ts';
import type { PlanChoice } from '../../engine/table/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { findLander, findSite } from '../../levels/index.ts';
import { SEAT_NAMES } from '../text/en.ts';
import { LOGBOOK, OUTCOME_WORDS, ratingWords } from '../text/logbook.ts';
import type { ListedRun } from '../../server/messages/index.ts';

/** A run of the list, wherever it is from. */
export interface ShownRun {
  readonly id: string;
  /** Of a run on the server; absent: it was opened from a file. */
  readonly server?: ListedRun;
  readonly record?: TableRecord;
  readonly title: string;
  readonly place: string;
  /** As a person reads and types it, such as '2031-05-04 16:20'; '' for a file, which has none. */
  readonly date: string;
  readonly crew: string;
  readonly ended: string;
  readonly isPending: boolean;
}

export function shownOfServer(server: ListedRun): ShownRun {
  const { id, choice, drillTitle, openedMs, summary, isPending } = server;
  return {
    id,
    server,
    title: drillTitle ?? LOGBOOK.freeDescent,
    place: placeOf(choice),
    date: dateOf(openedMs),
    crew: summary === undefined ? '' : crewOf(summary),
    ended: endedOf(summary, isPending),
    isPending,
  };
}

export function shownOfFile(record: TableRecord, name: string): ShownRun {
  const { choice, drill } = record.header.plan;
  const title = typeof drill === 'object' && drill !== null && 'title' in drill ? drill.title : undefined;
  return {
    id: `file ${name}`,
    record,
    title: typeof title === 'string' ? title : LOGBOOK.freeDescent,
    place: placeOf(choice),
    date: '',
    crew: name,
    ended: LOGBOOK.ofFile,
    isPending: false,
  };
}

function placeOf({ lander, site, world }: PlanChoice): string {
  return LOGBOOK.flown(
    findLander(lander)?.name ?? lander,
    findSite(site)?.name ?? site,
    findWorld(world)?.name ?? world,
  );
}

/** In this browser's time. */
export function dateOf(timeMs: number): string {
  const date = new Date(timeMs);
  const day = [date.getFullYear(), two(date.getMonth() + 1), two(date.getDate())].join('-');
  return `${day} ${two(date.getHours())}:${two(date.getMinutes())}`;
}

function two(value: number): string {
  return String(value).padStart(2, '0');
}

function crewOf({ crew }: RunSummary): string {
  const seated = SEATS.flatMap((seat) => {
    const sitter = crew.find((one) => one.seat === seat);
    return sitter === undefined ? [] : [`${SEAT_NAMES[seat]} ${sitter.name}`];
  });
  return seated.length === 0 ? LOGBOOK.nobody : seated.join(', ');
}

function endedOf(summary: RunSummary | undefined, isPending: boolean): string {
  if (isPending) return LOGBOOK.pending;
  if (summary === undefined) return LOGBOOK.unread;
  return summary.outcome === undefined ? LOGBOOK.unfinished : OUTCOME_WORDS[summary.outcome];
}

/** So many open tables are named. */
const MOST_NAMED = 3;

/** What there is to say of tables at which somebody still is: of their runs nothing can be read yet. '' where there are none. */
export function openWords(runs: readonly ListedRun[]): string {
  const open = runs.filter(({ isOpen }) => isOpen);
  if (open.length === 0) return '';
  const named = open.length > MOST_NAMED ? [] : open;
  return LOGBOOK.openTables(
    open.length,
    named.map(({ drillTitle = LOGBOOK.freeDescent, code }) => LOGBOOK.openTable(drillTitle, code)),
  );
}

/** Runs in which every word of what is looked for stands somewhere: in drill, place, date, seats, names, objectives, ratings or how it ended. */
export function findRuns(runs: readonly ShownRun[], wanted: string): readonly ShownRun[] {
  const words = wanted.toLowerCase().split(/\s+/).filter(Boolean);
  return runs.filter((run) => {
    const text = wordsOf(run).toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

function wordsOf({ title, place, date, crew, ended, server }: ShownRun): string {
  const { summary, code = '', drillTitle = '' } = server ?? {};
  const objectives = summary?.objectives ?? [];
  return [
    title,
    place,
    date,
    crew,
    ended,
    code,
    drillTitle,
    server?.choice.drill ?? '',
    ...(summary?.people ?? []).flatMap(({ name, role }) => [name, role]),
    ...objectives.flatMap(({ text, rating }) => [text, rating === undefined ? '' : ratingWords(rating)]),
  ].join('\n');
}
