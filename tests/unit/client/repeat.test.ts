import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { REPEAT, repeatWhileHeld } from '../../../client/controls/repeat.ts';

/** As much of a button as is needed: events, and whether it is there and answers. */
class PlainButton extends EventTarget {
  disabled = false;
  isConnected = true;
  hasPointerCapture(): boolean {
    return false;
  }
  tell(type: string, fields: Readonly<Record<string, unknown>> = {}): void {
    this.dispatchEvent(Object.assign(new Event(type, { cancelable: true }), FINGER, fields));
  }
}

const FINGER = { pointerId: 1, isPrimary: true, button: 0, detail: 1 };

let button: PlainButton;
let presses: number;
let page: EventTarget;

beforeEach(() => {
  vi.useFakeTimers();
  page = new EventTarget();
  vi.stubGlobal('addEventListener', page.addEventListener.bind(page));
  vi.stubGlobal('removeEventListener', page.removeEventListener.bind(page));
  button = new PlainButton();
  presses = 0;
  repeatWhileHeld(button as unknown as HTMLButtonElement, () => (presses += 1));
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Down and held until it has acted three times. */
function holdForThree(): void {
  button.tell('pointerdown');
  vi.advanceTimersByTime(REPEAT.afterMs + 2.5 * REPEAT.everyMs);
  expect(presses).toBe(3);
}

describe('a button that is held down', () => {
  it('acts again and again, and its end is no press of its own', () => {
    holdForThree();
    button.tell('pointerup');
    button.tell('click');
    vi.advanceTimersByTime(2000);
    expect(presses).toBe(3);
  });

  it('acts once when it is pressed shortly', () => {
    button.tell('pointerdown');
    vi.advanceTimersByTime(REPEAT.afterMs / 2);
    button.tell('pointerup');
    button.tell('click');
    vi.advanceTimersByTime(2000);
    expect(presses).toBe(1);
  });

  it.each(['pointerup', 'pointercancel', 'pointerleave'])('stops at %s', (end) => {
    holdForThree();
    button.tell(end);
    vi.advanceTimersByTime(2000);
    expect(presses).toBe(3);
  });

  it('stops when the window loses the keyboard, when it is shut, and when it is taken away', () => {
    holdForThree();
    page.dispatchEvent(new Event('blur'));
    vi.advanceTimersByTime(2000);
    expect(presses).toBe(3);
    for (const end of [{ disabled: true }, { isConnected: false }]) {
      presses = 0;
      Object.assign(button, { disabled: false, isConnected: true });
      holdForThree();
      Object.assign(button, end);
      vi.advanceTimersByTime(2000);
      expect(presses).toBe(3);
    }
  });

  it('heeds one finger, and the first button of a mouse', () => {
    button.tell('pointerdown', { pointerId: 2, isPrimary: false });
    button.tell('pointerdown', { pointerId: 3, button: 2 });
    vi.advanceTimersByTime(2000);
    expect(presses).toBe(0);
    holdForThree();
    // another finger comes and goes
    button.tell('pointerdown', { pointerId: 2 });
    button.tell('pointerup', { pointerId: 2 });
    vi.advanceTimersByTime(REPEAT.everyMs);
    expect(presses).toBe(4);
  });

  it('acts once for a press by keyboard, also after a hold that slid off', () => {
    button.tell('click', { detail: 0 });
    expect(presses).toBe(1);
    presses = 0;
    holdForThree();
    button.tell('pointerleave');
    button.tell('click', { detail: 0 });
    expect(presses).toBe(4);
  });

  it('brings up no menu meanwhile', () => {
    const menu = new Event('contextmenu', { cancelable: true });
    button.dispatchEvent(menu);
    expect(menu.defaultPrevented).toBe(false);
    button.tell('pointerdown');
    const held = new Event('contextmenu', { cancelable: true });
    button.dispatchEvent(held);
    expect(held.defaultPrevented).toBe(true);
  });
});
