import { GATE } from '../../engine/estimate/index.ts';
import { TICK_RATE } from '../../engine/world/index.ts';

/** What a strip shows: the last half minute [tick]. */
const SPAN = 30 * TICK_RATE;
/** Height of the strip's edge over its middle [standard deviations]: half of it is inside the gate. */
const REACH = 2 * GATE;
/** Of the strip's drawing; its units are its own. */
export const STRIP = { width: 150, height: 26 } as const;

interface Sample {
  readonly tick: number;
  /** [standard deviations]; absent while the source is not weighed. */
  readonly value: number | undefined;
}

/** What one source disagreed by, kept from view to view for as long as a strip shows. */
export class DisagreementHistory {
  #samples: Sample[] = [];

  /** Once a view; an earlier tick than the last begins another descent. */
  take(tick: number, value: number | undefined): void {
    const last = this.#samples.at(-1);
    if (last !== undefined && tick < last.tick) this.#samples = [];
    if (last?.tick === tick) this.#samples.pop();
    this.#samples.push({ tick, value });
    // one from before the strip's edge stays: the line comes in from there
    while ((this.#samples[1]?.tick ?? tick) <= tick - SPAN) this.#samples.shift();
  }

  /** The lines of the strip as points of polylines, newest at the right edge; broken where there was nothing to weigh. */
  lines(): readonly string[] {
    const now = this.#samples.at(-1)?.tick ?? 0;
    const lines: string[][] = [[]];
    for (const { tick, value } of this.#samples) {
      if (value === undefined) lines.push([]);
      else lines.at(-1)?.push(`${short(acrossStrip(tick - now))},${short(heightOnStrip(value))}`);
    }
    return lines.filter((line) => line.length > 0).map((line) => line.join(' '));
  }
}

/** Where on the strip a moment stands that is so many ticks from now (not later). */
function acrossStrip(ticksFromNow: number): number {
  return STRIP.width * (1 + ticksFromNow / SPAN);
}

/** Where on the strip a disagreement stands, positive up; beyond the edge it runs along it. */
export function heightOnStrip(value: number): number {
  const share = Math.max(-1, Math.min(1, value / REACH));
  return (STRIP.height / 2) * (1 - share);
}

function short(value: number): string {
  return String(Math.round(value * 10) / 10);
}
