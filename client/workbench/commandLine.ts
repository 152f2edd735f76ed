import { ASSUMED_DESCENT, DEFAULT_FRICTION } from '../../engine/study/index.ts';
import { FROM_FILE, type BenchState } from './benchState.ts';

/** The file that "Save the campaign" makes. */
export const CAMPAIGN_FILE = 'campaign.json';

/** The lander as the command line is given it: its name, or the file that "Save the lander" makes. */
export function landerWord(state: BenchState): string {
  return isShelf(state) ? state.lander : landerFile(state);
}

export function landerFile({ lander, file }: BenchState): string {
  return `${lander === FROM_FILE ? (file?.id ?? 'lander') : lander}-changed.json`;
}

/** Whether the command line knows this lander by its name. */
export function isShelf({ lander, shape }: BenchState): boolean {
  return lander !== FROM_FILE && Object.keys(shape).length === 0;
}

/** A verb with the arrival of the state, in the options of the command line; what is as assumed there is left out. */
export function commandFor(
  verb: 'stand' | 'limit' | 'touchdown' | 'envelope' | 'compare' | 'trade' | 'report',
  state: BenchState,
  more: readonly string[] = [],
): string {
  const { arrival, world, missing } = state;
  const { slopeDeg, descentRate, friction } = arrival;
  const legs = missing.length === 0 ? [] : [`--missing ${missing.map((leg) => leg + 1).join(',')}`];
  const place = world === 'moon' ? [] : [`--world ${world}`];
  const slope = slopeDeg === 0 ? [] : [`--slope ${slopeDeg}`];
  const descent = verb === 'touchdown' && descentRate === ASSUMED_DESCENT ? [] : [`--descent ${descentRate}`];
  const grip = friction === DEFAULT_FRICTION ? [] : [`--friction ${friction}`];
  const speed = [`--horizontal ${arrival.horizontalSpeed}`];
  const whole = [...place, ...slope, ...descent, ...speed, ...grip, ...legs];
  const options = {
    stand: [...slope, ...legs],
    limit: [...place, ...slope, ...descent, ...grip, ...legs],
    touchdown: [...place, ...slope, ...descent, ...grip, ...legs],
    envelope: [...place, ...slope, ...grip, ...legs],
    compare: [...place, ...slope, ...descent],
    trade: whole,
    report: whole,
  }[verb];
  return ['npx kilter', verb, landerWord(state), ...options, ...more].join(' ');
}
