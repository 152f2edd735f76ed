import type { Scorecard } from '../../engine/table/index.ts';
import type { PlayedPlan } from '../plan.ts';
import { SCORECARD, SEAT_NAMES, TITLE_BLOCK } from '../text/en.ts';
import { element, entry } from './element.ts';

/** What stands on paper alone: when, who, at which table, in which version, and the section as it was drawn. */
export interface PrintedHead {
  readonly head: HTMLElement;
  remove(): void;
}

export function createPrintedHead(options: {
  readonly card: Scorecard;
  readonly plan: PlayedPlan;
  readonly code: string | undefined;
  readonly canvas: () => HTMLCanvasElement | null;
  readonly sheet: HTMLElement;
}): PrintedHead {
  const { card, plan, code, canvas, sheet } = options;
  const words = SCORECARD.printed;
  const copy = element('canvas', { role: 'img', 'aria-label': words.drawing });
  const head = element(
    'section',
    { class: 'printed-head', 'aria-label': words.label },
    element('h1', {}, TITLE_BLOCK.programme),
    element(
      'dl',
      {},
      entry(words.date, new Date().toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' })),
      entry(words.crew, crewWords(card, code)),
      entry(words.table, code ?? TITLE_BLOCK.solo),
      entry(words.landing, TITLE_BLOCK.place(plan.siteName, plan.setup.lander.name, plan.world.name)),
      entry(words.version, words.versionValue(card.physics)),
    ),
    copy,
  );
  const take = () => {
    const drawn = canvas();
    if (drawn !== null) copyFree(drawn, sheet, copy);
  };
  addEventListener('beforeprint', take);
  return {
    head,
    remove() {
      removeEventListener('beforeprint', take);
      head.remove();
    },
  };
}

function crewWords({ crew }: Scorecard, code: string | undefined): string {
  if (code === undefined) return SCORECARD.printed.alone;
  return crew.length === 0
    ? SCORECARD.printed.nobody
    : crew.map(({ seat, name }) => `${SEAT_NAMES[seat]}: ${name}`).join(', ');
}

/** The part of the drawing that the sheet beside it, or below it, leaves free. */
function copyFree(drawn: HTMLCanvasElement, sheet: HTMLElement, copy: HTMLCanvasElement): void {
  const whole = drawn.getBoundingClientRect();
  const covering = sheet.getBoundingClientRect();
  const ratio = drawn.width / whole.width;
  const isBeside = covering.left - whole.left > 0.3 * whole.width;
  const isBelow = !isBeside && covering.top - whole.top > 0.2 * whole.height;
  const width = ratio * (isBeside ? covering.left - whole.left : whole.width);
  const height = ratio * (isBelow ? covering.top - whole.top : whole.height);
  copy.width = Math.max(1, Math.round(width));
  copy.height = Math.max(1, Math.round(height));
  copy.getContext('2d')?.drawImage(drawn, 0, 0, width, height, 0, 0, copy.width, copy.height);
}
