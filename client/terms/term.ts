import { element } from '../panels/element.ts';
import type { Term } from '../text/glossary.ts';
import { listenForTerms } from './termNote.ts';

/** A word that says what it is when somebody points at it, comes to it by keyboard or presses it; `words` as it reads here. */
export function term(name: Term, words: string = name): HTMLElement {
  return explained(element('button', { type: 'button', class: 'term' }, words), name);
}

/** A sentence in which a word is a term; `words` as it reads there. */
export function termed(sentence: string, name: Term, words: string = name): readonly (HTMLElement | string)[] {
  const at = sentence.indexOf(words);
  if (at < 0) throw new Error(`“${sentence}” has no “${words}”`);
  return [sentence.slice(0, at), term(name, words), sentence.slice(at + words.length)];
}

/** The terms of a card whose own words come and go, in a line of their own. */
export function termLine(...names: readonly Term[]): HTMLElement {
  const words = names.flatMap((name, i) => (i === 0 ? [term(name)] : [' · ', term(name)]));
  return element('p', { class: 'term-line' }, ...words);
}

/** Something that is pressed for what it does, and is a term besides: pointed at, or come to by keyboard, it says what it is. */
export function explained<Node extends HTMLElement>(node: Node, name: Term): Node {
  listenForTerms();
  node.dataset['term'] = name;
  return node;
}
