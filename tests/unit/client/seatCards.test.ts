import { describe, expect, it } from 'vitest';
import { alignmentWords } from '../../../client/panels/alignment.ts';
import { failureWords } from '../../../client/panels/beliefTable.ts';
import { crewNotes, noteLines, openMatters } from '../../../client/panels/crewNotes.ts';
import { oddsWords } from '../../../client/panels/leadCard.ts';
import { aimedHeights, HeightHistory } from '../../../client/panels/planDrawing.ts';
import { apartWords, lightWords } from '../../../client/panels/propellantCard.ts';
import { readingText, SEAT_READINGS } from '../../../client/panels/readings.ts';
import { spotSaid } from '../../../client/panels/spotMarker.ts';
import { aheadWords, legWords, offeredLimit, slopeRangeWords, slopeWords } from '../../../client/panels/siteWords.ts';
import { levelParts, stretchAhead } from '../../../client/panels/stretchAhead.ts';
import { ALIGNING_TICKS, SEATS, type SiteReadings, type TableView } from '../../../engine/table/index.ts';
import { TICK_RATE } from '../../../engine/world/index.ts';
import { viewOf } from '../../support/flightView.ts';

const THIN = '\u202f';
const NOTHING_READ: SiteReadings = { locked: [], legsState: 'no data' };

function legsLit(...lit: readonly boolean[]) {
  return lit.map((inContact) => ({ inContact }));
}

function viewWith(more: Partial<TableView>): TableView {
  return { ...viewOf({}), ...more };
}

describe('the four readings of a seat', () => {
  it('are four for each, and no two seats have the same', () => {
    const sets = SEATS.map((seat) => SEAT_READINGS[seat]);
    for (const set of sets) expect(new Set(set).size).toBe(4);
    expect(new Set(sets.map((set) => set.join())).size).toBe(SEATS.length);
  });

  it('say how long the propellant lasts to whoever reads it, whole seconds, rounded down', () => {
    const readings = { gaugeState: 'valid', reckoned: 90, seconds: 41.9, burns: true } as const;
    const context = { maxThrust: 1, burnPerImpulse: 1 };
    expect(readingText('lasts', viewWith({ propellantReadings: readings }), context)).toBe(`41${THIN}s`);
    expect(readingText('lasts', viewWith({}), context)).toBe('–');
  });

  it('count the sources that go into what is believed, of those that are weighed', () => {
    const source = { source: 'altimeter', state: 'valid', judgment: 'accepted', values: [1] } as const;
    const sources = [
      { ...source, isUsed: true, disagreement: 0.1 },
      { ...source, isUsed: false, disagreement: 9 },
      { ...source, isUsed: false },
    ];
    expect(readingText('used', viewWith({ sources }), { maxThrust: 1, burnPerImpulse: 1 })).toBe('1 of 2');
  });
});

describe('the limit that Site is offered to state', () => {
  it.each([
    [{ limitLeft: 0.629, limitRight: 0.481 }, 48],
    [{ limitLeft: 0.29, limitRight: 3 }, 29],
    [{ limitRight: 0.4 }, 40],
    [{ limitLeft: 0.009 }, 0],
    [{ limitLeft: 99, limitRight: 99 }, 1000],
  ])('is the least to either side, rounded down: %o gives %i hundredths', (limits, hundredths) => {
    expect(offeredLimit({ ...NOTHING_READ, ...limits })).toBe(hundredths);
  });

  it('is none where no limit is known', () => {
    expect(offeredLimit(NOTHING_READ)).toBeUndefined();
  });
});

describe('what Site reads', () => {
  it('names the way in which a slope rises, and calls what is too small to read level', () => {
    expect(slopeWords(Math.PI / 60)).toBe('3.0° up to the right');
    expect(slopeWords(-Math.PI / 60)).toBe('3.0° up to the left');
    expect(slopeWords(0.0008)).toBe('level');
    expect(slopeWords(undefined)).toBe('no figure');
  });

  it('says between which slopes it may be, and nothing where that is one', () => {
    const slopes = { slopeLeast: -Math.PI / 180, slopeMost: Math.PI / 36 };
    expect(slopeRangeWords({ ...NOTHING_READ, ...slopes })).toBe('from 1.0° up to the left to 5.0° up to the right');
    expect(slopeRangeWords({ ...NOTHING_READ, slopeLeast: 0, slopeMost: 0 })).toBe('');
    expect(slopeRangeWords(NOTHING_READ)).toBe('');
  });

  it('names the legs that are not locked by their numbers', () => {
    expect(legWords([true, true, true])).toBe('all locked');
    expect(legWords([true, false, true])).toBe('leg 2 not locked');
    expect(legWords([false, true, false])).toBe('legs 1, 3 not locked');
    expect(legWords([])).toBe('no figure');
  });

  it('gives a place by how far ahead it is and to which side', () => {
    expect(aheadWords(124, 100.2)).toBe(`24${THIN}m →`);
    expect(aheadWords(90, 100)).toBe(`← 10${THIN}m`);
    expect(aheadWords(100, 100.3)).toBe('straight below');
  });
});

