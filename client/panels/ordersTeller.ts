import type { TableView } from '../../engine/table/index.ts';
import { ORDERS, PACE } from '../text/en.ts';
import type { Announcer } from './announcer.ts';
import { descentRateWords, driftWords, leanWords } from './readings.ts';

/** Puts a new pace, and the orders of a person at Flying, into words. Those of a stand-in change with every tick, and are seen on the scales. */
export function createOrdersTeller(announcer: Announcer, note: (words: string) => void): (view: TableView) => void {
  let ordered = '';
  let pace: TableView['pace'] | undefined;
  return (view) => {
    if (pace !== undefined && pace !== view.pace) note(PACE.set(PACE.words[view.pace]));
    ({ pace } = view);
    const words = isOrderedByPerson(view) ? ordersWords(view) : '';
    if (words !== ordered && words !== '' && ordered !== '') announcer.announce(words);
    ordered = words;
  };
}

function isOrderedByPerson({ stage, seats }: TableView): boolean {
  return (
    stage === 'descending' &&
    seats.some(({ seat, name, connected }) => seat === 'flying' && name !== undefined && connected)
  );
}

/** 'Ordered: 2.0 m/s, drift none.' */
function ordersWords({ orders }: TableView): string {
  if (orders === undefined) return '';
  const { descentRateTenths, across, driftTenths, leanDeg } = orders;
  const acrossWords = across === 'drift' ? ORDERS.saidDrift(driftWords(driftTenths / 10)) : leanWords(leanDeg);
  return ORDERS.said(descentRateWords(descentRateTenths / 10), acrossWords);
}
