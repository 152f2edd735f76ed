import { figure, shortAngle } from '../../engine/figures.ts';
import type { FirstLimit } from '../../engine/touchdown/index.ts';
import type { Arrivals, LeastTipFields, TipFields } from '../../engine/study/index.ts';

/** The tip limit of a lander for people, its headline first. */
export function tipLines(least: LeastTipFields): readonly string[] {
  return [
    `Tip limit, simulated: ${tipSpeed(least)}${directionOf(least)}.`,
    ...(least.standsAgainAt === null
      ? []
      : [`  It stands again at ${figure(least.standsAgainAt, 3)} m/s: a strip of speeds that tip lies below that.`]),
    ...(least.tip === null ? [] : [`  It tips first at friction ${least.tipFriction}.`]),
    `  ${gearWords(least)}${FIRST_WORDS[least.firstLimit]}`,
  ];
}

/** Such as '0.214 m/s horizontally, to within 0.002', '0: it tips at any speed', 'none up to 8.2 m/s'. */
function tipSpeed({ tip, tipTolerance, tipUpTo }: TipFields): string {
  if (tip === null) return `none up to ${figure(tipUpTo, 2)} m/s`;
  if (tip === 0) return '0 m/s: it tips at any speed';
  return `${figure(tip, 3)} m/s horizontally, to within ${figure(tipTolerance, 3)}`;
}

function directionOf({ tipAzimuthDeg, tipLegs }: LeastTipFields): string {
  if (tipAzimuthDeg === null) return '';
  const [first, second] = tipLegs;
  const ahead =
    first === undefined
      ? ''
      : second === undefined
        ? `, along the foot of leg ${first}`
        : `, over the edge of legs ${first} and ${second}`;
  return `, toward azimuth ${shortAngle(tipAzimuthDeg)} deg${ahead}`;
}

function gearWords({ gear, gearAzimuthDeg, tip }: LeastTipFields): string {
  if (gear === null) return `No leg is used up ${tip === null ? 'either' : 'below that'}`;
  if (gear === 0) return 'A leg is used up even without drift';
  const toward = gearAzimuthDeg === null ? '' : ` toward azimuth ${shortAngle(gearAzimuthDeg)} deg`;
  return `A leg is used up from ${figure(gear, 3)} m/s${toward}`;
}

const FIRST_WORDS: Readonly<Record<FirstLimit, string>> = {
  tip: ': tipping comes first.',
  gear: ': that comes before tipping.',
  none: '.',
};

/** Beyond this share of the closed form the difference is explained [-]. */
const WORTH_SAYING = 0.1;
/** Slid or crushed less than this is no reason [m]. */
const NOTICEABLE = 0.02;

/** Why simulation and closed form differ by more than a tenth, from what the touchdown at the limit does; undefined where they do not. */
export function whyDifferent(
  arrivals: Arrivals,
  least: LeastTipFields,
  plastic: number,
  { slopeDeg, descentRate }: { readonly slopeDeg: number; readonly descentRate: number },
): string | undefined {
  const { tip, tipUpTo, tipFriction, tipAzimuthDeg } = least;
  const shown = tip ?? tipUpTo;
  if (Math.abs(shown - plastic) <= WORTH_SAYING * Math.abs(plastic)) return undefined;
  const { slide, strokes } = arrivals.land(tipAzimuthDeg ?? 0, shown, tipFriction);
  const crush = Math.max(...strokes);
  const given = [
    ...(crush > NOTICEABLE ? [`its legs crush by up to ${figure(crush, 2)} m`] : []),
    ...(slide > NOTICEABLE ? [`its feet slide up to ${figure(slide, 2)} m`] : []),
  ].join(' and ');
  const gives = given === '' ? 'its legs give before they hold' : given;
  if (shown > plastic)
    return `The simulation lies above the closed form: ${gives}, which takes up motion that the closed form leaves in the turn.`;
  if (slopeDeg !== 0 && descentRate > 0)
    return 'The simulation lies below the closed form: on a slope an upright lander lands on its uphill feet first, and they spin it downhill; the closed form lands all feet together.';
  return `The simulation lies below the closed form: ${gives}, so that the body leans over while it turns; the closed form has rigid legs.`;
}
