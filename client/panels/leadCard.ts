import type { TableView } from '../../engine/table/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';
import { BRIEF } from '../text/drill.ts';
import { LEAD_CARD } from '../text/en.ts';
import { createNoteList, crewNotes, noteLines, openMatters, type CrewNote } from './crewNotes.ts';
import { createDeal } from './dealSeats.ts';
import { element, say } from './element.ts';
import { drawPlan, HeightHistory } from './planDrawing.ts';
import { cardPart, createLiveDrawing, figureLine, seatCardFrame, type Ask, type SeatCard } from './seatCard.ts';
import { term } from '../terms/term.ts';

/** For Lead: how the descent goes against what is aimed at, how likely it stays upright, what is open, what is in force, and who sits where. */
export function createLeadCard(ask: Ask): SeatCard {
  const history = new HeightHistory();
  const plan = createLiveDrawing('plan-drawing');
  const note = element('p', { class: 'card-note' });
  const odds = figureLine(LEAD_CARD.odds);
  const open = createNoteList();
  const inForce = createNoteList();
  const deal = createDeal(ask);
  const rules = createNoteList();
  const rulePart = cardPart(term('rule card', BRIEF.rules), rules.list);
  const card = seatCardFrame(
    'lead',
    plan.holder,
    note,
    odds.line,
    rulePart,
    cardPart(LEAD_CARD.open, open.list),
    cardPart(LEAD_CARD.inForce, inForce.list),
    deal.part,
  );
  return {
    card,
    refresh(view) {
      if (view.stage === 'descending') history.take(view.flight.tick, view.flight.height);
      card.hidden = view.you.seat !== 'lead' || view.stage !== 'descending';
      if (card.hidden) return;
      const { markup, viewBox } = drawPlan({
        flown: history.points,
        now: { seconds: view.flight.tick / TICK_RATE, height: view.flight.height },
        rate: -view.flight.vy,
        drawnIn: view.drawnIn,
        drill: view.drill,
      });
      plan.show(markup, viewBox);
      say(note, LEAD_CARD.planNote(view.drill !== undefined));
      const hasOdds = view.leadReadings?.odds !== undefined && !view.aborting;
      odds.show(oddsWords(view), hasOdds ? LEAD_CARD.oddsNote : '');
      open.show(linesOf(openMatters(view), LEAD_CARD.nothingOpen));
      inForce.show(linesOf(crewNotes(view), LEAD_CARD.nothingSet));
      rules.show((view.drill?.ruleCard ?? []).map(({ text }) => text));
      rulePart.hidden = view.drill === undefined;
      deal.refresh(view);
    },
  };
}

/** P(stay upright) in tenths, as finely as it was found to hold (engine/estimate/README.md). */
export function oddsWords({
  leadReadings,
  aborting,
}: Pick<TableView, 'leadReadings'> & { readonly aborting?: boolean }): string {
  if (aborting === true) return LEAD_CARD.givenUp;
  const odds = leadReadings?.odds;
  if (odds === undefined) return LEAD_CARD.noOdds;
  const tenths = Math.round(10 * odds);
  if (tenths >= 10) return LEAD_CARD.over;
  return tenths < 1 ? LEAD_CARD.under : LEAD_CARD.about(tenths);
}

function linesOf(notes: readonly CrewNote[], none: string): readonly string[] {
  return notes.length === 0 ? [none] : noteLines(notes);
}
