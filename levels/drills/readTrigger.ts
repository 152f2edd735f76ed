import { STATE_QUANTITIES, type Trigger } from '../../engine/drill/index.ts';
import {
  describe,
  readChoice,
  readFields,
  readKind,
  readNumber,
  readText,
  report,
  type ProblemList,
} from '../../engine/fieldReader.ts';
import { RANGES, STATE_RANGES, TEXTS } from './drillRanges.ts';

const TRIGGERS = ['time', 'height', 'state', 'inject', 'hand'] as const;

/** When an inject is sent. Whether what it names is there is for `checkDrill`. */
export function readTrigger(list: ProblemList, value: unknown, path: string): Trigger | undefined {
  const on = readKind(list, value, path, TRIGGERS, 'on');
  switch (on) {
    case undefined:
      return undefined;
    case 'time': {
      const fields = readFields(list, value, path, ['on', 'seconds']);
      const seconds = readNumber(list, fields?.seconds, `${path}.seconds`, RANGES.seconds);
      return seconds === undefined ? undefined : { on, seconds };
    }
    case 'height': {
      const fields = readFields(list, value, path, ['on', 'meters']);
      const meters = readNumber(list, fields?.meters, `${path}.meters`, RANGES.meters);
      return meters === undefined ? undefined : { on, meters };
    }
    case 'state':
      return readState(list, value, path);
    case 'inject': {
      const fields = readFields(list, value, path, ['on', 'inject', 'seconds']);
      const inject = readText(list, fields?.inject, `${path}.inject`, TEXTS.id);
      const seconds = readNumber(list, fields?.seconds, `${path}.seconds`, RANGES.seconds);
      return inject === undefined || seconds === undefined ? undefined : { on, inject, seconds };
    }
    case 'hand':
      return readFields(list, value, path, ['on']) && { on };
  }
  return on satisfies never;
}

function readState(list: ProblemList, value: unknown, path: string): Trigger | undefined {
  const fields = readFields(list, value, path, ['on', 'quantity'], ['above', 'below']);
  const quantity = readChoice(list, fields?.quantity, `${path}.quantity`, STATE_QUANTITIES);
  if (fields === undefined || quantity === undefined) return undefined;
  if ((fields.above === undefined) === (fields.below === undefined)) {
    const came = fields.above === undefined ? 'neither' : `both: ${describe(fields.above)}, ${describe(fields.below)}`;
    return report(list, 'one-of-two', { path, expected: 'either above or below', came });
  }
  const above = readNumber(list, fields.above, `${path}.above`, STATE_RANGES[quantity]);
  const below = readNumber(list, fields.below, `${path}.below`, STATE_RANGES[quantity]);
  if (above !== undefined) return { on: 'state', quantity, above };
  return below === undefined ? undefined : { on: 'state', quantity, below };
}
