import { describe, expect, it } from 'vitest';
import type { Drill } from '../../../engine/drill/index.ts';
import { groundHeight } from '../../../engine/ground/index.ts';
import { formatProblem } from '../../../engine/result.ts';
import type { TablePlan } from '../../../engine/table/index.ts';
import {
  choiceOfDrill,
  createGround,
  DRILLS,
  findSite,
  layDrill,
  layPlan,
  parseDrill,
  parsePlanChoice,
} from '../../../levels/index.ts';
import { drillJson } from '../../support/drillFile.ts';

function drillOf(changed: object): Drill {
  const drill = parseDrill({ ...drillJson(), ...changed });
  if (!drill.ok) throw new Error(drill.error.map(formatProblem).join('; '));
  return drill.value;
}

function laidDrill(drill: Drill, seed?: number): TablePlan {
  const plan = layDrill(drill, choiceOfDrill(drill, seed));
  if (!plan.ok) throw new Error(plan.error.map(formatProblem).join('; '));
  return plan.value;
}

const slopeBetween = (plan: TablePlan['setup']['terrain'], from: number, to: number) =>
  (Math.atan((groundHeight(plan, to) - groundHeight(plan, from)) / (to - from)) * 180) / Math.PI;

const rise = (deg: number) => 40 * Math.tan((deg * Math.PI) / 180);

describe('a drill of ours', () => {
  it('[DR4] says in its brief the descent rates that its stand-in keeps to', () => {
    for (const { brief, profile } of DRILLS) {
      const [first, ...lower] = profile;
      const above = (i: number) => profile[i]?.above;
      const said = [
        `${first?.rate} m/s down from the start`,
        ...lower.map(({ rate }, i) => `${rate} below ${above(i)} m`),
      ];
      expect(brief.join(' ')).toContain(said.join(', '));
    }
  });
});

describe('a drill that is laid out', () => {
  it('[LE14] flies what its file says, by instruments, and carries the whole drill', () => {
    for (const drill of DRILLS) {
      const plan = laidDrill(drill);
      expect(plan).toMatchObject({ title: drill.title, drill, landerId: drill.plan.lander, siteId: drill.plan.site });
      expect(plan.instruments).toMatchObject({ seed: drill.plan.seed, standIns: 'awake' });
      expect(plan.choice).toMatchObject({ ...drill.plan, drill: drill.id, sensorTrouble: 'none' });
    }
  });

  it('[LE14] is the same from its choice as from its file, with its own seed or another', () => {
    const [drill] = DRILLS;
    if (drill === undefined) throw new Error('there is a drill');
    for (const seed of [drill.plan.seed, 77]) {
      const choice = parsePlanChoice(JSON.parse(JSON.stringify(choiceOfDrill(drill, seed))));
      expect(choice.ok && layPlan(choice.value)).toEqual({ ok: true, value: laidDrill(drill, seed) });
    }
    expect(laidDrill(drill, 77).setup.terrain).not.toEqual(laidDrill(drill).setup.terrain);
  });

  it.each([
    { changed: { lander: 'steeple' }, says: 'lander: expected "trivet", as the drill has it, got text "steeple"' },
    { changed: { sensorTrouble: 'seeded' } as const, says: 'sensorTrouble: expected "none"' },
    { changed: { drill: 'quiet-altimeters' }, says: 'did you mean quiet-altimeter?), got text "quiet-altimeters"' },
  ])('[LE14] refuses $changed beside a drill', ({ changed, says }) => {
    const drill = drillOf({});
    const laid = layPlan({ ...choiceOfDrill(drill), ...changed });
    expect(laid.ok ? [] : laid.error.map(formatProblem)).toEqual([expect.stringContaining(says)]);
  });

  it('[LE15] stands on ground steeper than its map by what it says, and level where the map is level', () => {
    const plan = {
      lander: 'trivet',
      site: 'coombe-ledge',
      world: 'moon',
      start: 'far',
      mode: 'by hand',
      pace: 1,
      seed: 3,
    };
    const { setup, instruments } = laidDrill(drillOf({ plan, truth: { steeperDeg: 2.5, faults: [] } }));
    const site = findSite('coombe-ledge');
    const surveyed = instruments?.surveyed;
    if (site === undefined || surveyed === undefined) throw new Error('there is a site, and a survey of it');
    expect(surveyed).toEqual(createGround(site, 3));
    // undulation, bowls and ledges are the same in both, so that only the base slopes differ: 8 and 10.5 deg, downhill to the right
    const steeperBy = (from: number, to: number) =>
      groundHeight(setup.terrain, to) -
      groundHeight(setup.terrain, from) -
      (groundHeight(surveyed, to) - groundHeight(surveyed, from));
    expect(steeperBy(0, 40)).toBeCloseTo(rise(8) - rise(10.5), 9);
    expect(steeperBy(-45, -25)).toBeCloseTo(0, 9);
    expect(groundHeight(setup.terrain, site.startX)).toBeCloseTo(groundHeight(surveyed, site.startX), 9);
    expect(slopeBetween(setup.terrain, 0, 200)).toBeCloseTo(-10.5, 0);
  });
});
