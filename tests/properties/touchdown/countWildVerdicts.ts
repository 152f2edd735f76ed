/**
 * Counts verdicts of wild arrivals that do not last, for engine/touchdown/README.md:
 * `node tests/properties/touchdown/countWildVerdicts.ts <seed> <count>`.
 */
import { judgeWildTouchdowns } from '../../support/wildVerdicts.ts';

const [seed = '1', count = '1000'] = process.argv.slice(2);
const verdicts = judgeWildTouchdowns(Number(seed), Number(count));
process.stdout.write(`${JSON.stringify(verdicts)}\n`);
