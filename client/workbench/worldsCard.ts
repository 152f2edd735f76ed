import { formatCsv, tableOf } from '../../engine/csv.ts';
import { barPlot, type Plot } from '../../engine/plot/index.ts';
import type { StanceStudy } from '../../engine/study/index.ts';
import { WORLDS_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { metersPerSecond, quantity } from './figures.ts';
import type { MatrixCell } from './studies.ts';

interface WorldsCard {
  readonly card: BenchCard;
  show(stance: StanceStudy, limits: readonly MatrixCell[]): void;
}

/** The stance that each world asks for, with the tip limit that the lander has there on the slope of the arrival. */
export function createWorldsCard(said: Pick<CardFiles, 'under' | 'command'>): WorldsCard {
  let drawn: Plot | undefined;
  let shown: readonly object[] = [];
  const card = createBenchCard(WORLDS_CARD.title, 'worlds', {
    name: 'required-stance',
    terms: ['half stance'],
    plot: () => drawn,
    csv: () => formatCsv(tableOf(shown), said.under()),
    ...said,
  });
  return {
    card,
    show({ body, speed, rows }, limits) {
      const tipOn = (world: string) => limits.find((limit) => limit.world === world)?.least;
      shown = rows.map((row) => {
        const least = tipOn(row.world);
        return { ...row, tip: least === undefined || typeof least === 'string' ? undefined : least.tip };
      });
      const moon = rows.find(({ world }) => world === 'moon');
      card.answer(
        moon?.halfStance === null || moon?.ratioToEarth === null || moon === undefined
          ? WORLDS_CARD.noStance
          : WORLDS_CARD.headline(quantity(moon.halfStance, 'm'), quantity(moon.ratioToEarth, '-')),
        WORLDS_CARD.meaning(metersPerSecond(speed)),
      );
      drawn = barPlot({
        label: WORLDS_CARD.label,
        axis: WORLDS_CARD.axis,
        bars: rows.map(({ world, name, halfStance }) => ({
          name,
          value: halfStance ?? undefined,
          tick: body.halfStance,
          note: tipWords(tipOn(world)),
        })),
      });
      card.draw(drawn);
    },
  };
}

function tipWords(least: MatrixCell['least'] | undefined): string {
  if (least === undefined) return '…';
  if (typeof least === 'string') return '';
  if (least.tip === null) return WORLDS_CARD.tipNone;
  return least.tip === 0 ? WORLDS_CARD.tipZero : WORLDS_CARD.tip(metersPerSecond(least.tip));
}
