/** What a touchdown at one horizontal speed says of it. */
export interface SpeedSample {
  readonly tips: boolean;
  /** Least distance of the plumb line inside the footprint [m]. */
  readonly margin: number;
}

/** Even steps looked at again within the coarse step below a limit found by halving, and times the last of them is halved toward the limit. */
const LOOKS_BELOW = 12;
const LOOKS_NEAR = 3;

/** Halvings of the spacing about a dip of the margin. */
const DIP_TURNS = 4;

/** A dip counts when its margin is below this share of the largest one seen [-]. */
const DIP_SHARE = 3 / 4;

/** Two speeds not farther apart than the tolerance: at the first it does not happen (unless both are 0), at the second it does [m/s]. */
type SpeedBracket = readonly [number, number];

/**
 * The least speed at which it tips, bracketed from samples at rising `speeds`, the first of which is 0; [0, 0] when it does at the first, undefined when
 * at none.
 *
 * What tips may stand again a little faster: a lander that rocks from edge to edge falls at some number of swings and stands at the next. So neither
 * samples nor halving alone give the least. A strip between two samples shows as a dip of the margin: the bottom of each dip below the first speed
 * found is looked for as well. And within one coarse step below the limit that halving gives, where strips are narrow, LOOKS_BELOW and LOOKS_NEAR
 * more speeds are looked at in the same way, until none tips.
 */
export function leastSpeedThatTips(
  sample: (speed: number) => SpeedSample,
  speeds: readonly number[],
  tolerance: number,
): SpeedBracket | undefined {
  let coarse = leastBracket(sample, speeds);
  let limit: SpeedBracket | undefined;
  while (coarse !== undefined) {
    limit = halve(coarse, (speed) => sample(speed).tips, tolerance);
    coarse = leastBracket(sample, speedsBelow(limit[0], coarse[1] - coarse[0]));
  }
  return limit;
}

/** The least of rising `speeds` at which something happens, and halved toward the one before; [0, 0] when it does at the first, undefined when at none. */
export function firstSpeedThat(
  happens: (speed: number) => boolean,
  speeds: readonly number[],
  tolerance: number,
): SpeedBracket | undefined {
  const found = speeds.findIndex(happens);
  if (found <= 0) return found < 0 ? undefined : [0, 0];
  return halve([speeds[found - 1]!, speeds[found]!], happens, tolerance);
}

function halve([low, high]: SpeedBracket, happens: (speed: number) => boolean, tolerance: number): SpeedBracket {
  while (high - low > tolerance) {
    const middle = (low + high) / 2;
    if (happens(middle)) high = middle;
    else low = middle;
  }
  return [low, high];
}

/** Rising, from `width` below a limit up to it; none for a limit of 0. */
function speedsBelow(limit: number, width: number): readonly number[] {
  const look = width / LOOKS_BELOW;
  const even = Array.from({ length: LOOKS_BELOW }, (_, i) => limit - (LOOKS_BELOW - i) * look);
  const near = Array.from({ length: LOOKS_NEAR }, (_, i) => limit - look / (2 << i));
  return [...even, ...near, limit].filter((speed) => speed > 0);
}

/** The least pair of neighbors, among rising speeds and those about the dips of their margin, of which the first stands and the second tips. */
function leastBracket(sample: (speed: number) => SpeedSample, speeds: readonly number[]): SpeedBracket | undefined {
  const found = speeds.findIndex((speed) => sample(speed).tips);
  if (speeds.length === 0) return undefined;
  if (found === 0) return [0, speeds[0]!];
  const standing = found < 0 ? speeds : speeds.slice(0, found);
  const widest = Math.max(...standing.map((speed) => sample(speed).margin));
  for (let i = 1; i + 1 < standing.length; i++) {
    const [before, at, after] = [standing[i - 1]!, standing[i]!, standing[i + 1]!];
    const { margin } = sample(at);
    if (margin >= sample(before).margin || margin > sample(after).margin || margin > DIP_SHARE * widest) continue;
    const bracket = bottomOfDip(sample, [before, at, after]);
    if (bracket !== undefined) return bracket;
  }
  return found < 0 ? undefined : [speeds[found - 1]!, speeds[found]!];
}

/** Follows the margin of three rising speeds to its least, by halving the spacing about it, until something tips. */
function bottomOfDip(
  sample: (speed: number) => SpeedSample,
  [first, second, third]: readonly [number, number, number],
): SpeedBracket | undefined {
  let [before, at, after] = [first, second, third];
  for (let turn = 0; turn < DIP_TURNS; turn++) {
    const [left, right] = [(before + at) / 2, (at + after) / 2];
    if (sample(left).tips) return [before, left];
    if (sample(right).tips) return [at, right];
    const least = Math.min(sample(left).margin, sample(at).margin, sample(right).margin);
    if (least === sample(left).margin) [after, at] = [at, left];
    else if (least === sample(right).margin) [before, at] = [at, right];
    else [before, after] = [left, right];
  }
  return undefined;
}
