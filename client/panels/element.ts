import { CONTROLS, SCORECARD } from '../text/en.ts';

type Child = Node | string | undefined;

export interface Attributes {
  readonly [name: string]: string | number | boolean | undefined;
}

/** An HTML element with attributes and children; `true` stands for an empty attribute, `undefined` and `false` for none. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[Tag] {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    node.setAttribute(name, value === true ? '' : String(value));
  }
  node.append(...children.filter((child) => child !== undefined));
  return node;
}

/** A button that does one thing. */
export function button(words: string, act: () => void, attributes: Attributes = {}): HTMLButtonElement {
  const node = element('button', { type: 'button', ...attributes }, words);
  node.addEventListener('click', act);
  return node;
}

/** Presses a button as by hand; nothing where it is hidden or may not be pressed. */
export function pressIfShown(node: HTMLButtonElement): void {
  if (!node.hidden) node.click();
}

/** One entry of a description list: what it is, how much, and a small note. */
export function entry(label: string | HTMLElement, value: string | HTMLElement, note?: string): HTMLElement {
  const small = note === undefined ? undefined : element('small', {}, note);
  return element('div', {}, element('dt', {}, label), element('dd', {}, value, small));
}

/** The way back to the start page: short on the page, whole for readers of it. */
export function leaveButton(leave: () => void): HTMLButtonElement {
  return button(CONTROLS.leave, leave, { class: 'leave', 'aria-label': CONTROLS.leaveTable });
}

/** Starts another descent; with it, why it may not be pressed, shown where it may not. */
export function againButton(again: () => void): readonly [HTMLButtonElement, HTMLElement] {
  const hint = element('span', { class: 'hint', id: 'again-hint', hidden: true });
  return [button(SCORECARD.again, again, { class: 'primary again', 'aria-describedby': 'again-hint' }), hint];
}

/** Changes the words only when they differ, so that readers of the page are not told what they know. */
export function say(node: HTMLElement, words: string): void {
  if (node.textContent !== words) node.textContent = words;
}

/** Puts SVG markup made by our own pens into an element. */
export function drawing(markup: string, attributes: { viewBox: string; label?: string; class: string }): HTMLElement {
  const holder = element('div', { class: attributes.class });
  const name = attributes.label === undefined ? 'aria-hidden="true"' : 'role="img"';
  holder.innerHTML = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${attributes.viewBox}" ${name}>${markup}</svg>`;
  if (attributes.label !== undefined) holder.firstElementChild?.setAttribute('aria-label', attributes.label);
  return holder;
}
