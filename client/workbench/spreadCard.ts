import { formatCsv, tableOf } from '../../engine/csv.ts';
import { INPUT_FACTS } from '../../engine/dispersion/index.ts';
import { barPlot, type Plot } from '../../engine/plot/index.ts';
import { button, element } from '../panels/element.ts';
import { saveFile } from '../saveFile.ts';
import { SPREAD_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { campaignOf, SPREAD_BOUNDS, SPREAD_NAMES, type SpreadName } from './campaignOf.ts';
import type { BenchState } from './benchState.ts';
import { CAMPAIGN_FILE } from './commandLine.ts';
import { metersPerSecond, percent } from './figures.ts';
import { numberField, type NumberField } from './numberField.ts';
import type { Spread } from './studies.ts';
import { workButton } from './workButton.ts';

interface SpreadCard {
  readonly card: BenchCard;
  show(spread: Spread | string, isDone: boolean): void;
  clear(state: BenchState): void;
  document(state: BenchState): Readonly<Record<string, unknown>>;
}

/** Many arrivals round the one asked about: how many stand, with an interval, and whether that shows the requirement. */
export function createSpreadCard(
  said: Pick<CardFiles, 'under' | 'command'>,
  acts: {
    readonly work: () => void;
    readonly stop: () => void;
    /** Other arrivals are asked for. */ readonly changed: () => void;
  },
): SpreadCard {
  let drawn: Plot | undefined;
  let shown: Spread | undefined;
  let state: BenchState | undefined;
  const card = createBenchCard(SPREAD_CARD.title, 'spread', {
    name: 'dispersion',
    terms: ['dispersion', 'seed', 'deviation', 'interval', 'confidence', 'margin'],
    plot: () => drawn,
    csv: () => (shown?.summary === undefined ? undefined : formatCsv(tableOf(shown.summary.outcomes), said.under())),
    ...said,
  });
  const changed = () => {
    if (state !== undefined) clear(state);
    acts.changed();
  };
  const field = (name: SpreadName): NumberField =>
    numberField({ ...SPREAD_BOUNDS[name], words: SPREAD_CARD.fields[name], id: `spread-${name}` }, changed);
  const fields: Readonly<Record<SpreadName, NumberField>> = {
    runs: field('runs'),
    seed: field('seed'),
    speedScale: field('speedScale'),
    descentDeviation: field('descentDeviation'),
    slopeScale: field('slopeScale'),
    leanDeviation: field('leanDeviation'),
    fraction: field('fraction'),
    confidence: field('confidence'),
  };
  const work = workButton(SPREAD_CARD, acts);
  const document = (now: BenchState) => campaignOf(now, (name) => fields[name].value());
  const stack = element('p', { class: 'bench-note' });
  card.body.append(
    element('div', { class: 'bench-fields' }, ...SPREAD_NAMES.map((name) => fields[name].node)),
    element(
      'p',
      { class: 'bench-row' },
      work.node,
      button(SPREAD_CARD.campaign, () => {
        if (state !== undefined)
          saveFile(`${JSON.stringify(document(state), undefined, 2)}\n`, CAMPAIGN_FILE, 'application/json');
      }),
    ),
    stack,
  );
  const clear = (now: BenchState) => {
    state = now;
    shown = undefined;
    drawn = undefined;
    work.rest();
    acts.stop();
    card.answer('', SPREAD_CARD.lead);
    card.draw(undefined);
    card.progress('');
    stack.textContent = '';
  };
  return {
    card,
    document,
    clear,
    show(spread, isDone) {
      if (isDone) work.rest();
      if (typeof spread === 'string') {
        work.rest();
        card.answer(spread);
        return;
      }
      shown = spread;
      const { done, runs, summary, stackUp } = spread;
      card.progress(SPREAD_CARD.done(done, runs));
      const upright = summary?.outcomes.find(({ outcome }) => outcome === 'upright');
      if (summary === undefined || upright === undefined) return;
      const { low, high } = upright.clopperPearson95;
      card.answer(
        SPREAD_CARD.headline(percent(upright.fraction, 1), percent(low, 1), percent(high, 1)),
        isDone ? verdictOf(summary) : '',
      );
      if (stackUp === undefined) return;
      const { nominalLimit, speed, worstMargin, rootSumSquare, contributions } = stackUp;
      stack.textContent =
        nominalLimit === undefined || worstMargin === undefined || rootSumSquare === undefined
          ? SPREAD_CARD.noStack
          : `${SPREAD_CARD.stack}. ${SPREAD_CARD.stackLead(metersPerSecond(nominalLimit - speed), metersPerSecond(worstMargin), metersPerSecond(rootSumSquare))}`;
      drawn =
        contributions.length === 0
          ? undefined
          : barPlot({
              label: SPREAD_CARD.label,
              axis: SPREAD_CARD.axis,
              bars: contributions.map(({ input, loss }) => ({
                name: INPUT_FACTS[input].words,
                value: loss,
                note: metersPerSecond(loss),
              })),
            });
      card.draw(drawn);
    },
  };
}

function verdictOf({ requirement }: NonNullable<Spread['summary']>): string {
  if (requirement === undefined) return '';
  const { verdict, fraction, confidence } = requirement;
  const said = SPREAD_CARD.verdict[verdict.kind](percent(fraction, 1), percent(confidence, 0));
  const more =
    verdict.kind === 'undecided' && verdict.runsIfNoMoreFail !== undefined
      ? ` ${SPREAD_CARD.more(verdict.runsIfNoMoreFail)}`
      : '';
  return `${said}${more}`;
}
