import { defaultWorkers, openPool, type LongWork } from './pool.ts';
import type { Portions, Studies } from './work.ts';

/** Questions of a study, gathered before any is worked out. */
export interface StudyList {
  /** Adds a question; what comes back gives its answer once all are worked out. */
  ask<Kind extends keyof Studies>(kind: Kind, ask: Studies[Kind]['ask']): () => Studies[Kind]['answer'];
  /** Works all of them out on worker threads; false when that was aborted. The answers do not depend on the number of threads. */
  run(options?: LongWork): Promise<boolean>;
}

export function createStudyList(): StudyList {
  const portions: Portions['study']['portion'][] = [];
  const answers: unknown[] = [];
  return {
    ask<Kind extends keyof Studies>(kind: Kind, ask: Studies[Kind]['ask']) {
      const place = portions.length;
      // kind and question belong together, which the type of a union cannot follow
      // eslint-disable-next-line typescript/no-unsafe-type-assertion -- see above
      portions.push({ place, kind, ask } as Portions['study']['portion']);
      // eslint-disable-next-line typescript/no-unsafe-type-assertion -- what stands at this place answers a question of this kind
      return () => answers[place] as Studies[Kind]['answer'];
    },
    async run({ workers = defaultWorkers(), signal, onProgress } = {}) {
      const known = portions.length;
      if (known === 0) return true;
      let done = 0;
      const pool = openPool({ kind: 'study' }, Math.min(workers, known));
      try {
        const take = ({ place, answer }: Portions['study']['answer']): void => {
          answers[place] = answer;
          onProgress?.({ done: ++done, known });
        };
        await pool.answerAll(portions, take, signal);
      } finally {
        await pool.close();
      }
      return done === known;
    },
  };
}
