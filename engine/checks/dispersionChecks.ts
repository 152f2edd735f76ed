import { clopperPearson, toleranceRuns, wilson, zeroFailureRuns } from '../dispersion/index.ts';
import { createPointSet } from '../dispersion/pointSet.ts';
import { designPoint, designRuns, varianceShares } from '../dispersion/sensitivity.ts';
import { assert } from '../assert.ts';
import { sobolCoordinate } from '../math/sobol.ts';
import { sin } from '../math/trig.ts';
import type { OutsideCheck } from './outsideCheck.ts';
import { AT_MOST, EQUALS_COUNT, EQUALS_PRINTED } from './tolerances.ts';

const CONFIDENCE = 0.95;
const SEVEN_OF_FIFTY = { successes: 7, runs: 50 };

/** Points 0 to 3, dimensions 1 to 6, as the direction numbers of the search criterion 6 give them. */
const FIRST_POINTS: readonly (readonly number[])[] = [
  [0, 0, 0, 0, 0, 0],
  [0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
  [0.75, 0.25, 0.25, 0.25, 0.75, 0.75],
  [0.25, 0.75, 0.75, 0.75, 0.25, 0.25],
];

/** Exact interval, from the documentation; digits past these carry the root tolerance of that program. */
const EXACT_INTERVAL = {
  ...EQUALS_PRINTED,
  source: 'SciPy documentation of binomtest, Clopper-Pearson interval',
  kind: 'printed',
  seen: 'yes',
  unit: '-',
} as const;

const SCORE_INTERVAL = { ...EXACT_INTERVAL, source: 'Wilson 1927 [Wilson1927]', kind: 'form', seen: 'no' } as const;

export const DISPERSION_CHECKS: readonly OutsideCheck[] = [
  {
    ...EXACT_INTERVAL,
    name: 'exact interval of 7 in 50, lower end',
    expected: '0.05819170034',
    compute: () => clopperPearson(SEVEN_OF_FIFTY, CONFIDENCE).low,
  },
  {
    ...EXACT_INTERVAL,
    name: 'exact interval of 7 in 50, upper end',
    expected: '0.26739600250',
    compute: () => clopperPearson(SEVEN_OF_FIFTY, CONFIDENCE).high,
  },
  {
    ...SCORE_INTERVAL,
    name: 'score interval of 7 in 50, lower end',
    expected: '0.0695083343',
    compute: () => wilson(SEVEN_OF_FIFTY, CONFIDENCE).low,
  },
  {
    ...SCORE_INTERVAL,
    name: 'score interval of 7 in 50, upper end',
    expected: '0.2618619371',
    compute: () => wilson(SEVEN_OF_FIFTY, CONFIDENCE).high,
  },
  runsWithoutFailure('95', '59'),
  runsWithoutFailure('99', '299'),
  runsWithoutFailure('99.865', '2218'),
  runsForExtreme(1, '59'),
  runsForExtreme(2, '93'),
  runsForExtreme(3, '124'),
  {
    ...EQUALS_COUNT,
    name: "Sobol' points 0 to 3 in 6 dimensions: coordinates that agree",
    source: 'Joe and Kuo 2008, direction numbers of criterion 6 [JoeKuo2008]',
    kind: 'printed',
    seen: 'no',
    expected: '24',
    unit: '-',
    note: 'a different table of direction numbers circulates; these points tell them apart',
    compute: countSobolAgreement,
  },
  {
    ...AT_MOST,
    name: "shares of variance of Ishigami's function: largest deviation of six",
    source: 'Ishigami and Homma 1990, a 7, b 0.1 [IshigamiHomma1990]',
    kind: 'printed',
    seen: 'no',
    expected: '0.003',
    unit: '-',
    note: "first 0.3139, 0.4424, 0; total 0.5576, 0.4424, 0.2437; 16,384 Sobol' base points, for which 0.003 is our allowance",
    compute: ishigamiDeviation,
  },
];

function runsWithoutFailure(reliabilityPercent: string, expected: string): OutsideCheck {
  return {
    ...EQUALS_COUNT,
    name: `runs without a failure for ${reliabilityPercent} % reliability at 95 % confidence`,
    source: 'NASA/TP-2010-216447 [NASA216447]',
    kind: 'printed',
    seen: 'no',
    expected,
    unit: 'runs',
    compute: () => zeroFailureRuns(Number(reliabilityPercent) / 100, CONFIDENCE),
  };
}

function runsForExtreme(rank: number, expected: string): OutsideCheck {
  return {
    ...EQUALS_COUNT,
    name: `runs for which extreme no. ${rank} bounds 95 % of all cases at 95 % confidence`,
    source: 'Wilks 1941 [Wilks1941], as tabulated by Nutt and Wallis 2004 [NuttWallis2004]',
    kind: 'printed',
    seen: 'no',
    expected,
    unit: 'runs',
    compute: () => toleranceRuns(rank, { coverage: 0.95, confidence: CONFIDENCE }),
  };
}

function countSobolAgreement(): number {
  const agree = FIRST_POINTS.map((point, index) =>
    point.filter((coordinate, dimension) => sobolCoordinate(index, dimension) === coordinate),
  );
  return agree.flat().length;
}

/** First-order and total shares as published. */
const ISHIGAMI = [
  { first: 0.3139, total: 0.5576 },
  { first: 0.4424, total: 0.4424 },
  { first: 0, total: 0.2437 },
] as const;

/** sin x1 + 7 sin² x2 + 0.1 x3⁴ sin x1, each x uniform in (−π, π). */
function ishigami(point: readonly number[]): number {
  const [x1 = NaN, x2 = NaN, x3 = NaN] = point.map((share) => Math.PI * (2 * share - 1));
  return sin(x1) * (1 + 0.1 * x3 * x3 * x3 * x3) + 7 * sin(x2) * sin(x2);
}

function ishigamiDeviation(): number {
  const design = { basePoints: 16_384, factors: 3, factorOf: [0, 1, 2] };
  const base = createPointSet({ method: 'sobol', dimensions: 6, size: design.basePoints, seed: 3 });
  const answers = Array.from({ length: designRuns(design) }, (_, i) => ishigami(designPoint(base, design, i)));
  const shares = varianceShares(answers, design.factors);
  assert(shares !== undefined, 'the answers vary');
  const deviations = ISHIGAMI.flatMap((published, factor) => {
    const { first = NaN, total = NaN } = shares[factor] ?? {};
    return [Math.abs(first - published.first), Math.abs(total - published.total)];
  });
  return Math.max(...deviations);
}
