import { writeFileSync } from 'node:fs';
import { showAll, SHOWN_RUNS } from './goldenViews.ts';

/** Writes the hashes of all that is shown anew: our own output, for a commit that says why it changed. */
const golden = Object.fromEntries(SHOWN_RUNS.map((run) => [run.name, showAll(run).hashes]));
writeFileSync(new URL('goldenViews.json', import.meta.url), `${JSON.stringify(golden, undefined, 2)}\n`);
