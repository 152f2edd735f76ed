import {
  createEnvelope,
  enterAnswer,
  pendingJobs,
  type Envelope,
  type EnvelopeJob,
  type EnvelopeQuestion,
} from '../../engine/envelope/index.ts';
import { defaultWorkers, openPool, type LongWork } from './pool.ts';

/** Jobs in a portion: a node costs up to as many touchdowns as there are directions. */
const PORTION = 4;

/** Works out an envelope on worker threads. An aborted one comes back as far as it got. */
export async function runEnvelope(question: EnvelopeQuestion, options: LongWork = {}): Promise<Envelope> {
  const { workers = defaultWorkers(), signal, onProgress } = options;
  const envelope = createEnvelope(question);
  const isStopped = (): boolean => signal?.aborted === true;
  let before = 0;
  const pool = openPool({ kind: 'envelope', question }, workers);
  try {
    // each round of jobs follows from the answers to all of the last
    while (envelope.stage !== 'done' && !isStopped()) {
      const round = pendingJobs(envelope);
      const known = before + round.length;
      let answered = 0;
      await pool.answerAll(
        portions(round),
        (answers) => {
          for (const answer of answers) enterAnswer(envelope, answer);
          answered += answers.length;
          onProgress?.({ done: before + answered, known });
        },
        signal,
      );
      before += answered;
    }
    return envelope;
  } finally {
    await pool.close();
  }
}

function* portions(jobs: readonly EnvelopeJob[]): Generator<readonly EnvelopeJob[]> {
  for (let first = 0; first < jobs.length; first += PORTION) yield jobs.slice(first, first + PORTION);
}
