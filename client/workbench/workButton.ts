import { button } from '../panels/element.ts';

interface WorkButton {
  readonly node: HTMLButtonElement;
  /** The work has ended, or is dropped. */
  rest(): void;
}

/** Begins long work, and stops it. */
export function workButton(
  words: { readonly work: string; readonly stop: string },
  acts: { readonly work: () => void; readonly stop: () => void },
): WorkButton {
  let isWorking = false;
  const turn = (now: boolean) => {
    isWorking = now;
    node.textContent = now ? words.stop : words.work;
  };
  const node = button(words.work, () => {
    if (isWorking) acts.stop();
    else acts.work();
    turn(!isWorking);
  });
  return { node, rest: () => turn(false) };
}
