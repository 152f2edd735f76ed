import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take longest, the longest first: begun last, one of them would run on alone while the other workers have nothing to do. */
const LONGEST = [
  'tests/e2e/table/sixWindows',
  'tests/e2e/table/alone',
  'tests/e2e/table/drill',
  'tests/e2e/table/fiveSeats',
  'tests/e2e/table/choice',
  'tests/e2e/workbench',
  'tests/e2e/table/accessibility',
  'tests/e2e/table/settings',
  'tests/e2e/table/logbook',
  'tests/e2e/table/failure',
  'tests/e2e/table/widths',
  'tests/sync/table/badDays',
  'tests/sync/attacks/comingBack',
  'tests/sync/attacks/cutUpgrades',
  'tests/sync/table/restart',
  'tests/contract/cli/help',
  'tests/contract/storage/killed',
  'tests/contract/cli/simulation',
  'tests/contract/cli/checkedRange',
  'tests/validation/drills/drills',
];

function placeOf({ moduleId }: TestSpecification): number {
  const at = LONGEST.findIndex((file) => moduleId.replaceAll('\\', '/').endsWith(`${file}.test.ts`));
  return at < 0 ? LONGEST.length : at;
}

/** A clone that has never run the tests has no times to go by. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    // eslint-disable-next-line unicorn/no-array-sort -- no array
    const usual = await super.sort(files);
    return usual.toSorted((one, other) => placeOf(one) - placeOf(other));
  }
}
