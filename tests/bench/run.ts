// first, on purpose: see there
import './platformMath.ts';
import path from 'node:path';
import { textTable } from '../../server/cli/textTable.ts';
import { ROOT } from '../support/sources.ts';
import { benchBelief } from './belief.ts';
import { benchClientSize } from './clientSize.ts';
import type { BenchRow } from './row.ts';
import { benchDrillTable } from './drillTable.ts';
import { benchManyTables } from './manyTables.ts';
import { benchSimulationRate } from './simulationRate.ts';
import { benchTipLimit } from './tipLimit.ts';
import { benchTouchdown } from './touchdown.ts';
import { benchTripLimitRate } from './tripLimitRate.ts';
import { benchWireBytes } from './wireBytes.ts';
import { benchWorldStep } from './worldStep.ts';

/** Prints what things cost, each beside a reference of the same run: ratios travel between machines, figures do not. */
const engine: readonly BenchRow[] = [
  ...benchTripLimitRate(),
  ...benchWorldStep(),
  ...benchBelief(),
  ...benchDrillTable(),
  ...benchTipLimit(),
  ...(await benchTouchdown()),
  ...(await benchSimulationRate()),
  ...(await benchWireBytes()),
  ...(await benchManyTables()),
];
// loaded late: with the browser's driver in the process the steps above measured up to three times as long
const { benchFirstFrame } = await import('./firstFrame.ts');
const firstFrame = await benchFirstFrame();
const rows = [...engine, ...benchClientSize(path.join(ROOT, '.build/client'), firstFrame.asked), ...firstFrame.rows];

console.log(
  textTable(
    [
      { heading: 'measure', align: 'left' },
      { heading: 'value', align: 'right' },
      { heading: 'unit', align: 'left' },
      { heading: 'reference', align: 'left' },
      { heading: 'value', align: 'right' },
      { heading: 'ratio', align: 'right' },
    ],
    rows.map((row) => [
      row.measure,
      row.value.toPrecision(4),
      row.unit,
      row.reference,
      row.referenceValue.toPrecision(4),
      (row.value / row.referenceValue).toFixed(3),
    ]),
  ),
);
