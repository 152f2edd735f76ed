import { saveRecord } from '../saveRecord.ts';
import { keptRunKeys } from '../net/runKeys.ts';
import { button, element, say } from '../panels/element.ts';
import { LOGBOOK, RUN } from '../text/logbook.ts';
import type { ListedRun } from '../../server/messages/index.ts';
import { deleteRun, forgetName, keepRun, type Keys } from './serverRuns.ts';
import { withLabel } from './withLabel.ts';

/** What may be done with a run of the server, besides reading it. `changed`: it is to be read anew; `gone`: there is nothing left to read. */
export function createRunActions(
  run: ListedRun,
  text: string,
  does: { readonly keys: Keys; readonly changed: () => void; readonly gone: () => void },
): HTMLElement {
  const { id, isKept, choice, summary } = run;
  const { keys, changed, gone } = does;
  const status = element('span', { class: 'hint', role: 'status' });
  const then = (done: () => void) => (answer: { readonly ok: boolean; readonly error?: string }) => {
    if (answer.ok) done();
    else say(status, answer.error ?? LOGBOOK.failed);
  };
  const keep = button(isKept ? RUN.unkeep : RUN.keep, () => void keepRun(keys, id, !isKept).then(then(changed)));
  const names = [...new Set((summary?.people ?? []).map(({ name }) => name))];
  const forget = () => {
    const who = element('select', {}, ...names.map((name) => element('option', { value: name }, name)));
    openQuestion({
      title: RUN.forgetTitle,
      words: RUN.forgetWords,
      act: RUN.forgetAct,
      field: withLabel(RUN.forgetWho, who),
      done: () => void forgetName(keys, id, who.value).then(then(changed)),
    });
  };
  const remove = () =>
    openQuestion({
      title: RUN.removeTitle,
      words: RUN.removeWords,
      act: RUN.removeAct,
      done: () => void deleteRun(keys, id).then(then(gone)),
    });
  return element(
    'div',
    { class: 'sheet-actions' },
    button(RUN.saveRecord, () => saveRecord(text, choice)),
    keep,
    names.length === 0 ? undefined : button(RUN.forget, forget),
    button(RUN.remove, remove),
    keyOf(run),
    status,
  );
}

/** The key that this browser has of the run, for whoever is to read it too. */
function keyOf({ code }: ListedRun): HTMLElement | undefined {
  const kept = keptRunKeys().find((one) => one.code === code);
  if (kept === undefined) return undefined;
  return element(
    'details',
    { class: 'run-key' },
    element('summary', {}, RUN.key),
    element('p', {}, RUN.keyWords),
    element('code', {}, kept.key),
  );
}

/** Asks before what cannot be taken back. */
function openQuestion(question: {
  readonly title: string;
  readonly words: string;
  readonly act: string;
  readonly field?: HTMLElement;
  readonly done: () => void;
}): void {
  const { title, words, act, field, done } = question;
  const sheet = element('dialog', { class: 'question', 'aria-labelledby': 'question-title' });
  const sure = button(act, () => {
    sheet.close();
    done();
  });
  sheet.append(
    element('h2', { id: 'question-title' }, title),
    element('p', {}, words),
    ...(field === undefined ? [] : [field]),
    element(
      'div',
      { class: 'sheet-actions' },
      button(RUN.no, () => sheet.close(), { class: 'primary' }),
      sure,
    ),
  );
  sheet.addEventListener('close', () => sheet.remove());
  document.body.append(sheet);
  sheet.showModal();
}
