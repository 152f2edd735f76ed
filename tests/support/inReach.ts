import type { Locator, Page } from 'playwright';

/** Windows in which the pages are looked at: two screens, a small and a zoomed window, a phone without and with its bars, and two narrow ones. */
export const SIZES = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
  { width: 800, height: 600 },
  { width: 640, height: 360 },
  { width: 390, height: 844 },
  { width: 390, height: 664 },
  { width: 360, height: 640 },
  { width: 320, height: 568 },
] as const;

/** Whether the middle of the element is what a press there would meet, as it is shown now, with nothing scrolled. */
export function isInReach(locator: Locator): Promise<boolean> {
  return locator.evaluate((node) => {
    const box = node.getBoundingClientRect();
    const isInside = box.top >= 0 && box.left >= 0 && box.right <= innerWidth && box.bottom <= innerHeight;
    const met = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    return isInside && node.contains(met);
  });
}

/** The words of the caution that are in reach at once, whichever element of the page carries them. */
export async function cautionInReach(page: Page): Promise<boolean> {
  const lines = await page.getByText('Not for operational decisions.').all();
  const reached = await Promise.all(lines.map(isInReach));
  return reached.some(Boolean);
}

/** Goes through the sizes and lists those at which the check fails. */
export async function failingSizes(
  page: Page,
  check: () => Promise<boolean>,
  sizes: readonly { readonly width: number; readonly height: number }[] = SIZES,
): Promise<readonly string[]> {
  const failing: string[] = [];
  for (const size of sizes) {
    await page.setViewportSize(size);
    await page.waitForTimeout(250);
    if (!(await check())) failing.push(`${size.width}x${size.height}`);
  }
  return failing;
}

/** The sizes at which the caution or the main action cannot be seen and pressed at once. */
export function outOfReach(page: Page, action: Locator): Promise<readonly string[]> {
  return failingSizes(page, async () => (await cautionInReach(page)) && isInReach(action));
}
