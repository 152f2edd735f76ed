import type { Drill } from '../../../engine/drill/index.ts';
import type { RowView, TableView } from '../../../engine/table/index.ts';
import { findStart } from '../../../levels/index.ts';
import { EVENTS } from '../../text/control.ts';
import { element, say } from '../element.ts';
import { createLiveDrawing, type Ask } from '../seatCard.ts';
import { createEventRow, type EventRowPart } from './eventRow.ts';
import { dueOf, nextRow } from './eventWords.ts';
import { drawHeightScale, SCALE_WIDTH } from './heightScale.ts';
import { term } from '../../terms/term.ts';

export interface EventStrip {
  readonly card: HTMLElement;
  refresh(view: TableView): void;
}

/** The event list against height: what came, what comes next and when, one press each to deal it. */
export function createEventStrip(ask: Ask, drill: () => Drill | undefined): EventStrip {
  const scale = createLiveDrawing('height-scale');
  const list = element('ol', { class: 'event-rows' });
  const course = element('em', {});
  const none = element('p', { class: 'hint' }, EVENTS.empty);
  const strip = element(
    'div',
    { class: 'event-strip', tabindex: 0, role: 'group', 'aria-label': EVENTS.label },
    scale.holder,
    list,
  );
  const card = element(
    'section',
    { class: 'card event-card', 'aria-label': EVENTS.label },
    element('h2', { class: 'card-head' }, element('span', {}, term('event list', EVENTS.label)), course),
    none,
    strip,
  );
  let rows: readonly EventRowPart[] = [];
  let laid = '';

  return {
    card,
    refresh(view) {
      const { control } = view;
      const known = drill();
      none.hidden = known !== undefined;
      strip.hidden = known === undefined;
      if (known === undefined || control === undefined) return;
      const ids = (control.rows.length > 0 ? control.rows : known.events).map(({ id }) => id);
      if (ids.join(' ') !== laid) {
        laid = ids.join(' ');
        rows = known.events.filter(({ id }) => ids.includes(id)).map((row) => createEventRow(row, known, ask));
        list.replaceChildren(...rows.map(({ node }) => node));
      }
      say(course, control.course === undefined ? '' : EVENTS.course(control.course));
      const { height } = control.truth;
      const top = Math.max(1.05 * (findStart(known.plan.start)?.height ?? 0), height);
      // the scale is drawn in drafting units, and its rows are measured in pixels
      const unit = Math.max(0.1, scale.holder.clientWidth / SCALE_WIDTH);
      const next = view.stage === 'descending' ? nextRow(known, control) : undefined;
      const mayDeal = view.you.role === 'facilitator' && view.stage === 'descending';
      const entries = rows.map((part) => {
        const row = known.events.find(({ id }) => id === part.id);
        const at: RowView = control.rows.find(({ id }) => id === part.id) ?? {
          id: part.id,
          state: 'waiting',
          seen: [],
        };
        const due = row && dueOf(row, at, control);
        part.refresh(at, at.state === 'waiting' && view.stage === 'descending' ? due : undefined, {
          isNext: part.id === next,
          mayDeal,
        });
        const came = at.sentHeight ?? (row?.trigger.on === 'height' ? row.trigger.meters : undefined);
        const isDue = due !== undefined && Number.isFinite(due.seconds);
        const y = part.node.offsetTop / unit + HEAD_MIDDLE;
        return { y, height: at.state === 'waiting' ? (isDue ? due.height : came) : came, state: at.state };
      });
      const { markup, viewBox } = drawHeightScale({
        tall: Math.max(list.scrollHeight, strip.clientHeight) / unit,
        top,
        now: height,
        entries,
      });
      scale.show(markup, viewBox);
    },
  };
}

/** From the top of a row to the middle of its first line [drafting units]. */
const HEAD_MIDDLE = 16;
