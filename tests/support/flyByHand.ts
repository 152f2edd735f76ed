import type { Page } from 'playwright';

/**
 * A pilot for tests: reads what the screen says and presses the keys a person would, so that it needs nothing of the page
 * but what is shown.
 */
interface PilotPlan {
  /** Drift to hold until low, to the right [m/s]. 0 nulls it. */
  readonly drift: number;
  /** The key for more thrust, where it is not the arrow. */
  readonly more?: string;
}

interface Seen {
  readonly height: number;
  readonly descentRate: number;
  /** Positive to the right [m/s]. */
  readonly drift: number;
  readonly thrustPercent: number;
  /** Positive to the left [deg]. */
  readonly tiltDeg: number;
}

/** Steps of one key press, as the controls have them. */
const THRUST_STEP = 5;
const TILT_STEP = 2;
/** Thrust that holds Trivet on the Moon, about [%]. */
const HOVER_PERCENT = 35;
const UPRIGHT_BELOW = 6;
const ENGINE_OFF_BELOW = 0.15;

/** Flies until the scorecard lies on the table. */
export async function flyByHand(page: Page, plan: PilotPlan): Promise<void> {
  const deadline = Date.now() + 100_000;
  const scorecard = page.getByRole('region', { name: 'Scorecard' });
  let isDown = false;
  while (!(await scorecard.isVisible())) {
    if (Date.now() > deadline) throw new Error('No scorecard after 100 s of flying');
    const seen = await look(page);
    // whoever has landed leaves the engine off, whatever the lander does then
    isDown ||= seen !== undefined && seen.height < ENGINE_OFF_BELOW;
    if (seen !== undefined) await (isDown ? shutDown(page, seen) : act(page, seen, plan));
    await page.waitForTimeout(100);
  }
}

async function shutDown(page: Page, { thrustPercent }: Seen): Promise<void> {
  if (thrustPercent > 0) await page.keyboard.press('x');
}

async function act(page: Page, seen: Seen, plan: PilotPlan): Promise<void> {
  const wantedRate = Math.min(4.5, 0.8 + 0.09 * seen.height);
  const thrust = HOVER_PERCENT + 18 * (seen.descentRate - wantedRate);
  const excess = seen.drift - plan.drift;
  const tilt = seen.height < UPRIGHT_BELOW ? 0 : Math.max(-14, Math.min(14, 7 * excess));
  await press(page, (thrust - seen.thrustPercent) / THRUST_STEP, plan.more ?? 'ArrowUp', 'ArrowDown');
  await press(page, (tilt - seen.tiltDeg) / TILT_STEP, 'ArrowLeft', 'ArrowRight');
}

async function press(page: Page, steps: number, more: string, less: string): Promise<void> {
  const count = Math.min(6, Math.round(Math.abs(steps)));
  for (let i = 0; i < count; i++) await page.keyboard.press(steps > 0 ? more : less);
}

/** One reading of the own card, as a number. */
export async function readReading(page: Page, name: string): Promise<number> {
  const row = page.locator('.own-card .readings > div', { has: page.getByText(name, { exact: true }) });
  return numberIn(await row.locator('dd').innerText());
}

/** Everything the pilot needs, read in one go from the cards and the controls. */
async function look(page: Page): Promise<Seen | undefined> {
  const texts = await page.evaluate(() => {
    const readings: Record<string, string> = {};
    for (const row of document.querySelectorAll('.own-card .readings > div')) {
      readings[row.querySelector('dt')?.textContent ?? ''] = row.querySelector('dd')?.textContent ?? '';
    }
    const controls = Array.from(document.querySelectorAll('.control-value'), (value) => value.textContent ?? '');
    return { readings, controls };
  });
  const { height, drift } = texts.readings;
  const descentRate = texts.readings['descent rate'];
  const [thrust, tilt] = texts.controls;
  if (height === undefined) return undefined;
  return {
    height: quantityIn(height),
    // a seat that is not shown one of these does not hold the control that needs it
    descentRate: quantityIn(descentRate ?? ''),
    drift: quantityIn(drift ?? '') * (drift?.includes('←') === true ? -1 : 1),
    thrustPercent: numberIn(thrust ?? ''),
    tiltDeg: numberIn(tilt ?? '') * (tilt?.includes('right') === true ? -1 : 1),
  };
}

/** The first number of a text in SI; the page may show feet. */
function quantityIn(text: string): number {
  return numberIn(text) * (/\bft\b/.test(text) ? 0.3048 : 1);
}

/** The first number of a text; 0 where there is none, as in 'upright'. The sheet writes minus as a dash of its own. */
function numberIn(text: string): number {
  const match = /[-−]?\d+(?:\.\d+)?/.exec(text);
  return match === null ? 0 : Number(match[0].replace('−', '-'));
}
