import { CONDITION_FIELDS } from '../../engine/condition/index.ts';
import { formatLander, parseLanderText, type Lander } from '../../engine/lander/index.ts';
import { accept, formatProblem, refuse, type Result } from '../../engine/result.ts';
import {
  ASSUMED_DESCENT,
  ASSUMED_SPEED,
  DEFAULT_FRICTION,
  reshape,
  SHAPE_FIELDS,
  type Reshaping,
  type StudyCase,
} from '../../engine/study/index.ts';
import { findWorld } from '../../engine/worlds.ts';
import { findLander } from '../../levels/index.ts';

/** Everything that is set on the workbench: a link holds all of it. */
export interface BenchState {
  /** A shelf lander's id, or FROM_FILE. */
  readonly lander: string;
  /** Where the lander came from a file. */
  readonly file: Lander | undefined;
  /** What of it was changed. */
  readonly shape: Reshaping;
  /** Indices of legs that are gone. */
  readonly missing: readonly number[];
  readonly world: string;
  readonly arrival: { readonly [Name in ArrivalName]: number };
}

export const FROM_FILE = 'file';

/** What is asked about, besides the lander: fields of the engine, with bounds of their own where a study needs them. */
export const ARRIVAL_BOUNDS = {
  slopeDeg: { ...CONDITION_FIELDS.slopeDeg, least: 0, most: 45, start: 5, step: 0.5 },
  friction: { ...CONDITION_FIELDS.friction, most: 3, start: DEFAULT_FRICTION, step: 0.05 },
  descentRate: { ...CONDITION_FIELDS.descentRate, most: 12, start: ASSUMED_DESCENT, step: 0.1 },
  horizontalSpeed: { ...CONDITION_FIELDS.horizontalSpeed, least: -12, most: 12, start: ASSUMED_SPEED, step: 0.1 },
} as const;
export const ARRIVAL_NAMES = ['slopeDeg', 'friction', 'descentRate', 'horizontalSpeed'] as const;
export type ArrivalName = (typeof ARRIVAL_NAMES)[number];

export const FIRST_STATE: BenchState = {
  lander: 'trivet',
  file: undefined,
  shape: {},
  missing: [],
  world: 'moon',
  arrival: {
    slopeDeg: ARRIVAL_BOUNDS.slopeDeg.start,
    friction: ARRIVAL_BOUNDS.friction.start,
    descentRate: ARRIVAL_BOUNDS.descentRate.start,
    horizontalSpeed: ARRIVAL_BOUNDS.horizontalSpeed.start,
  },
};

/** The lander before anything of it was changed. */
export function baseLander({ lander, file }: BenchState): Lander {
  const found = lander === FROM_FILE ? file : findLander(lander);
  if (found === undefined) throw new Error(`There is no lander named ${lander}`);
  return found;
}

/** What the state asks the engine; or, in words, why there is no such lander. */
export function studyOf(state: BenchState): Result<StudyCase, string> {
  const shaped = reshape(baseLander(state), state.shape);
  if (!shaped.ok) return refuse(shaped.error.map(formatProblem)[0] ?? '');
  const { legs } = shaped.value;
  const gravity = findWorld(state.world)?.gravity ?? 0;
  const missing = state.missing.filter((leg) => leg < legs.length);
  return accept({ lander: shaped.value, gravity, missing, ...state.arrival });
}

/** The state in an address: what stands after '?', and after '#' a lander from a file. */
interface BenchAddress {
  readonly search: string;
  readonly hash: string;
}

export function addressOfState(state: BenchState, beside: BenchState | undefined): BenchAddress {
  const words = wordsOf(state);
  if (beside !== undefined) words.set('beside', wordsOf(beside).toString());
  const files = [state, beside].map((one) => (one?.file === undefined ? '' : encodeLander(one.file)));
  const hash = files.every((file) => file === '') ? '' : `#${files.join('.')}`;
  return { search: `?workbench&${words.toString()}`, hash };
}

function wordsOf({ lander, shape, missing, world, arrival }: BenchState): URLSearchParams {
  const words = new URLSearchParams({ lander, world });
  for (const name of ARRIVAL_NAMES) words.set(name, String(arrival[name]));
  if (missing.length > 0) words.set('missing', missing.map((leg) => leg + 1).join(','));
  for (const field of SHAPE_FIELDS) if (shape[field] !== undefined) words.set(field, String(shape[field]));
  return words;
}

