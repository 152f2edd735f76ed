import { expect, it } from 'vitest';
import { createAnewCheck } from '../../../client/panels/laidPage.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { viewOf } from '../../support/flightView.ts';

const at = (stage: TableView['stage'], tick: number): TableView => ({ ...viewOf({ tick }), stage });

it('another descent is told from the one that goes on: after rest, and where the clock was set back', () => {
  const isAnew = createAnewCheck();
  const told = [
    at('gathering', 0),
    at('descending', 1),
    at('descending', 9),
    at('resolved', 9),
    at('descending', 9),
    at('descending', 12),
    at('descending', 0),
    at('resolved', 3),
  ].map(isAnew);
  expect(told).toEqual([false, false, false, false, true, false, true, false]);
});
