import { formatCsv } from '../../engine/csv.ts';
import { inlineSvg, type Plot } from '../../engine/plot/index.ts';
import {
  SENSITIVITY_KEY,
  sensitivityDrawing,
  sensitivityLines,
  sensitivityTable,
  type Sensitivities,
} from '../../engine/study/index.ts';
import { element } from '../panels/element.ts';
import { SENSITIVITY_CARD } from '../text/workbench.ts';
import { createBenchCard, type BenchCard, type CardFiles } from './benchCard.ts';
import { workButton } from './workButton.ts';

interface SensitivityCard {
  readonly card: BenchCard;
  show(found: Sensitivities | string, isDone: boolean): void;
  /** The case has changed: what was found holds no longer. */
  clear(): void;
}

/** Each input a little less and a little more: what it does to the margin and to the share that stays upright. */
export function createSensitivityCard(
  said: Pick<CardFiles, 'under' | 'command'>,
  acts: { readonly work: () => void; readonly stop: () => void },
): SensitivityCard {
  let drawn: Plot | undefined;
  let shown: Sensitivities | undefined;
  const card = createBenchCard(SENSITIVITY_CARD.title, 'sensitivity', {
    name: 'sensitivities',
    plot: () => drawn,
    csv: () => (shown === undefined ? undefined : formatCsv(sensitivityTable(shown), said.under())),
    ...said,
  });
  const work = workButton(SENSITIVITY_CARD, acts);
  const upright = element('div', { class: 'bench-plot' });
  card.body.append(upright, element('p', { class: 'bench-row' }, work.node));
  const clear = () => {
    work.rest();
    acts.stop();
    shown = undefined;
    drawn = undefined;
    card.answer('', SENSITIVITY_CARD.lead);
    card.draw(undefined);
    card.progress('');
    upright.replaceChildren();
  };
  clear();
  return {
    card,
    clear,
    show(found, isDone) {
      if (isDone) work.rest();
      if (typeof found === 'string') {
        card.answer(found);
        return;
      }
      shown = found;
      const { inputs, runs } = found;
      const [first = '', second = ''] = sensitivityLines(found);
      card.answer(`${first}${isDone ? '' : ' …'}`, `${second} ${SENSITIVITY_KEY}`);
      const known = inputs.flatMap(({ less, more }) => [less, more]).filter((one) => one !== undefined).length;
      card.progress(SENSITIVITY_CARD.soFar(known, 2 * inputs.length, runs));
      drawn = sensitivityDrawing(found, 'margin');
      card.draw(drawn);
      const share = sensitivityDrawing(found, 'upright');
      upright.innerHTML = share === undefined ? '' : inlineSvg(share);
    },
  };
}
