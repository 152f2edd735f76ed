import { figure } from '../../engine/figures.ts';
import {
  ENVELOPE_CLASSES,
  type EnvelopeClass,
  type EnvelopeMap,
  type EnvelopeQuestion,
  type RowEnd,
  type RowLimit,
} from '../../engine/envelope/index.ts';
import { textTable } from './textTable.ts';

/** One letter a class, for the map. */
const LETTERS: { readonly [Class in EnvelopeClass]: string } = {
  inside: '.',
  clearance: 'c',
  load: 'l',
  'crush exhausted': 'x',
  'timed out': '?',
  'tip uphill': 'u',
  'tip downhill': 'd',
};

/** What was looked at, in words: 'on the Moon', 'the worst of 24 yaws', and ground, gear and engine. */
export interface EnvelopeSetting {
  readonly place: string;
  readonly looked: string;
  readonly words: string;
}

/** An envelope for people: a map of letters, and the limits of each row. */
export function envelopeText(
  question: EnvelopeQuestion,
  { place, looked, words }: EnvelopeSetting,
  map: EnvelopeMap,
  limits: readonly RowLimit[],
): string {
  const { horizontalSpeed: across, lander } = question;
  const state = map.isDone ? '' : 'PARTIAL: stopped before it was done. ';
  const present = ENVELOPE_CLASSES.filter((name) => map.counts[name] > 0);
  const legend = present.map((name) => `${LETTERS[name]} ${name} ${map.counts[name]}`).join(', ');
  return [
    `${lander.name} ${place}, ${looked}: ${state}${map.runs} touchdowns, ${map.simulated} of ${map.nodes.length} nodes simulated.`,
    `On ${words}.`,
    `Nodes: ${legend}${map.unknown > 0 ? `, _ unknown ${map.unknown}` : ''}.`,
    '',
    drawMap(map, across),
    ...(limits.length === 0 ? [] : ['', limitTable(limits)]),
  ].join('\n');
}

function drawMap(map: EnvelopeMap, across: EnvelopeQuestion['horizontalSpeed']): string {
  const lines: string[] = ['descent [m/s]'];
  for (let row = map.rows - 1; row >= 0; row--) {
    const nodes = map.nodes.slice(row * map.columns, (row + 1) * map.columns);
    const letters = nodes.map((node) => (node.class === undefined ? '_' : LETTERS[node.class])).join('');
    lines.push(`${figure(nodes[0]?.descentRate, 2).padStart(13)}  ${letters}`);
  }
  return [...lines, `${' '.repeat(15)}horizontal from ${across.from} to ${across.to} m/s`].join('\n');
}

function limitTable(limits: readonly RowLimit[]): string {
  return textTable(
    [
      { heading: 'descent [m/s]', align: 'right' },
      { heading: 'inside from [m/s]', align: 'right' },
      { heading: 'ended by', align: 'left' },
      { heading: 'inside to [m/s]', align: 'right' },
      { heading: 'ended by', align: 'left' },
      { heading: 'beyond', align: 'left' },
    ],
    limits.map(({ descentRate, startsInside, above, below, comesBack }) => [
      figure(descentRate, 2),
      ...(startsInside ? [...end(below), ...end(above)] : ['none', '-', 'none', '-']),
      comesBack ? 'inside again' : '',
    ]),
  );
}

function end(found: RowEnd | undefined): readonly string[] {
  return found === undefined ? ['beyond the grid', ''] : [figure(found.horizontalSpeed, 3), found.class];
}
