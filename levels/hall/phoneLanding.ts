import { createProblemList, readChoice, readFields, readList, readNumber } from '../../engine/fieldReader.ts';
import type { ProblemList } from '../../engine/fieldReader.ts';
import { accept, refuse, type FieldProblem, type Result } from '../../engine/result.ts';
import { CARD_OUTCOMES, type CardOutcome } from '../../engine/table/index.ts';

/** Of the two answers to who flies, the one that does. */
export const FLIES = 0;

/** Points of the path of one landing. */
export const MOST_POINTS = 40;

/** All that a phone of a hall says of the landing that it flew: how it ended, where it went. */
export interface PhoneLanding {
  readonly outcome: CardOutcome;
  /** Of the center of mass, from the start to rest: across the ground, and up [m]. */
  readonly path: readonly PathPoint[];
  /** The contact that decided; absent where it never met the ground. */
  readonly contact?: PhoneContact;
}

export type PathPoint = readonly [x: number, height: number];

export interface PhoneContact {
  /** Across the ground, whichever way [m/s]. */
  readonly speed: number;
  /** Positive downward [m/s]. */
  readonly descentRate: number;
  /** Least speed at which this very arrival tips; 0: it tips without. Absent where it tips at none that was looked at, or was beyond what is simulated [m/s]. */
  readonly tip?: number;
  /** Up to which speed was looked at; absent beyond what is simulated [m/s]. */
  readonly upTo?: number;
}

const PLACE = { least: -20_000, most: 20_000, unit: 'm' } as const;
const SPEED = { least: 0, most: 1000, unit: 'm/s' } as const;
const RATE = { ...SPEED, least: -SPEED.most } as const;

/** A landing as a phone says it, or what is wrong with it. */
export function parsePhoneLanding(json: unknown): Result<PhoneLanding, readonly FieldProblem[]> {
  const list = createProblemList('landing');
  const fields = readFields(list, json, '', ['outcome', 'path'], ['contact']);
  const outcome = readChoice(list, fields?.outcome, 'outcome', CARD_OUTCOMES);
  const rule = { least: 2, most: MOST_POINTS, of: 'points' };
  const path = readList(list, fields?.path, 'path', rule, (item, at) => readPoint(list, item, at));
  const contact = fields?.contact === undefined ? undefined : readContact(list, fields.contact);
  if (outcome === undefined || path === undefined || list.problems.length > 0) return refuse(list.problems);
  return accept({ outcome, path, ...(contact && { contact }) });
}

function readPoint(list: ProblemList, value: unknown, path: string): PathPoint | undefined {
  const rule = { least: 2, most: 2, of: 'figures' };
  const [x, height] = readList(list, value, path, rule, (item, at) => readNumber(list, item, at, PLACE)) ?? [];
  return x === undefined || height === undefined ? undefined : [x, height];
}

function readContact(list: ProblemList, value: unknown): PhoneContact | undefined {
  const fields = readFields(list, value, 'contact', ['speed', 'descentRate'], ['tip', 'upTo']);
  const speed = readNumber(list, fields?.speed, 'contact.speed', SPEED);
  const descentRate = readNumber(list, fields?.descentRate, 'contact.descentRate', RATE);
  const tip = readNumber(list, fields?.tip, 'contact.tip', SPEED);
  const upTo = readNumber(list, fields?.upTo, 'contact.upTo', SPEED);
  if (speed === undefined || descentRate === undefined) return undefined;
  return { speed, descentRate, ...(tip !== undefined && { tip }), ...(upTo !== undefined && { upTo }) };
}
