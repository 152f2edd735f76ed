import { readSource } from './sources.ts';

/** A drill as JSON, apart from the program's own list of drills: tests change it as they like. */
export function drillJson(file = 'quietAltimeter'): Record<string, unknown> {
  return JSON.parse(readSource(`levels/drills/${file}.json`)) as Record<string, unknown>;
}

const response = (id: string, seen: object) => ({ id, seat: 'sensors', text: 'Says so.', within: 5, seen });

const row = (id: string, trigger: object, more: object = {}) => ({
  id,
  title: 'Something happens',
  kind: 'contextual',
  trigger,
  effects: [{ do: 'tell', text: 'Look at this.', to: ['lead', 'room'] }],
  visible: 'A card.',
  groundTruth: 'Nothing is wrong.',
  objective: 'first',
  responses: [response(`${id}-said`, { by: 'evaluator' })],
  ...more,
});

/** A drill that has every kind of trigger, effect and sign once. It teaches nothing. */
export const EVERY_PART: unknown = {
  format: 'kilter-drill/1',
  id: 'every-part',
  title: 'Every part',
  summary: 'For tests.',
  level: 1,
  minutes: 10,
  brief: ['Read this.'],
  objectives: [{ id: 'first', text: 'Everything is read.' }],
  ruleCard: [
    { id: 'rule', text: 'Read on.' },
    { id: 'unsure', text: 'Unsure: abort.', abort: { when: 'heightUnsure', below: 60, over: 10 } },
    { id: 'no-spot', text: 'No spot: abort.', abort: { when: 'noSpot', below: 50 } },
  ],
  plan: { lander: 'trivet', site: 'saddlers-bench', world: 'moon', start: 'high', mode: 'by hand', pace: 1, seed: 1 },
  profile: [
    { above: 30, rate: 2.5 },
    { above: 0, rate: 0.7 },
  ],
  truth: {
    steeperDeg: 1,
    faults: [{ name: 'soft-leg', fault: { source: 'legs', kind: 'legSoft', parameters: { leg: 1, factor: 0.5 } } }],
  },
  courses: ['one', 'two'],
  events: [
    row('by-time', { on: 'time', seconds: 1 }, { note: 'Watch this one.' }),
    row('by-height', { on: 'height', meters: 50 }, { course: 'one' }),
    row('by-rise', { on: 'state', quantity: 'descentRate', above: 5 }),
    row('by-fall', { on: 'state', quantity: 'propellantSeconds', below: 40 }),
    row('by-inject', { on: 'inject', inject: 'by-time', seconds: 3 }, { kind: 'contingency', unless: 'by-time-said' }),
    row(
      'by-hand',
      { on: 'hand' },
      {
        effects: [
          {
            do: 'fail',
            name: 'radar',
            fault: { source: 'velocityRadar', kind: 'bias', channel: 'across', parameters: { size: 1, rise: 3 } },
            seconds: 9,
          },
          { do: 'mend', name: 'soft-leg', seconds: 5 },
          { do: 'mend', name: 'radar' },
          { do: 'tell', text: 'Hear this.', to: ['sensors'], level: 'caution' },
        ],
        responses: [
          response('any-callout', { by: 'callout' }),
          response('a-callout', { by: 'callout', source: 'altimeter', sentence: 'heightAge' }),
          response('a-judgment', { by: 'judgment', source: 'altimeter', judgments: ['under check', 'rejected'] }),
          response('a-cause', { by: 'cause', source: 'altimeter', cause: 'freeze' }),
          ...['poll', 'decision', 'abort', 'cutOff'].map((by) => response(`by-${by.toLowerCase()}`, { by })),
        ],
      },
    ),
    row(
      'the-rest',
      { on: 'hand' },
      { responses: ['lineShut', 'limit', 'spot', 'facing'].map((by) => response(`by-${by.toLowerCase()}`, { by })) },
    ),
  ],
  questions: [{ objective: 'first', text: 'Was it read?' }],
};
