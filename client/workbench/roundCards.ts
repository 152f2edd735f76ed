import { formatCsv } from '../../engine/csv.ts';
import { polarPlot, type Plot, type PolarSeries } from '../../engine/plot/index.ts';
import { feetRound, type LimitsSoFar, type RigidRound, type StudyCase } from '../../engine/study/index.ts';
import { element } from '../panels/element.ts';
import { BENCH, LIMIT_CARD, TILT_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { degreesOf, metersPerSecond, percent } from './figures.ts';

/** A case with what is known of it all round. */
export interface RoundAnswers {
  readonly asked: StudyCase;
  readonly rigid: RigidRound;
  readonly limits: LimitsSoFar | string | undefined;
}

interface RoundCard {
  readonly card: BenchCard;
  show(own: RoundAnswers, beside: RoundAnswers | undefined): void;
}

type Said = Pick<CardFiles, 'under' | 'command'>;

/** Static tilt by direction. */
export function createTiltCard(said: Said): RoundCard {
  let drawn: Plot | undefined;
  let shown: RoundAnswers | undefined;
  const card = createBenchCard(TILT_CARD.title, 'tilt', {
    name: 'static-tilt',
    terms: ['static tilt'],
    plot: () => drawn,
    csv: () => {
      if (shown?.rigid.stands !== true) return undefined;
      const rows = shown.rigid.rows.map(({ azimuthDeg, tiltDeg }) => [azimuthDeg, tiltDeg]);
      return formatCsv({ names: ['azimuthDeg', 'tiltDeg'], rows }, said.under());
    },
    ...said,
  });
  return {
    card,
    show(own, beside) {
      shown = own;
      const { rigid, asked } = own;
      if (!rigid.stands) {
        drawn = undefined;
        card.answer(TILT_CARD.cannot(rigid.reason));
        card.draw(drawn);
        return;
      }
      const { tiltDeg, azimuthDeg, legs } = rigid.least;
      const left = tiltDeg - asked.slopeDeg;
      const rest = asked.slopeDeg === 0 ? '' : left > 0 ? ` ${TILT_CARD.left(degreesOf(left))}` : ` ${TILT_CARD.none}`;
      card.answer(
        TILT_CARD.headline(degreesOf(tiltDeg)),
        `${TILT_CARD.where(degreesOf(azimuthDeg, 0), ...legs)}${rest}`,
      );
      const series = [beside, own].flatMap((one): PolarSeries[] => {
        if (one?.rigid.stands !== true) return [];
        const points = one.rigid.rows.map((row) => ({ azimuthDeg: row.azimuthDeg, value: row.tiltDeg }));
        return [{ name: TILT_CARD.series, stroke: one === own ? INK : BESIDE_INK, points, closed: true }];
      });
      drawn = polarPlot({
        label: TILT_CARD.label,
        unit: 'deg',
        series,
        feet: feetRound(asked),
        ring: { value: asked.slopeDeg, words: TILT_CARD.ring },
      });
      card.draw(drawn);
    },
  };
}

const INK = { ink: 'ink', width: 2.2 } as const;
const CLOSED = { ink: 'pencil', width: 1.4, dash: 'dashed' } as const;
const BESIDE_INK = { ink: 'blue', width: 1.6, dash: 'chain' } as const;

/** Tip limit by direction: the closed form at once, the simulated one as it comes in. */
export function createLimitCard(said: Said): RoundCard {
  let drawn: Plot | undefined;
  let shown: RoundAnswers | undefined;
  const card = createBenchCard(LIMIT_CARD.title, 'limit', {
    name: 'tip-limit',
    terms: ['tip limit', 'closed form'],
    plot: () => drawn,
    csv: () => (shown === undefined ? undefined : limitCsv(shown, said.under())),
    ...said,
  });
  card.body.append(keyOf());
  return {
    card,
    show(own, beside) {
      shown = own;
      const { limits, asked } = own;
      if (typeof limits === 'string') card.answer(limits);
      else {
        const least = limits?.least;
        card.answer(...headlineOf(limits, asked));
        card.progress(
          `${LIMIT_CARD.soFar(limits?.rows.length ?? 0, limits?.wholeDeg === undefined ? '' : LIMIT_CARD.whole(limits.wholeDeg))}${least === undefined ? ' …' : ''}. ${asked.slopeDeg === 0 ? '' : LIMIT_CARD.slopeNote}`,
        );
      }
      drawn = polarPlot({
        label: LIMIT_CARD.label,
        unit: 'm/s',
        series: [
          ...(beside === undefined ? [] : simulatedOf(beside, BESIDE_INK)),
          ...closedOf(own),
          ...simulatedOf(own, INK),
        ],
        feet: feetRound(asked),
        ring: { value: Math.abs(asked.horizontalSpeed), words: LIMIT_CARD.ring },
      });
      card.draw(drawn);
    },
  };
}

function headlineOf(limits: LimitsSoFar | undefined, { horizontalSpeed }: StudyCase): [string, string] {
  const least = limits?.least;
  if (least === undefined) {
    const tips = limits?.rows.flatMap(({ tip }) => tip ?? []) ?? [];
    return [tips.length === 0 ? BENCH.reading : LIMIT_CARD.headlineSoFar(metersPerSecond(Math.min(...tips))), ''];
  }
  const { tip, tipUpTo, tipAzimuthDeg, gear, firstLimit } = least;
  const headline =
    tip === null
      ? LIMIT_CARD.none(metersPerSecond(tipUpTo, 1))
      : tip === 0
        ? LIMIT_CARD.zero
        : LIMIT_CARD.headline(metersPerSecond(tip));
  const use = tip === null ? undefined : tip === 0 ? Infinity : Math.abs(horizontalSpeed) / tip;
  const notes = [
    tipAzimuthDeg === null ? '' : `${LIMIT_CARD.where(degreesOf(tipAzimuthDeg, 0))}.`,
    use === undefined || use === Infinity
      ? ''
      : use <= 1
        ? LIMIT_CARD.inside(percent(use))
        : LIMIT_CARD.outside(percent(use)),
    firstLimit !== 'gear' || gear === null
      ? ''
      : gear === 0
        ? LIMIT_CARD.gearAtOnce
        : LIMIT_CARD.gear(metersPerSecond(gear)),
  ];
  return [headline, notes.filter((note) => note !== '').join(' ')];
}

function simulatedOf({ limits }: RoundAnswers, stroke: PolarSeries['stroke']): readonly PolarSeries[] {
  if (limits === undefined || typeof limits === 'string') return [];
  const points = limits.rows.map(({ azimuthDeg, tip }) => ({ azimuthDeg, value: tip ?? undefined }));
  // those of a round that is not whole yet are dots
  const isWhole = ({ azimuthDeg }: { azimuthDeg: number }) =>
    limits.wholeDeg !== undefined && azimuthDeg % limits.wholeDeg === 0;
  return [
    { name: LIMIT_CARD.simulated, stroke, points: points.filter(isWhole), closed: true },
    { name: LIMIT_CARD.simulated, stroke, points: points.filter((point) => !isWhole(point)), closed: false },
  ];
}

function closedOf({ rigid }: RoundAnswers): readonly PolarSeries[] {
  if (!rigid.stands) return [];
  const points = rigid.rows.map(({ azimuthDeg, plastic }) => ({ azimuthDeg, value: Math.max(0, plastic ?? 0) }));
  return [{ name: LIMIT_CARD.closed, stroke: CLOSED, points, closed: true }];
}

function limitCsv({ limits, rigid }: RoundAnswers, under: readonly string[]): string {
  const names = ['azimuthDeg', 'tip', 'tipTolerance', 'tipUpTo', 'gear', 'plasticHorizontal'];
  const simulated = new Map(
    limits === undefined || typeof limits === 'string' ? [] : limits.rows.map((row) => [row.azimuthDeg, row]),
  );
  const rows = (rigid.stands ? rigid.rows : []).map(({ azimuthDeg, plastic }) => {
    const row = simulated.get(azimuthDeg);
    return [azimuthDeg, row?.tip, row?.tipTolerance, row?.tipUpTo, row?.gear, plastic];
  });
  return formatCsv({ names, rows }, under);
}

function keyOf(): HTMLElement {
  const lines = { ink: LIMIT_CARD.simulated, dashed: LIMIT_CARD.closed, chain: LIMIT_CARD.other };
  const items = Object.entries(lines).map(([line, words]) => element('li', { 'data-line': line }, words));
  return element('ul', { class: 'bench-key' }, ...items);
}
