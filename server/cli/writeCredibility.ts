import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { runChecks } from '../../engine/checks/index.ts';
import { reportCard } from './check.ts';
import { formatReport } from './report.ts';

/** Writes engine/CREDIBILITY.md: what `kilter check --card --markdown` prints. A test holds the committed file to it. */
const card = reportCard(runChecks(), true);
writeFileSync(path.join(import.meta.dirname, '../../engine/CREDIBILITY.md'), await formatReport(card, 'text'));
