import type { CsvTable } from '../csv.ts';
import { figure } from '../figures.ts';
import { barPlot, type Plot } from '../plot/index.ts';
import type { Sensitivities, SensitivityInput, SensitivityPoint } from './sensitivity.ts';

const MEASURES = {
  margin: { label: 'What each input does to the margin', axis: 'change of the margin [m/s]' },
  upright: {
    label: 'What each input does to the share upright',
    axis: 'change of the share upright [percentage points]',
  },
} as const;
type Measure = keyof typeof MEASURES;

/** Names of inputs are long [px]. */
const NAME_ROOM = 280;

/** What the bars are, for the text below them. */
export const SENSITIVITY_KEY =
  'Filled bar: more of the input; open, dotted: less of it. By one standard deviation where it is drawn (s), else by a tenth of what it is. ' +
  'Margin: the limit, tipping or a leg used up, less the speed of the arrival; none: no such case, or the limit does not ask for it.';

/** Change against the case as it is, less and more of each input that makes one, the largest first; undefined where none does. */
export function sensitivityDrawing(found: Sensitivities, measure: Measure): Plot | undefined {
  const size = ({ less, more }: SensitivityRow): number =>
    Math.max(Math.abs(less[measure] ?? 0), Math.abs(more[measure] ?? 0));
  const rows = sensitivityRows(found).filter((row) => size(row) > 0);
  if (rows.length === 0) return undefined;
  const decimals = measure === 'margin' ? 2 : 1;
  return barPlot({
    ...MEASURES[measure],
    nameRoom: NAME_ROOM,
    bars: rows
      .toSorted((a, b) => size(b) - size(a))
      .map(({ input, less, more }) => ({
        name: stepWords(input),
        value: more[measure],
        open: less[measure] ?? null,
        note: [more, less].map((one) => signed(one[measure], decimals)).join(', '),
      })),
  });
}

function signed(value: number | undefined, decimals: number): string {
  if (value === undefined) return 'none';
  const text = figure(value, decimals);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** 'descent rate +- 0.30 m/s (s)'. */
export function stepWords({ words, unit, by, rule }: SensitivityInput): string {
  const how = rule === 'deviation' ? ' (s)' : '';
  return `${words} +- ${Number(by.toPrecision(2))}${unit === '-' ? '' : ` ${unit}`}${how}`;
}

interface Change {
  /** [m/s] */
  readonly margin: number | undefined;
  /** Percentage points. */
  readonly upright: number | undefined;
}

interface SensitivityRow {
  readonly input: SensitivityInput;
  readonly less: Change;
  readonly more: Change;
}

/** Each input with what it changes, as far as it is known. */
export function sensitivityRows({ base, runs, inputs }: Sensitivities): readonly SensitivityRow[] {
  const change = (point: SensitivityPoint | undefined): Change => ({
    margin: difference(point?.margin, base?.margin),
    upright: scaled(difference(point?.upright, base?.upright), 100 / runs),
  });
  return inputs.map((input) => ({ input, less: change(input.less), more: change(input.more) }));
}

function difference(value: number | undefined, from: number | undefined): number | undefined {
  return value === undefined || from === undefined ? undefined : value - from;
}

function scaled(value: number | undefined, factor: number): number | undefined {
  return value === undefined ? undefined : factor * value;
}

export function sensitivityTable(found: Sensitivities): CsvTable {
  return {
    names: ['input', 'unit', 'present', 'by', 'rule', 'marginLess', 'marginMore', 'uprightLess', 'uprightMore', 'runs'],
    rows: sensitivityRows(found).map(({ input: { name, unit, present, by, rule }, less, more }) => [
      name,
      unit,
      present,
      by,
      rule,
      less.margin,
      more.margin,
      less.upright,
      more.upright,
      found.runs,
    ]),
  };
}

/** What moves margin and share most, in a sentence each. */
export function sensitivityLines(found: Sensitivities): readonly string[] {
  const rows = sensitivityRows(found);
  const worst = (measure: Measure): string | undefined => {
    const ends = rows.flatMap(({ input, less, more }) => [
      { words: `less ${input.words}`, input, loss: less[measure] ?? 0 },
      { words: `more ${input.words}`, input, loss: more[measure] ?? 0 },
    ]);
    const [most] = ends.toSorted((a, b) => a.loss - b.loss);
    if (most === undefined || most.loss >= 0) return undefined;
    const { by, unit } = most.input;
    const step = `${Number(by.toPrecision(2))}${unit === '-' ? '' : ` ${unit}`}`;
    return measure === 'margin'
      ? `Takes most of the margin: ${most.words}, by ${step}: ${figure(-most.loss, 2)} m/s.`
      : `Fells most of the arrivals drawn: ${most.words}, by ${step}: ${figure(-most.loss, 1)} percentage points of ${found.runs}.`;
  };
  return [
    worst('margin') ?? 'No input changed takes any margin.',
    worst('upright') ?? `No input changed fells any more of the ${found.runs} arrivals drawn.`,
  ];
}
