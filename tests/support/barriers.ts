import type { Page } from 'playwright';
import { violations } from './audit.ts';
import { keyboardFaults } from './keyboardWalk.ts';

/** Whatever keeps somebody out who goes by keyboard or by reader: rules that are broken, controls that are not reached, and what is told twice. */
export async function barriers(page: Page): Promise<readonly string[]> {
  return [...(await violations(page)), ...(await page.evaluate(toldTwice)), ...(await keyboardFaults(page))];
}

/** Runs in the page. What breaks into the words of a reader has one place, and what is new is told in one. */
function toldTwice(): readonly string[] {
  const live = [...document.querySelectorAll<HTMLElement>('[role="status"], [role="alert"], [aria-live]')].filter(
    (node) => node.checkVisibility(),
  );
  const breaking = live.filter((node) => node.matches('[role="alert"], [aria-live="assertive"]'));
  const words = live.map(({ textContent }) => textContent?.trim() ?? '').filter((told) => told !== '');
  return [
    ...(breaking.length > 1 ? [`${breaking.length} places break into what is read`] : []),
    ...words.filter((told, i) => words.indexOf(told) !== i).map((told) => `told twice: ${told}`),
  ];
}
