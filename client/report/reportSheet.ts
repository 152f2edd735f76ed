import { formatSamples, samplesCsv, type DescentLog } from '../../engine/replay/index.ts';
import type { TableView } from '../../engine/table/index.ts';
import { button, element, leaveButton } from '../panels/element.ts';
import { tableSheet } from '../panels/tableSheet.ts';
import { saveFile } from '../saveFile.ts';
import { fileStem } from '../saveRecord.ts';
import style from '../styles/report.css?inline';
import { REPORT } from '../text/debrief.ts';
import { reportArticle, type ReportFacts } from './reportArticle.ts';
import { reportFile } from './reportFile.ts';
import { explained } from '../terms/term.ts';

export interface ReportSheet {
  readonly sheet: HTMLElement;
  refresh(view: TableView): void;
}

/** The after-action report on the table, with what can be saved of the descent. */
export function createReportSheet(options: {
  readonly facts: Pick<ReportFacts, 'known' | 'code'>;
  readonly recordText: () => Promise<string | undefined>;
  /** Samples and statements with all that was noted until now. */
  readonly log: () => Promise<DescentLog | undefined>;
  readonly whyNoLog: () => string;
  readonly note: (words: string) => void;
  readonly back: () => void;
  readonly leave: () => void;
}): ReportSheet {
  const { facts, note } = options;
  const holder = element('div', {});
  let shown: ReportFacts['view'] | undefined;
  let laid = '';
  const article = () => shown && reportArticle({ ...facts, view: shown, date: today() });
  const save = (text: string, kind: string, type: string) => {
    if (shown === undefined) return;
    const name = `${fileStem(shown.plan.choice)}-${kind}`;
    saveFile(text, name, type);
    note(REPORT.saved(name));
  };
  const saveReport = () => {
    const made = article();
    if (made !== undefined && shown !== undefined)
      save(reportFile(made, style, shown.plan.title), 'report.html', 'text/html');
  };
  const withLog = async (make: (log: DescentLog) => void) => {
    note(REPORT.making);
    const log = await options.log();
    if (log === undefined) note(REPORT.failed(options.whyNoLog()));
    else make(log);
  };
  const saveRecord = async () => {
    const text = await options.recordText();
    await withLog(({ samples }) => {
      if (text !== undefined) save(text + formatSamples(samples), 'record.jsonl', 'application/jsonl');
    });
  };
  const saveStatements = ({ statements }: DescentLog) =>
    save(`${JSON.stringify(statements, undefined, 1)}\n`, 'xapi.json', 'application/json');
  return {
    sheet: tableSheet(
      {
        kind: 'report-sheet',
        label: REPORT.label,
        isRead: true,
        actions: [
          button(REPORT.back, options.back, { class: 'back-from-report' }),
          button(REPORT.print, () => window.print(), { class: 'primary' }),
          explained(button(REPORT.save, saveReport), 'after-action report'),
          button(REPORT.saveRecord, () => void saveRecord()),
          button(
            REPORT.saveTable,
            () => void withLog(({ samples }) => save(samplesCsv(samples), 'samples.csv', 'text/csv')),
          ),
          explained(
            button(REPORT.saveStatements, () => void withLog(saveStatements)),
            'xAPI statements',
          ),
          leaveButton(options.leave),
        ],
      },
      holder,
    ),
    refresh(view) {
      const { scorecard, review } = view;
      if (scorecard === undefined) return;
      // a clip that plays is no part of it
      const key = JSON.stringify([
        { ...review, clip: undefined },
        facts.known.log() === undefined,
        facts.known.drill()?.id,
      ]);
      if (key === laid) return;
      laid = key;
      shown = { ...view, scorecard };
      holder.replaceChildren(...[article()].filter((made) => made !== undefined));
    },
  };
}

function today(): string {
  return new Date().toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' });
}
