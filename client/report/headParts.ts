import { RECORD_FORMAT } from '../../engine/record/index.ts';
import { SEATS, type TableView } from '../../engine/table/index.ts';
import { element, entry } from '../panels/element.ts';
import { REPORT } from '../text/debrief.ts';
import { SEAT_NAMES, TITLE_BLOCK } from '../text/en.ts';
import type { ReportFacts } from './reportArticle.ts';

/** When, where, what, and by which version. */
export function headPart({ view, known, code, date }: ReportFacts): HTMLElement {
  const { setup, siteName, world, seed } = known.plan();
  const { scorecard, drill } = view;
  return element(
    'header',
    {},
    element('p', { class: 'report-program' }, TITLE_BLOCK.programme),
    element('h1', {}, REPORT.title),
    element(
      'dl',
      { class: 'report-facts' },
      entry(REPORT.drill, drill?.title ?? REPORT.free),
      entry(REPORT.made, date),
      entry(REPORT.table, code ?? REPORT.alone),
      entry(REPORT.landing, TITLE_BLOCK.place(siteName, setup.lander.name, world.name)),
      entry(REPORT.ground, String(seed)),
      entry(REPORT.versions, REPORT.versionsValue(scorecard.physics, RECORD_FORMAT)),
    ),
  );
}

/** Who sat where when it came to rest, and who ran it. */
export function seatsPart({ scorecard, you, others }: TableView): HTMLElement {
  const crew = SEATS.map((seat) => {
    const name = scorecard?.crew.find((one) => one.seat === seat)?.name;
    return [SEAT_NAMES[seat], name ?? REPORT.standIn] as const;
  });
  const control = [you, ...others].flatMap(({ name, role }) =>
    role === 'facilitator' || role === 'evaluator' ? [[REPORT[role], name] as const] : [],
  );
  return element('dl', { class: 'report-facts' }, ...[...crew, ...control].map(([what, who]) => entry(what, who)));
}