const turn = (own: NonNullable<TableView['turn']>['own']) => ({ laying: true, awaited: [], own });

describe('the spot that Site marks', () => {
  const marked = { spot: { meters: 12, approach: 'either way' }, ground: 'as mapped' } as const;

  it('is in turns as the order that lies face down has it, and none where that takes it away', () => {
    expect(spotSaid({ site: marked })).toEqual({ spot: marked.spot, isLaid: false });
    expect(spotSaid({ site: marked, turn: turn([]) })).toEqual({ spot: marked.spot, isLaid: false });
    const laid = turn([{ order: 'markSpot', figure: -3, word: 'to the left' }]);
    expect(spotSaid({ site: marked, turn: laid })).toEqual({
      spot: { meters: -3, approach: 'to the left' },
      isLaid: true,
    });
    const away = turn([{ order: 'clearSpot' }]);
    expect(spotSaid({ site: marked, turn: away })).toEqual({ spot: undefined, isLaid: true });
    expect(spotSaid({ site: marked, turn: { ...away, laying: false } }).isLaid).toBe(false);
  });
});

describe('the stretch of ground that Site sees', () => {
  const plain = { firstX: -200, spacing: 1, heights: Array.from({ length: 401 }, () => 0) };
  const ahead = (x: number, headingFor: number) => stretchAhead({ x, headingFor, height: 10 }, plain);

  it('holds the lander and where it is heading', () => {
    for (const headingFor of [-150, -40, 0, 3, 77, 190]) {
      const { from, to } = ahead(0, headingFor);
      expect(from).toBeLessThan(Math.min(0, headingFor));
      expect(to).toBeGreaterThan(Math.max(0, headingFor));
    }
  });

  it('holds what is marked, and from high up what can be reached to either side', () => {
    const marked = stretchAhead({ x: 0, headingFor: 0, height: 10, spot: -60 }, plain);
    expect(marked.from).toBeLessThan(-60);
    expect(marked.to).toBeGreaterThan(0);
    // the level patch of Coombe Ledge lies 14 to 36 m to the left of the start
    expect(stretchAhead({ x: -10, headingFor: -10, height: 200 }, plain).from).toBeLessThan(-46);
    expect(stretchAhead({ x: 0, headingFor: 0, height: 10 }, plain)).toEqual({ from: -20, to: 20 });
  });

  it('never leaves the ground that is known, even where that is short', () => {
    expect(ahead(199, 199).to).toBe(200);
    expect(ahead(-199, -199).from).toBe(-200);
    const short = { firstX: 0, spacing: 1, heights: Array.from({ length: 11 }, () => 0) };
    expect(stretchAhead({ x: 5, headingFor: 5, height: 10 }, short)).toEqual({ from: 0, to: 10 });
  });

  it('stands still while the lander moves on a little', () => {
    expect(ahead(1, 11)).toEqual(ahead(2, 12));
  });

  it('shows as level where the line from foot to foot is', () => {
    // level up to 0, then 45 degrees up
    const bend = { firstX: -50, spacing: 1, heights: Array.from({ length: 101 }, (_, i) => Math.max(0, i - 50)) };
    const parts = levelParts({ from: -20, to: 20 }, bend, { halfStance: 2, most: 0.01 });
    expect(parts).toHaveLength(1);
    expect(parts[0]?.from).toBe(-20);
    // with the right foot at 0 the lander stands at -2
    expect(parts[0]?.to).toBeCloseTo(-2, 0);
  });
});

describe('what the crew is told', () => {
  it('is nothing where everything stands as it began, though spot and limit are still open', () => {
    expect(crewNotes(viewWith({}))).toEqual([]);
    expect(noteLines(openMatters(viewWith({})))).toEqual(['Site: no spot marked · no limit stated']);
  });

  it('is a line a seat, in the order of the seats', () => {
    const view = viewWith({
      engine: { ceilingPercent: 30, cutOff: 'not armed', cutAtContact: false, lineShut: true },
      site: { spot: { meters: 12, approach: 'to the left' }, ground: 'softer', limitHundredths: 45 },
      rejected: ['altimeter', 'velocityRadar'],
      named: [{ source: 'altimeter', cause: 'freeze' }],
    });
    expect(noteLines(crewNotes(view))).toEqual([
      'Sensors: altimeter: frozen · velocity radar rejected',
      `Propellant: ceiling 30${THIN}% · one feed line shut · no cut at contact`,
      `Site: spot 12${THIN}m →, come in to the left · limit 0.45${THIN}m/s · ground softer than mapped`,
    ]);
    expect(noteLines(openMatters(view))).toEqual(['Sensors: cause of the velocity radar not named']);
  });

  it('says that the engine is cut off, and that an armed cut-off is open', () => {
    const engine = viewOf({}).engine;
    expect(noteLines(crewNotes(viewWith({ engine: { ...engine, cutOff: 'fired' } })))).toEqual([
      'Propellant: engine cut off',
    ]);
    expect(noteLines(openMatters(viewWith({ engine: { ...engine, cutOff: 'armed' } })))).toContain(
      'Propellant: cut-off armed',
    );
  });

  it('lists for Lead who waits, and an alignment that goes on', () => {
    const open = noteLines(openMatters(viewWith({ aligning: 2.2, waiting: [{ id: 'm7', name: 'Ansel' }] })));
    expect(open).toContain('Lead: Ansel waits to be let in');
    expect(open).toContain(`Sensors: aligning the inertial unit, 3${THIN}s of level flight to go`);
  });
});