/** What an address asks for, and what of it could not be read: such a field stands as at the start, and is named. */
interface ReadAddress {
  readonly state: BenchState;
  readonly beside: BenchState | undefined;
  readonly problems: readonly string[];
}

export function stateInAddress({ search, hash }: BenchAddress): ReadAddress {
  const words = new URLSearchParams(search);
  const [own = '', other = ''] = hash.replace(/^#/, '').split('.');
  const problems: string[] = [];
  const state = readState(words, own, problems);
  const beside = words.get('beside');
  return {
    state,
    beside: beside === null ? undefined : readState(new URLSearchParams(beside), other, problems),
    problems,
  };
}

function readState(words: URLSearchParams, file: string, problems: string[]): BenchState {
  const refuseField = (path: string, expected: string, came: string) => {
    problems.push(formatProblem({ code: 'workbench/not-read', path, expected, came: came.slice(0, 40) }));
  };
  const read = { ...FIRST_STATE, ...readLander(words.get('lander'), file, refuseField) };
  const world = words.get('world') ?? FIRST_STATE.world;
  if (findWorld(world) === undefined) refuseField('world', 'a world of the list', world);
  const number = (name: string, bounds: { readonly least: number; readonly most: number }): number | undefined => {
    const came = words.get(name);
    if (came === null) return undefined;
    const value = Number(came);
    if (came.trim() !== '' && value >= bounds.least && value <= bounds.most) return value;
    refuseField(name, `a number from ${bounds.least} to ${bounds.most}`, came);
    return undefined;
  };
  const arrivalOf = (name: ArrivalName) => number(name, ARRIVAL_BOUNDS[name]) ?? FIRST_STATE.arrival[name];
  const arrival = {
    slopeDeg: arrivalOf('slopeDeg'),
    friction: arrivalOf('friction'),
    descentRate: arrivalOf('descentRate'),
    horizontalSpeed: arrivalOf('horizontalSpeed'),
  };
  const shape: Record<string, number> = {};
  for (const field of SHAPE_FIELDS) {
    const value = number(field, { least: 0, most: 1e9 });
    if (value !== undefined) shape[field] = value;
  }
  const state = {
    ...read,
    world: findWorld(world) === undefined ? FIRST_STATE.world : world,
    arrival,
    shape,
    missing: readMissing(words.get('missing'), refuseField),
  };
  const asked = studyOf(state);
  if (asked.ok) return state;
  problems.push(asked.error);
  return { ...state, shape: {} };
}

type RefuseField = (path: string, expected: string, came: string) => void;

function readLander(name: string | null, file: string, refuseField: RefuseField): Pick<BenchState, 'lander' | 'file'> {
  if (name === FROM_FILE) {
    const decoded = decodeLander(file);
    if (decoded !== undefined) return { lander: FROM_FILE, file: decoded };
    refuseField('lander', 'a lander behind the # of the link', file === '' ? 'nothing' : 'something else');
  } else if (name !== null && findLander(name) === undefined) {
    refuseField('lander', 'a lander of the shelf', name);
  } else if (name !== null) {
    return { lander: name, file: undefined };
  }
  return { lander: FIRST_STATE.lander, file: undefined };
}

function readMissing(came: string | null, refuseField: RefuseField): readonly number[] {
  if (came === null) return [];
  const legs = came.split(',').map(Number);
  if (legs.every((leg) => Number.isInteger(leg) && leg >= 1 && leg <= 24))
    return [...new Set(legs)].map((leg) => leg - 1);
  refuseField('missing', 'numbers of legs from 1, such as 1,3', came);
  return [];
}

/** Letters that an address may hold as they are. */
function encodeLander(lander: Lander): string {
  const bytes = new TextEncoder().encode(JSON.stringify(formatLander(lander)));
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function decodeLander(text: string): Lander | undefined {
  try {
    const bytes = Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) =>
      letter.charCodeAt(0),
    );
    const read = parseLanderText(new TextDecoder().decode(bytes));
    return read.ok ? read.value : undefined;
  } catch {
    return undefined;
  }
}
