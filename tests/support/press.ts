import type { Page } from 'playwright';

/** Presses a button by keyboard: on a busy machine a moving page gives a mouse no place to press. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  await page
    .getByRole('button', { name, exact: typeof name === 'string' })
    .first()
    .press('Enter');
}
