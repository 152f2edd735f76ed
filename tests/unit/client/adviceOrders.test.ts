import { describe, expect, it } from 'vitest';
import { adviseOrders } from '../../../client/panels/adviceOrders.ts';
import type { TableView } from '../../../engine/table/index.ts';
import { viewOf } from '../../support/flightView.ts';

type Ordered = NonNullable<TableView['orders']>;

function keyFor(flight: Parameters<typeof viewOf>[0], orders: Partial<Ordered>): string {
  const usual: Ordered = { descentRateTenths: 30, across: 'drift', driftTenths: 0, leanDeg: 0 };
  return adviseOrders({ ...viewOf(flight), orders: { ...usual, ...orders } }).key;
}

describe('the coach of a descent by orders', () => {
  it('asks to order it down when nothing, or a climb, is ordered', () => {
    expect(keyFor({ vy: 0 }, { descentRateTenths: 0 })).toBe('orderDown');
    expect(keyFor({ vy: 1 }, { descentRateTenths: -10 })).toBe('orderDown');
  });

  it('asks for a slower order before all else, by the order and not by what the lander does yet', () => {
    expect(keyFor({ height: 5, vy: -1 }, { descentRateTenths: 30, driftTenths: 34 })).toBe('orderSlower');
    // ordered slower already: it takes its time
    expect(keyFor({ height: 5, vy: -3 }, { descentRateTenths: 10 })).toBe('obeying');
  });

  it('asks for no drift while one is ordered, to either side, and says that it is coming while the lander leans', () => {
    expect(keyFor({ vx: 2 }, { driftTenths: 20 })).toBe('orderNoDrift');
    expect(keyFor({ vx: -2 }, { driftTenths: -20 })).toBe('orderNoDrift');
    expect(keyFor({ vx: 2 }, { driftTenths: 0 })).toBe('obeying');
  });

  it('asks to hold a drift where a lean does not stop the one there is, and upright near the ground', () => {
    expect(keyFor({ vx: 2 }, { across: 'lean', leanDeg: 0 })).toBe('orderDrift');
    expect(keyFor({ vx: 2 }, { across: 'lean', leanDeg: -6 })).toBe('orderDrift');
    // leaning left pushes to the left
    expect(keyFor({ vx: 2 }, { across: 'lean', leanDeg: 6 })).toBe('orderSteady');
    expect(keyFor({ vx: 0.2, height: 6, vy: -1 }, { across: 'lean', leanDeg: 6, descentRateTenths: 10 })).toBe(
      'orderUpright',
    );
  });

  it('names no thrust and no engine: of the ground it says what there is to see', () => {
    expect(keyFor({ phase: 'settling', height: 0 }, {})).toBe('settle');
    expect(keyFor({ phase: 'settling', height: 0, angle: 1.5 }, {})).toBe('fallen');
    expect(keyFor({ propellant: 0 }, {})).toBe('orderDry');
    expect(keyFor({}, {})).toBe('orderSteady');
  });
});
