import type { TableView } from '../../engine/table/index.ts';
import { settings } from '../settings/store.ts';
import { ALERTS_APART, heardOf } from './heard.ts';
import type * as Board from './soundBoard.ts';

/** Sounds what a crew's page shows, as long as somebody wants it. */
interface TableSound {
  /** Each view that is shown, in order. */
  follow(view: TableView): void;
  end(): void;
}

/** Nothing is fetched and nothing sounds before it is asked for; nor where the browser is to save data. */
export function createTableSound(maxThrust: number): TableSound {
  let board: Board.SoundBoard | undefined;
  let isFetching = false;
  let hasEnded = false;
  let before: TableView | undefined;
  let alertAt = -Infinity;
  const begin = () => {
    if (board !== undefined || isFetching) return;
    isFetching = true;
    void import('./soundBoard.ts').then(({ SoundBoard }) => {
      isFetching = false;
      if (!hasEnded) board = new SoundBoard();
    });
  };
  const end = () => {
    board?.end();
    board = undefined;
  };
  return {
    follow(view) {
      const { sound, volume } = settings();
      if (!sound || savesData()) end();
      else begin();
      const now = performance.now() / 1000;
      // an alert that came too soon after another sounds once it may
      const heard = heardOf(view, before, { maxThrust, sinceAlert: now - alertAt });
      if (heard.alert !== undefined) alertAt = now;
      const isKept = heard.alert === undefined && now - alertAt < ALERTS_APART;
      before = isKept && before !== undefined ? { ...view, talk: before.talk } : view;
      board?.play(heard, volume / 100);
    },
    end() {
      hasEnded = true;
      end();
    },
  };
}

/** Whether this person asked their device to fetch little. */
function savesData(): boolean {
  // not every browser says
  const connection: unknown = 'connection' in navigator ? navigator.connection : undefined;
  const saves = typeof connection === 'object' && connection !== null && 'saveData' in connection;
  return (saves && connection.saveData === true) || matchMedia('(prefers-reduced-data: reduce)').matches;
}
