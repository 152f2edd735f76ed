import { checkNetwork, type NetworkCheck, type Outcome } from '../net/checkNetwork.ts';
import { NETWORK } from '../text/network.ts';
import { button, element } from './element.ts';
import { exerciseLine } from './titleBlock.ts';
import '../styles/logbook.css';
import '../styles/network.css';

/** Lays a page in place of the start page that says what the network lets through. */
export function layNetwork(holder: HTMLElement, leave: () => void): { end(): void } {
  document.title = NETWORK.documentTitle;
  const verdict = element('p', { class: 'network-verdict', role: 'status' });
  const rows = element('dl');
  const again = button(NETWORK.again, () => void check());
  let isEnded = false;
  const check = async () => {
    again.disabled = true;
    verdict.textContent = NETWORK.checking;
    rows.replaceChildren();
    const found = await checkNetwork(new URL('.', location.href).href);
    if (isEnded) return;
    verdict.textContent = verdictOf(found);
    rows.replaceChildren(
      ...rowOf(NETWORK.request, found.request),
      ...(found.request.ok ? rowOf(NETWORK.line, found.line) : []),
      ...(found.request.ok ? rowOf(NETWORK.requestLine, found.requestLine) : []),
    );
    again.disabled = false;
  };
  const heading = element('h1', { tabindex: -1 }, NETWORK.title);
  const lead = element('p', { class: 'why' }, NETWORK.lead);
  holder.replaceChildren(
    element(
      'div',
      { class: 'logbook' },
      element('header', { class: 'logbook-head' }, button(NETWORK.back, leave)),
      element('main', { class: 'logbook-main network' }, heading, lead, verdict, rows, again),
      element('footer', { class: 'logbook-foot' }, exerciseLine()),
    ),
  );
  heading.focus();
  void check();
  return { end: () => void (isEnded = true) };
}

function verdictOf({ request, line, requestLine }: NetworkCheck): string {
  if (!request.ok) return NETWORK.noServer;
  if (line.ok) return NETWORK.allWell;
  return requestLine.ok ? NETWORK.byRequests : NETWORK.noLine;
}

function rowOf(what: string, outcome: Outcome): readonly HTMLElement[] {
  const words = outcome.ok ? NETWORK.works(Math.round(outcome.tookMs)) : NETWORK.blocked;
  return [element('dt', {}, what), element('dd', {}, words)];
}
