import type { BriefView, TableView } from '../../../engine/table/index.ts';
import type { Announcer } from '../announcer.ts';
import { element } from '../element.ts';
import type { Ask } from '../seatCard.ts';
import { createDealtCards } from './dealtCards.ts';
import { createRealStop } from './realStop.ts';
import { ruleCardButton } from './ruleCard.ts';
import { createTurnStrip } from './turnStrip.ts';

export interface DrillParts {
  /** The rule card and the real-world stop, each one press away. */
  readonly ways: HTMLElement;
  readonly turn: HTMLElement;
  readonly dealt: HTMLElement;
  /** What lies over the page. */
  readonly sheets: readonly HTMLElement[];
  refresh(view: TableView): void;
}

/** What a member sees of a drill, and of turns and the real-world stop, which any table with others at it has. */
export function createDrillParts(options: {
  readonly drill: BriefView | undefined;
  readonly ask: Ask;
  readonly announcer: Announcer;
  readonly leave: () => void;
  /** Alone at a table of one's own, there is nobody to stop. */
  readonly alone: boolean;
}): DrillParts {
  const { drill, ask, announcer, leave, alone } = options;
  const stop = createRealStop({ ask, announcer, leave });
  const turn = createTurnStrip(ask, announcer);
  const dealt = createDealtCards(announcer);
  const rules = drill === undefined ? [] : ruleCardButton(drill);
  const ways = element(
    'div',
    { class: 'drill-ways', hidden: drill === undefined && alone },
    ...rules.slice(0, 1),
    ...(alone ? [] : [stop.button]),
  );
  return {
    ways,
    turn: turn.strip,
    dealt: dealt.list,
    sheets: [...rules.slice(1), ...stop.sheets],
    refresh(view) {
      stop.refresh(view);
      turn.refresh(view);
      dealt.refresh(view);
    },
  };
}
