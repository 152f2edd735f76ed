import { area, corners, line, polyline, tickWords, words, type Plot } from './markup.ts';
import { linearScale, roundUp } from './scale.ts';

interface Bar {
  readonly name: string;
  /** undefined: there is none, as `note` says. */
  readonly value: number | undefined;
  /** A second value of the same kind, as a dashed tick. */
  readonly tick?: number;
  /** An open bar of the lower half; the other then takes the upper. null: there is none. */
  readonly open?: number | null;
  /** After the bar, such as the figure with its unit. */
  readonly note: string;
}

interface BarQuestion {
  readonly label: string;
  readonly axis: string;
  readonly bars: readonly Bar[];
  readonly level?: { readonly value: number; readonly words: string };
  /** Room for the names left of the bars [px]. */
  readonly nameRoom?: number;
}

/** With names of the usual length [px]. */
const WIDTH = 460;
const ROW = 30;
const FIELD = { right: 128, top: 24 } as const;
const NAME_ROOM = 118;

/** Bars may run either way from 0. */
export function barPlot({ label, axis, bars, level, nameRoom: left = NAME_ROOM }: BarQuestion): Plot {
  const bottom = FIELD.top + ROW * bars.length;
  const width = WIDTH + left - NAME_ROOM;
  const right = width - FIELD.right;
  const values = [
    ...bars.flatMap(({ value, tick, open }) => [value ?? 0, tick ?? 0, open ?? 0]),
    ...(level === undefined ? [] : [level.value]),
  ];
  const least = Math.min(0, ...values);
  const most = Math.max(0, ...values);
  const scale = linearScale(
    [least < 0 ? -roundUp(-least, 3) : 0, most > 0 || least === 0 ? roundUp(most, 4) : 0],
    [left, right],
    5,
  );
  const markup = [
    ...scale.ticks.map((value) => line(scale.at(value), FIELD.top, scale.at(value), bottom, { ink: 'grid' })),
    ...bars.map((bar, i) => drawBar(bar, { left, right, top: FIELD.top + ROW * i }, (value) => scale.at(value))),
    line(scale.at(0), FIELD.top - 4, scale.at(0), bottom, { ink: 'ink' }),
    ...scale.ticks.map((value) =>
      words(tickWords(value, scale.step), scale.at(value), bottom + 16, { size: 12, ink: 'pencil', align: 'center' }),
    ),
    words(axis, (left + right) / 2, bottom + 35, { align: 'center' }),
    level === undefined
      ? ''
      : line(scale.at(level.value), FIELD.top - 6, scale.at(level.value), bottom, { ink: 'blue', width: 1.6 }) +
        words(level.words, scale.at(level.value), FIELD.top - 9, { size: 12, ink: 'blue', align: 'center' }),
  ].join('');
  return { width, height: bottom + 44, markup, label };
}

function drawBar(
  { name, value, tick, open, note }: Bar,
  { left, right, top }: { readonly left: number; readonly right: number; readonly top: number },
  at: (value: number) => number,
): string {
  const [high, low] = [top + 6, top + ROW - 8];
  const middle = (high + low) / 2 + 4;
  const half = (high + low) / 2;
  const foot = open === undefined ? low : half;
  const end = at(value ?? 0);
  const bar =
    value === undefined
      ? ''
      : area(corners({ left: at(0), right: end, top: high, bottom: foot }), 'var(--soil)') +
        line(end, high, end, foot, { ink: 'ink', width: 2 });
  const other =
    open === undefined || open === null
      ? ''
      : polyline(
          corners({ left: at(0), right: at(open), top: half, bottom: low }),
          { ink: 'ink', dash: 'dotted', width: 1.2 },
          true,
        ) + line(at(open), half, at(open), low, { ink: 'ink', width: 1.2 });
  const mark =
    tick === undefined
      ? ''
      : line(at(tick), high - 3, at(tick), low + 3, { ink: 'pencil', width: 1.6, dash: 'dashed' });
  return [
    words(name, left - 8, middle, { align: 'right' }),
    bar,
    other,
    mark,
    words(note, right + 8, middle, { size: 12 }),
  ].join('');
}
