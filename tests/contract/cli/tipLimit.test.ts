import { beforeAll, describe, expect, it } from 'vitest';
import { callJson, callKilter } from './runKilter.ts';

interface Limit {
  readonly note: string | null;
  readonly least: {
    readonly azimuthDeg: number;
    readonly plasticHorizontal: number;
    readonly tip?: number | null;
    readonly tipTolerance: number;
    readonly tipUpTo: number;
    readonly tipFriction: number;
    readonly tipAzimuthDeg: number | null;
    readonly gear: number | null;
    readonly gearAzimuthDeg: number | null;
    readonly firstLimit: string;
  };
  readonly byAzimuth: readonly { readonly azimuthDeg: number; readonly tip?: number | null }[];
}
const limitOf = async (line: string): Promise<Limit> => (await callJson(['limit', ...line.split(' ')])) as Limit;

/** On a slope so steep that its uphill feet land first; it takes seconds, so it is asked once. */
const STEEP = 'steeple --slope 8 --descent 1.5';
let steep: Limit;
beforeAll(async () => {
  steep = await limitOf(`${STEEP} --step 60`);
}, 60_000);

/** Limits that a touchdown toward an azimuth of the lander hits, as anyone can see for themselves. */
async function hit(
  line: string,
  { speed, azimuth, friction }: { speed: number; azimuth: number; friction: number },
): Promise<string> {
  const asked = `${line} --horizontal ${speed} --yaw ${-azimuth} --friction ${friction}`;
  const found = (await callJson(['touchdown', ...asked.split(' ')])) as { limitsHit: readonly string[] };
  return found.limitsHit.join(', ');
}

describe('the tip limit of a lander', () => {
  it('is one below which a simulated touchdown stands toward every azimuth sampled, and above which it tips', async () => {
    const { least, byAzimuth } = steep;
    const { tip, tipTolerance, tipAzimuthDeg, tipFriction } = least;
    expect(tip).toBeGreaterThan(0);
    const at = { azimuth: tipAzimuthDeg!, friction: tipFriction };
    expect(await hit(STEEP, { ...at, speed: tip! + tipTolerance })).toMatch(/^tip/);
    for (const friction of [0.8, 1.25])
      for (let azimuth = 0; azimuth < 360; azimuth += 30)
        expect(await hit(STEEP, { speed: tip! - tipTolerance, azimuth, friction })).not.toMatch(/tip/);
    for (const row of byAzimuth) expect(row.tip).toBeGreaterThanOrEqual(tip! - tipTolerance);
  }, 60_000);

  it('is told with the reason where the closed form says six times as much', () => {
    const { note, least } = steep;
    expect(least.plasticHorizontal / least.tip!).toBeGreaterThan(5);
    expect(note).toContain('lands on its uphill feet first');
    expect(least.firstLimit).toBe('tip');
  });

  it('sees the fall line where one is given, in the frame of the lander', async () => {
    const { least } = await limitOf('steeple --slope 8 --fall-azimuth 90 --descent 1.5 --step 90');
    const azimuth = least.tipAzimuthDeg!;
    const turned = `steeple --descent 1.5 --slope 8 --slope-azimuth ${90 - azimuth}`;
    const at = { azimuth, friction: least.tipFriction };
    expect(await hit(turned, { ...at, speed: least.tip! + least.tipTolerance })).toMatch(/tip/);
  }, 60_000);

  it('without a descent rate takes that of touchdown, and says so', async () => {
    const { out } = await callKilter('limit steeple --slope 12 --step 90'.split(' '));
    expect(out).toContain('Warning: no --descent given; the simulation comes down at 1 m/s');
    expect(out).toContain('Tip limit, simulated: 0 m/s: it tips at any speed');
    expect((await limitOf('steeple --slope 12 --descent 1 --step 90')).least.tip).toBe(0);
  }, 60_000);

  it('names on level ground no leg that touches first, since all touch together', async () => {
    const { out } = await callKilter('limit steeple --descent 1.5 --step 90'.split(' '));
    expect(out).not.toMatch(/first turn it|feet first/);
    expect(out).toContain('Tip limit, simulated: ');
  }, 60_000);

  it('says from which speed a leg is used up, and that this comes first', async () => {
    const line = 'bolster --slope 8 --descent 1.5';
    const { least } = await limitOf(`${line} --step 90`);
    expect(least.firstLimit).toBe('gear');
    expect(least.gear).toBeLessThan(least.tip!);
    const frictions = [0.8, 1.25];
    const found = await Promise.all(
      frictions.map((friction) =>
        hit(line, { speed: least.gear! + least.tipTolerance, azimuth: least.gearAzimuthDeg!, friction }),
      ),
    );
    expect(found.join()).toContain('crush exhausted');
  }, 60_000);

  it('is left out where the closed forms alone are asked for, which are never called cautious', async () => {
    const { least, byAzimuth } = await limitOf('steeple --slope 8 --descent 1.5 --closed-form');
    expect(least.tip).toBeUndefined();
    expect(byAzimuth.every(({ tip }) => tip === undefined)).toBe(true);
    const { out } = await callKilter('limit steeple --slope 8 --closed-form'.split(' '));
    expect(out).toContain('no limit of the lander');
    expect((await callKilter(['limit', '--help'])).out).not.toContain('cautious');
  });
});

describe('plain geometry', () => {
  it('takes the worse of leading and trailing foot when nothing is said', async () => {
    const line = '--half-stance 1 --center-height 2 --mass 1000 --inertia 1000 --slope 5 --descent 1';
    const each = await Promise.all(
      ['leading', 'trailing'].map(async (foot) => (await limitOf(`${line} --first-contact ${foot}`)).least),
    );
    const speeds = each.map(({ plasticHorizontal }) => plasticHorizontal);
    expect(Math.max(...speeds)).toBeGreaterThan(1.5 * Math.min(...speeds));
    expect((await limitOf(line)).least.plasticHorizontal).toBe(Math.min(...speeds));
  });
});
