import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import type { Page } from 'playwright';

const SOURCE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What WCAG 2.2 asks at levels A and AA as far as a program can tell, and what its authors advise besides. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

declare const window: { readonly axe?: typeof axe };

/** What of the page as it is shown now breaks an accessibility rule, in words; no rule is left out. */
export async function violations(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate(() => window.axe !== undefined))) await page.evaluate(SOURCE);
  const { looked, broken } = await page.evaluate(audit, TAGS);
  if (looked === 0) throw new Error('No rule found anything to look at');
  return broken;
}

/** Runs in the page. What is pressed may be cut where the page scrolls below something that stays: its size counts where it is whole. */
async function audit(tags: string[]): Promise<{ readonly looked: number; readonly broken: readonly string[] }> {
  const { axe } = window;
  if (axe === undefined) throw new Error('The audit is not loaded');
  const found = await axe.run({ runOnly: { type: 'tag', values: tags }, resultTypes: ['violations'] });
  const broken: string[] = [];
  for (const { id, nodes } of found.violations)
    for (const { target, failureSummary = '' } of nodes) {
      const selector = String(target[0]);
      const node = id === 'target-size' ? document.querySelector(selector) : null;
      if (node !== null) {
        node.scrollIntoView({ block: 'center' });
        const again = await axe.run(node, { runOnly: { type: 'rule', values: [id] } });
        if (again.violations.length === 0) continue;
      }
      broken.push(`${id}: ${selector} ${failureSummary}`);
    }
  return { looked: found.passes.length, broken };
}