describe('an alignment of the inertial unit', () => {
  it('says that it waits while none of its time has passed, and what is left once it goes on', () => {
    const whole = ALIGNING_TICKS / TICK_RATE;
    expect(alignmentWords(undefined)).toBe(`takes ${whole}${THIN}s of level flight`);
    expect(alignmentWords(whole)).toBe('waits: it leans or turns');
    expect(alignmentWords(whole - 1)).toBe(`${whole - 1}${THIN}s of level flight to go`);
  });
});

describe('what Propellant and Lead read', () => {
  it('is how many contact lights are lit, and below which legs', () => {
    expect(lightWords(legsLit(false, false, false, false))).toBe('none lit');
    expect(lightWords(legsLit(false, true, false, false))).toBe('leg 2 lit');
    expect(lightWords(legsLit(true, false, true, false))).toBe('legs 1, 3 lit');
  });

  it('holds the gauge against what was reckoned', () => {
    expect(apartWords({ gauge: 120, reckoned: 120.4 })).toBe('the gauge agrees');
    expect(apartWords({ gauge: 108, reckoned: 120 })).toBe(`the gauge has 12${THIN}kg less`);
    expect(apartWords({ gauge: 132, reckoned: 120 })).toBe(`the gauge has 12${THIN}kg more`);
    expect(apartWords({ reckoned: 120 })).toBe('');
  });

  it('never tells a chance as certain', () => {
    expect(oddsWords({ leadReadings: { odds: 0.934 } })).toBe('about 9 in 10');
    expect(oddsWords({ leadReadings: { odds: 1 } })).toBe('more than 9 in 10');
    expect(oddsWords({ leadReadings: { odds: 0 } })).toBe('fewer than 1 in 10');
    expect(oddsWords({})).toBe('no figure now');
    expect(oddsWords({ leadReadings: { odds: 0.5 }, aborting: true })).toBe('landing given up');
  });
});

describe('the plan of the descent', () => {
  it('comes down to the ground, ever slower', () => {
    const heights = aimedHeights({ seconds: 3, height: 60 }, undefined).map(({ height }) => height);
    expect(heights.at(-1)).toBe(0);
    const falls = heights.slice(1, -1).map((height, index) => (heights[index] ?? 0) - height);
    for (const [index, fall] of falls.slice(1).entries()) expect(fall).toBeLessThanOrEqual(falls[index] ?? 0);
  });

  it('comes down as the brief of a drill says, where one is played', () => {
    const profile = [
      { above: 40, rate: 3 },
      { above: 0, rate: 2 },
    ];
    const drill = { id: 'd', title: 'D', brief: [], objectives: [], ruleCard: [], profile };
    const heights = aimedHeights({ seconds: 0, height: 46 }, drill).map(({ height }) => height);
    expect(heights.slice(0, 5)).toEqual([46, 43, 40, 37, 35]);
    // three whole seconds to 37 m, then 2 m a second, and what is left
    expect(heights).toHaveLength(4 + 19);
  });

  it('keeps a height a second, and begins anew with another descent', () => {
    const history = new HeightHistory();
    for (let tick = 0; tick <= 3 * TICK_RATE; tick += 10) history.take(tick, 40 - tick / TICK_RATE);
    expect(history.points.map(({ seconds, height }) => [seconds, height])).toEqual([
      [0, 40],
      [1, 39],
      [2, 38],
      [3, 37],
    ]);
    history.take(0, 40);
    expect(history.points).toEqual([{ seconds: 0, height: 40 }]);
  });
});

describe('what failed, on the scorecard', () => {
  const failure = { source: 'altimeter', kind: 'freeze', after: 5, doubtedAfter: 3 } as const;

  it('says when what it was was named, and that it was not', () => {
    expect(failureWords({ ...failure, namedAfter: 12 })).toMatch(/named rightly 12\ss after it began\.$/);
    expect(failureWords(failure)).toMatch(/Nobody then named its cause rightly\.$/);
  });

  it('does not ask for a name of what nobody doubted, or of a stand-in', () => {
    expect(failureWords(failure, false)).toMatch(/doubted 3\ss later\.$/);
    expect(failureWords({ source: 'altimeter', kind: 'freeze', after: 5 })).toMatch(/nobody doubted it\.$/);
  });
});
