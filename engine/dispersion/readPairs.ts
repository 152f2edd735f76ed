/** Reads the pairs of inputs of a campaign document that are drawn together. */
import {
  readChoice,
  readFields,
  readList,
  readNumber,
  report,
  type NumberRange,
  type ProblemList,
} from '../fieldReader.ts';
import { CAMPAIGN_INPUTS, type CampaignInput, type PairedInputs } from './campaignInputs.ts';
import { pairReach } from './distribution.ts';
import { checkReach, rangeOf, spreadRange } from './readDistribution.ts';

const PAIRS = { least: 0, most: 8, of: 'pairs' } as const;
const TWO = { least: 2, most: 2, of: 'items, one for each input' } as const;

export function readPairs(list: ProblemList, value: unknown, path: string): readonly PairedInputs[] | undefined {
  return readList(list, value, path, PAIRS, (item, at) => readPair(list, item, at));
}

function readPair(list: ProblemList, item: unknown, path: string): PairedInputs | undefined {
  const fields = readFields(list, item, path, ['inputs', 'means', 'deviations', 'correlation']);
  if (fields === undefined) return undefined;
  const inputs = readTwo(list, fields.inputs, `${path}.inputs`, (name, at) =>
    readChoice(list, name, at, CAMPAIGN_INPUTS),
  );
  if (inputs === undefined) return undefined;
  if (inputs[0] === inputs[1])
    return report(list, 'same-input', {
      path: `${path}.inputs`,
      expected: 'two different inputs',
      came: `${inputs[0]} twice`,
    });
  const numbers = (
    name: 'means' | 'deviations',
    range: (input: CampaignInput) => NumberRange,
  ): readonly [number, number] | undefined =>
    readTwo(list, fields[name], `${path}.${name}`, (number, at, place) =>
      readNumber(list, number, at, range(inputs[place])),
    );
  const means = numbers('means', rangeOf);
  const deviations = numbers('deviations', spreadRange);
  const correlation = readNumber(list, fields.correlation, `${path}.correlation`, { least: -1, most: 1, unit: '-' });
  if (means === undefined || deviations === undefined || correlation === undefined) return undefined;
  const pair = { inputs, means, deviations, correlation };
  const [first, second] = pairReach(pair);
  const isFirstInside = checkReach(list, path, inputs[0], { ...first, kind: 'normal' });
  const isSecondInside = checkReach(list, path, inputs[1], { ...second, kind: 'normal' });
  return isFirstInside && isSecondInside ? pair : undefined;
}

function readTwo<Item>(
  list: ProblemList,
  value: unknown,
  path: string,
  readItem: (item: unknown, path: string, place: 0 | 1) => Item | undefined,
): readonly [Item, Item] | undefined {
  let place: 0 | 1 = 0;
  const items = readList(list, value, path, TWO, (item, at) => {
    const read = readItem(item, at, place);
    place = 1;
    return read;
  });
  if (items === undefined) return undefined;
  const [first, second] = items;
  return first === undefined || second === undefined ? undefined : [first, second];
}
