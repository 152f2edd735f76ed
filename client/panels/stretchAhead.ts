import { groundHeight, type Profile } from '../../engine/ground/index.ts';

/** A stretch of the section [m]. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Widths that a stretch may have [m]; it moves in sixths of that, so that the picture stands still in between. */
const WIDTHS = [40, 80, 160, 320, 640, 1280];
const MOVES = 6;
/** Of the width, left free to either side of what must be seen [-], [m]. */
const ROOM = 1.4;
const MARGIN = 20;
/** From so high and higher it is as wide as this at least, lower down as the lander is high [m]: half of that to a side can still be reached. */
const IN_REACH = 80;

/** The stretch of ground that holds the lander, where it is heading and what is marked, and what can be reached, within what is known of the ground [m]. */
export function stretchAhead(
  seen: {
    readonly x: number;
    readonly headingFor: number;
    readonly height: number;
    readonly spot?: number | undefined;
  },
  profile: Profile,
): Stretch {
  const first = profile.firstX;
  const last = lastX(profile);
  const places = [seen.x, seen.headingFor, seen.spot ?? seen.x];
  const left = Math.min(...places);
  const right = Math.max(...places);
  const needed = Math.max(ROOM * (right - left) + MARGIN, Math.min(seen.height, IN_REACH));
  const width = Math.min(WIDTHS.find((candidate) => candidate >= needed) ?? needed, last - first);
  const move = width / MOVES;
  const middle = Math.round((left + right) / 2 / move) * move;
  const from = Math.max(first, Math.min(last - width, middle - width / 2));
  return { from, to: from + width };
}

/** x of the last height [m]. */
export function lastX({ firstX, spacing, heights }: Profile): number {
  return firstX + spacing * (heights.length - 1);
}

/** Parts of the stretch on which both feet would stand on a slope no steeper than `most` [rad]: centers of the lander [m]. */
export function levelParts(
  { from, to }: Stretch,
  profile: Profile,
  options: { readonly halfStance: number; readonly most: number },
): readonly Stretch[] {
  const { halfStance, most } = options;
  const step = Math.min(1, (to - from) / 160);
  const parts: { from: number; to: number }[] = [];
  for (let x = from; x <= to; x += step) {
    const rise = groundHeight(profile, x + halfStance) - groundHeight(profile, x - halfStance);
    if (Math.abs(Math.atan2(rise, 2 * halfStance)) > most) continue;
    const open = parts.at(-1);
    if (open !== undefined && x - open.to < 1.5 * step) open.to = x;
    else parts.push({ from: x, to: x });
  }
  return parts.filter((part) => part.to > part.from);
}
