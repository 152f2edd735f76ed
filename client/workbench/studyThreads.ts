import type { Answers, Questions, Study } from './studies.ts';

/** What goes to a thread: a question in place of an older one of its kind; undefined: none any more. */
export interface Asked {
  readonly study: Study;
  readonly number: number;
  readonly question: unknown;
}

/** What comes back: all that is known so far, or undefined where nothing new came before the end. */
export interface Told {
  readonly study: Study;
  readonly number: number;
  readonly answer: unknown;
  readonly isDone: boolean;
}

export interface StudyThreads {
  /** Asks in place of an older question of this kind. A string in place of an answer says why there is none. */
  ask<Name extends Study>(
    study: Name,
    question: Questions[Name],
    tell: (answer: Answers[Name] | string, isDone: boolean) => void,
  ): void;
  drop(study: Study): void;
  end(): void;
}

/** Those that answer at once, and those that take seconds, do not wait for each other. */
const QUICK: readonly Study[] = ['limits', 'beside', 'touchdown', 'films', 'toward', 'matrix', 'lying'];

function openThread(): Worker {
  return new Worker(new URL('./studyWorker.ts', import.meta.url), { type: 'module' });
}

/** Two threads of the page for the studies of the workbench: the engine never holds up a frame. */
export function openStudyThreads(failed: () => void): StudyThreads {
  const [quick, slow] = [openThread(), openThread()];
  const asked = new Map<Study, { readonly number: number; tell(answer: unknown, isDone: boolean): void }>();
  let number = 0;
  for (const worker of [quick, slow]) {
    worker.addEventListener('error', failed);
    worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
      const waiting = asked.get(data.study);
      if (waiting?.number === data.number) waiting.tell(data.answer, data.isDone);
    });
  }
  const send = (message: Asked) => {
    // a thread of this page has no origin to name
    // eslint-disable-next-line unicorn/require-post-message-target-origin -- that is for windows
    (QUICK.includes(message.study) ? quick : slow).postMessage(message);
  };
  return {
    ask(study, question, tell) {
      number++;
      let newest: unknown;
      asked.set(study, {
        number,
        tell(answer, isDone) {
          newest = answer ?? newest;
          // what a study yields is what it declares
          // eslint-disable-next-line typescript/no-unsafe-type-assertion -- see above
          if (newest !== undefined) tell(newest as Answers[typeof study] | string, isDone);
        },
      });
      send({ study, number, question });
    },
    drop(study) {
      asked.delete(study);
      send({ study, number: 0, question: undefined });
    },
    end() {
      quick.terminate();
      slow.terminate();
    },
  };
}
