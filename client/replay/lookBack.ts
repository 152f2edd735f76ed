import type { Drill } from '../../engine/drill/index.ts';
import { parseRecord, type TableRecord } from '../../engine/record/index.ts';
import type { ClipCut, ClipFrame, DescentLog } from '../../engine/replay/index.ts';
import type { TablePlan } from '../../engine/table/index.ts';
import { readDrill } from '../readDrill.ts';
import { CLIP } from '../text/debrief.ts';
import { cutClipAside, logDescentAside, type TableLink } from '../net/index.ts';

/** What of the descent at rest can be looked at again, made from its record where it is asked for. What cannot be had is undefined. */
export interface LookBack {
  /** The whole drill, with what it hid; once. */
  drill(): Promise<Drill | undefined>;
  clip(cut: ClipCut): Promise<readonly ClipFrame[] | undefined>;
  /** Why the record could not be had, in words; undefined where it could. */
  readonly refusal: string | undefined;
  /** Samples and statements; the samples are always the same, the statements have what was noted until now. */
  log(): Promise<DescentLog | undefined>;
}

export function createLookBack(link: Pick<TableLink, 'drillText' | 'recordText'>): LookBack {
  let refusal: string | undefined;
  const readFlown = async () => {
    const read = await readRecord(link);
    refusal = typeof read === 'string' ? read : undefined;
    return typeof read === 'string' ? undefined : read;
  };
  const drill = keepOnce(() => readDrill(link));
  // the descent is over: its clips are the same whatever was noted since
  const flown = keepOnce(readFlown);
  return {
    get refusal() {
      return refusal;
    },
    drill,
    async clip(cut) {
      const read = await flown();
      return read && cutClipAside({ ...read, cut });
    },
    async log() {
      const read = await readFlown();
      return read && logDescentAside(read);
    },
  };
}

/** Asks once for all who want it; what did not come is asked for again by the next who wants it. */
function keepOnce<Read>(read: () => Promise<Read | undefined>): () => Promise<Read | undefined> {
  let kept: Promise<Read | undefined> | undefined;
  return () => {
    const asked = (kept ??= read().then((found) => {
      if (found === undefined && kept === asked) kept = undefined;
      return found;
    }));
    return asked;
  };
}

/** The record and its plan, or why not. */
async function readRecord(
  link: Pick<TableLink, 'recordText'>,
): Promise<string | { readonly record: TableRecord; readonly plan: TablePlan }> {
  const [text, shelf] = await Promise.all([link.recordText(), import('../drillShelf.ts')]);
  if (!text.ok) return text.error.reason;
  const record = parseRecord(text.value);
  if (!record.ok) return CLIP.unread;
  const { choice, drill } = record.value.header.plan;
  const plan = shelf.layPlan(choice, drill);
  return plan.ok ? { record: record.value, plan: plan.value } : CLIP.unread;
}
