import { STUDIES, STUDY_ORDER, type Study } from './studies.ts';
import type { Asked, Told } from './studyThreads.ts';

/**
 * A thread of the workbench. It holds one question of each kind and works on the most urgent one, in short slices, so that a newer question
 * of the same kind takes the place of the older one at once.
 */

/** Work between two looks at what has come [ms]. */
const SLICE_MS = 40;

interface Work {
  readonly number: number;
  readonly answers: Generator;
}

const works = new Map<Study, Work>();
const turn = new MessageChannel();
let isTurning = false;

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const { study, number, question } = data;
  if (question === undefined) {
    works.delete(study);
    return;
  }
  // what is asked and how it is answered are declared together in studies.ts; here kinds are no longer told apart
  // eslint-disable-next-line typescript/no-unsafe-type-assertion -- see above
  const begin = STUDIES[study] as (asked: unknown) => Generator;
  works.set(study, { number, answers: begin(question) });
  goOn();
});
turn.port2.addEventListener('message', () => {
  isTurning = false;
  const study = STUDY_ORDER.find((one) => works.has(one));
  const work = study === undefined ? undefined : works.get(study);
  if (study !== undefined && work !== undefined) workOn(study, work);
  goOn();
});
turn.port2.start();

function goOn(): void {
  if (isTurning || works.size === 0) return;
  isTurning = true;
  turn.port1.postMessage(undefined);
}

function workOn(study: Study, { number, answers }: Work): void {
  const end = performance.now() + SLICE_MS;
  let newest: unknown;
  let isDone = false;
  do {
    const step = answers.next();
    isDone = step.done === true;
    if (!isDone) newest = step.value;
  } while (!isDone && performance.now() < end);
  if (isDone) works.delete(study);
  const told: Told = { study, number, answer: newest, isDone };
  postMessage(told);
}
