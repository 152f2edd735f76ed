import { headerOf } from '../../engine/record/index.ts';
import { firstLanding } from '../../levels/index.ts';
import { openJournal } from '../../server/storage/index.ts';

/** Writes more lines than its file may grow to, and says what was reported. For a process whose files are limited: node tests/support/fillJournal.ts FOLDER */
const reports: string[] = [];
const journal = openJournal({ folder: process.argv[2] ?? '', report: (line) => reports.push(line) });
const table = journal.open('HKTVRQ', headerOf(firstLanding(1)));
for (let tick = 0; tick < 3000; tick += 1)
  table.write({
    line: 'entry',
    tick,
    member: 'm1',
    content: { kind: 'joined', name: `Somebody ${'x'.repeat(15)}`, role: 'crew' },
  });
console.log(JSON.stringify(reports));
