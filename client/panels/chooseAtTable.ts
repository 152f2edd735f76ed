import type { TableView } from '../../engine/table/index.ts';
import type { TableLink } from '../net/index.ts';
import { addressOf } from '../planAddress.ts';
import { LOBBY } from '../text/en.ts';
import { openChoiceSheet } from './choiceSheet.ts';

/** Lays out the landings to choose from in the lobby; what is chosen is asked of the table. `note` gets its refusal. */
export function chooseAtTable(link: TableLink, { plan }: TableView, note: (words: string) => void): void {
  openChoiceSheet(plan.choice, {
    ways: [
      {
        words: LOBBY.playThis,
        act: (choice) =>
          void link.choose?.(choice).then((answer) => {
            if (!answer.ok) note(answer.error.reason);
          }),
      },
    ],
    asksSeat: false,
    changed: () => undefined,
    dismissed: () => undefined,
    addressOf: (choice) => new URL(location.pathname + addressOf(choice), location.href).href,
  });
}
