import { accept, refuse, type Result } from '../../engine/result.ts';
import { formatRecord } from '../../engine/record/index.ts';
import { element, say } from '../panels/element.ts';
import { RUN } from '../text/logbook.ts';
import { createCardPart } from './cardPart.ts';
import { createComparePart } from './comparePart.ts';
import { playRecord, playText, type PlayedRun } from './playedRun.ts';
import { createReplayPart } from './replayPart.ts';
import { createReviewPart, type Amend } from './reviewPart.ts';
import { createRunActions } from './runActions.ts';
import { amendRun, readRun, type Keys } from './serverRuns.ts';
import type { ShownRun } from './shownRun.ts';
import { createWhatIfPart } from './whatIfPart.ts';

/** One run, open. */
export interface RunPage {
  readonly node: HTMLElement;
  end(): void;
}

export function createRunPage(
  run: ShownRun,
  others: readonly ShownRun[],
  does: { readonly keys: Keys; readonly changed: () => void; readonly gone: () => void },
): RunPage {
  const status = element('p', { class: 'hint', role: 'status' }, RUN.reading);
  const node = element(
    'article',
    { class: 'run', 'aria-labelledby': 'run-title' },
    element('h1', { id: 'run-title', tabindex: -1 }, run.title),
    element('p', { class: 'run-about' }, [run.place, run.date, run.crew].filter(Boolean).join(' · ')),
    status,
  );
  let endReplay: (() => void) | undefined;
  let isOver = false;
  const { keys } = does;
  const fill = async () => {
    const text = await textOf(run, keys);
    if (isOver) return;
    if (text.ok && run.server !== undefined) node.insertBefore(createRunActions(run.server, text.value, does), status);
    const played = text.ok ? await playText(text.value) : text;
    if (isOver) return;
    say(status, played.ok ? '' : played.error);
    if (played.ok) endReplay = layParts(node, played.value, others, { run, keys });
  };
  void fill();
  return {
    node,
    end() {
      isOver = true;
      endReplay?.();
    },
  };
}

function layParts(
  node: HTMLElement,
  played: PlayedRun,
  others: readonly ShownRun[],
  { run, keys }: { readonly run: ShownRun; readonly keys: Keys },
): () => void {
  const replay = createReplayPart(played);
  const amend: Amend | undefined =
    run.server &&
    (async (command) => {
      const done = await amendRun(keys, run.id, command);
      if (!done.ok) return done.error;
      const again = await playOf(run, keys);
      if (!again.ok) return again.error;
      const next = createReviewPart(again.value, amend);
      review.replaceWith(next);
      review = next;
      return '';
    });
  let review = createReviewPart(played, amend);
  const parts = [
    createCardPart(played),
    review,
    createComparePart(played, others, (other) => playOf(other, keys)),
    createWhatIfPart(played),
  ];
  node.append(replay.node, ...parts.filter((part) => part !== undefined));
  return () => replay.end();
}

async function textOf({ server, record, id }: ShownRun, keys: Keys): Promise<Result<string, string>> {
  if (server !== undefined) return readRun(keys, id);
  return record === undefined ? refuse(RUN.unread) : accept(formatRecord(record));
}

async function playOf(run: ShownRun, keys: Keys): Promise<Result<PlayedRun, string>> {
  if (run.record !== undefined) return playRecord(run.record);
  const text = await textOf(run, keys);
  return text.ok ? playText(text.value) : text;
}
