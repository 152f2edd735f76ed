import { writeFileSync } from 'node:fs';
import { goldenStudies } from './studies.ts';
import { goldenTouchdowns } from './touchdowns.ts';
import { goldenViews } from './views.ts';

/** Writes all golden hashes anew: our own output, for a commit that says why it changed. */
const golden = { views: goldenViews(), touchdowns: goldenTouchdowns(), studies: goldenStudies() };
writeFileSync(new URL('golden.json', import.meta.url), `${JSON.stringify(golden, undefined, 2)}\n`);
