import { describe, expect, it } from 'vitest';
import { callJson, callKilter } from './runKilter.ts';

interface Limit {
  readonly note: string | null;
  readonly least: { readonly azimuthDeg: number; readonly plasticHorizontal: number };
}
const limitOf = async (line: string): Promise<Limit> => (await callJson(['limit', ...line.split(' ')])) as Limit;
const touchdown = async (line: string): Promise<{ readonly limitsHit: readonly string[] }> =>
  (await callJson(['touchdown', ...line.split(' ')])) as { limitsHit: readonly string[] };

describe('a limit of a lander that comes down', () => {
  it.each([
    'steeple --slope 8',
    'steeple --slope -8',
    'steeple --slope 5 --rate 2',
    'steeple --slope 12 --friction 0.6',
  ])('is not to be relied on where a simulated touchdown short of it tips: %s', async (line) => {
    const { note, least } = await limitOf(`${line} --descent 1.5`);
    expect(note).toContain('at 95 % of the plastic limit it tips already');
    // as anyone can see for themselves
    const speed = 0.95 * least.plasticHorizontal;
    const { limitsHit } = await touchdown(`${line} --descent 1.5 --horizontal ${speed} --yaw ${-least.azimuthDeg}`);
    expect(limitsHit.some((limit) => limit.startsWith('tip'))).toBe(true);
    expect((await callKilter(['limit', ...line.split(' '), '--descent', '1.5'])).out).toContain(note);
  });

  it('sees the fall line where one is given, in the frame of the lander', async () => {
    const { note, least } = await limitOf('steeple --slope 8 --fall-azimuth 90 --descent 1.5');
    const speed = 0.95 * least.plasticHorizontal;
    const { limitsHit } = await touchdown(
      `steeple --slope 8 --slope-azimuth ${90 - least.azimuthDeg} --descent 1.5 --horizontal ${speed} --yaw ${-least.azimuthDeg}`,
    );
    expect(note).not.toBeNull();
    expect(limitsHit.some((limit) => limit.startsWith('tip'))).toBe(true);
  });

  it('is not to be relied on where a leg is used up even without drift', async () => {
    expect((await limitOf('trivet --world earth --descent 6')).note).toContain('a leg is used up even without drift');
  });

  it.each(['trivet --slope 5 --descent 2', 'trivet --descent 1', 'steeple --slope 8', 'steeple --slope 8 --descent 0'])(
    'has no such note where it stays upright, or does not come down: %s',
    async (line) => {
      expect((await limitOf(line)).note).toBeNull();
    },
  );
});
