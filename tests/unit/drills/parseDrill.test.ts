import { describe, expect, it } from 'vitest';
import { formatProblem } from '../../../engine/result.ts';
import { parseDrill, parseDrillText } from '../../../levels/index.ts';
import { EVERY_PART } from '../../support/drillFile.ts';
import { spoiled, type Step } from '../../support/landerFile.ts';

/** Pretty-printed, so that lines can be counted. */
const text = (drill: unknown) => JSON.stringify(drill, undefined, 2);

function problemsOf(drill: unknown): readonly string[] {
  const parsed = parseDrillText(text(drill));
  return parsed.ok ? [] : parsed.error.map(formatProblem);
}

/** Number of the line, from 1, on which some words stand for the nth time. */
function lineOf(drill: unknown, words: string, nth = 1): number {
  const lines = text(drill).split('\n');
  let found = 0;
  return lines.findIndex((line) => line.includes(words) && ++found === nth) + 1;
}

const spoil = (path: readonly Step[], value: unknown) => spoiled(EVERY_PART, path, value);

const waits = (inject: string) => ({ on: 'inject', inject, seconds: 1 });

describe('a drill file that is wrong', () => {
  it.each<readonly [string, readonly Step[], unknown, string]>([
    ['an inject without an objective', ['events', 0, 'objective'], undefined, 'events[0].objective: expected a value'],
    ['an unknown objective', ['events', 0, 'objective'], 'second', 'events[0].objective: expected one of "first"'],
    ['an inject without a response', ['events', 0, 'responses'], [], 'responses: expected a list of 1 to 8 responses'],
    ['a trigger that names nothing', ['events', 4, 'trigger', 'inject'], 'no-such', 'events[4].trigger.inject'],
    ['an unless that names nothing', ['events', 4, 'unless'], 'no-such', 'events[4].unless: expected one of'],
    ['an unless of its own', ['events', 4, 'unless'], 'by-inject-said', 'events[4].unless: expected one of'],
    ['a contingency without one', ['events', 4, 'unless'], undefined, 'expected the response that makes it needless'],
    ['one beside a contextual inject', ['events', 0, 'unless'], 'by-rise-said', 'only a contingency has a response'],
    ['a mend that names nothing', ['events', 5, 'effects', 1, 'name'], 'hard-leg', 'events[5].effects[1].name'],
    ['a course that names nothing', ['events', 1, 'course'], 'three', 'events[1].course: expected one of "one", "two"'],
    [
      'a question about nothing',
      ['questions', 0, 'objective'],
      'last',
      'questions[0].objective: expected one of "first"',
    ],
    ['a leg that the lander lacks', ['truth', 'faults', 0, 'fault', 'parameters', 'leg'], 4, 'a leg of trivet, 0 to 3'],
    ['a height above the start', ['events', 1, 'trigger', 'meters'], 85, 'less than the 85 m'],
    ['a world that cannot be flown', ['plan', 'world'], 'earth', 'plan.world: expected one that trivet can fly'],
    ['an id twice', ['events', 1, 'id'], 'by-time', 'another name than that of events[0].id, got "by-time"'],
    ['a response twice', ['events', 1, 'responses', 0, 'id'], 'by-time-said', 'events[1].responses[0].id'],
    ['a fault name twice', ['events', 5, 'effects', 0, 'name'], 'soft-leg', 'that of truth.faults[0].name'],
    ['a trigger both ways', ['events', 2, 'trigger', 'below'], 1, 'either above or below, got both: 5, 1'],
    ['one course', ['courses'], ['one'], 'courses: expected a list of 2 to 6 courses'],
    ['a fault of no kind', ['truth', 'faults', 0, 'fault', 'kind'], 'legSofter', 'did you mean "legSoft"'],
    ['a channel of another source', ['events', 5, 'effects', 0, 'fault', 'channel'], 'range', 'fault.channel'],
    [
      'rates that do not go down to the ground',
      ['profile', 1, 'above'],
      5,
      'profile[1].above: expected 0 m, since it is the last, got 5',
    ],
    ['rates out of order', ['profile', 0, 'above'], 0, 'profile[1].above: expected less than 0 m'],
    [
      'a rate that nobody can order',
      ['profile', 0, 'rate'],
      1.25,
      'profile[0].rate: expected whole tenths of a m/s, got 1.25',
    ],
    ['a rule that names no sign', ['ruleCard', 1, 'abort', 'when'], 'dark', 'ruleCard[1].abort.when'],
    [
      'a rule without its height',
      ['ruleCard', 2, 'abort', 'below'],
      undefined,
      'ruleCard[2].abort.below: expected a value',
    ],
    ['an unknown field', ['events', 0, 'notes'], 'x', 'no such field (did you mean note?)'],
  ])('[DR1] is refused with %s', (_, path, value, says) => {
    expect(problemsOf(spoil(path, value)).join('\n')).toContain(says);
  });

  it('[DR1] is refused with more than three objectives', () => {
    const objectives = ['first', 'second', 'third', 'fourth'].map((id) => ({ id, text: 'To do.' }));
    expect(problemsOf(spoil(['objectives'], objectives)).join()).toContain(
      'a list of 1 to 3 objectives, got a list of 4',
    );
    expect(problemsOf(spoil(['objectives'], objectives.slice(1))).join()).toContain('one of "second"');
  });

  it('[DR1] is refused with injects that wait for each other, each named once', () => {
    const circle = spoiled(
      spoil(['events', 0, 'trigger'], waits('by-rise')),
      ['events', 2, 'trigger'],
      waits('by-time'),
    );
    const problems = problemsOf(circle);
    expect(problems).toHaveLength(2);
    expect(problems.join('\n')).toContain('got "by-time" after "by-rise" after "by-time"');
  });

  it('[DR1] is refused where a row waits for one of another course, which is not played beside it', () => {
    const apart = spoiled(spoil(['events', 4, 'course'], 'two'), ['events', 0, 'course'], 'one');
    expect(problemsOf(apart).filter((problem) => problem.includes('events[4]'))).toHaveLength(2);
    const together = spoiled(spoil(['events', 4, 'course'], 'one'), ['events', 0, 'course'], 'one');
    expect(problemsOf(together)).toEqual([]);
  });

  it('[DR1] names the line of each field that is wrong, and of what a missing field is missing in', () => {
    const wrong = spoil(['events', 3, 'trigger', 'below'], -1);
    expect(problemsOf(wrong).join()).toContain(`line ${lineOf(wrong, '"below": -1')}, events[3].trigger.below`);
    const missing = spoil(['events', 2, 'title'], undefined);
    const begins = lineOf(missing, '"id": "by-rise"') - 1;
    expect(problemsOf(missing)).toEqual([`line ${begins}, events[2].title: expected a value, got nothing`]);
    const named = spoil(['events', 1, 'course'], 'three');
    expect(problemsOf(named).join()).toContain(`line ${lineOf(named, '"course": "three"')}, events[1].course`);
    const stray = spoil(['a "strange" name'], 1);
    expect(problemsOf(stray).join()).toContain(`line ${lineOf(stray, 'strange')}, [`);
    const notARule = spoil(['ruleCard', 0], 3);
    expect(problemsOf(notARule).join()).toContain(`line ${lineOf(notARule, '"ruleCard": [') + 1}, ruleCard[0]`);
  });

  it('[DR1] is refused unread where it is too large, too deep, no JSON, or no object', () => {
    expect(problemsOf('x'.repeat(140_000))).toEqual(['document: expected at most 131072 bytes, got more']);
    expect(problemsOf(Array.from({ length: 20 }).reduce((inner) => [inner], 1)).join()).toContain('at most 12 levels');
    expect(parseDrillText('{').ok).toBe(false);
    expect(problemsOf([])).toEqual(['line 1, document: expected an object, got a list of 0']);
    const twice = parseDrillText('{"id": 1,\n"id": 2}');
    expect(twice.ok ? [] : twice.error.map(formatProblem).join()).toContain('"id" again in line 2');
  });

  it('[DR1] is not changed by being read: what comes out is what the file says', () => {
    expect(parseDrill(structuredClone(EVERY_PART))).toEqual({ ok: true, value: EVERY_PART });
  });
});
