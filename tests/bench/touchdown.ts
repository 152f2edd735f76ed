import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { DEFAULT_STEP, prepareTouchdown, runTouchdown, type TouchdownKernel } from '../../engine/touchdown/index.ts';
import { advance } from '../../engine/touchdown/advance.ts';
import { BODY_SIZE, FOUND_CONTACTS, FOOT_SIZE } from '../../engine/touchdown/layout.ts';
import { drawArrivals } from '../convergence/touchdown/stepStudy.ts';
import { FOUR_FOOTED, fourFootedThere, squareKernel, USUAL_STEP } from '../support/fourFootedBody.ts';
import { loadMujocoEngine } from '../support/mujocoBlock.ts';
import type { MujocoFourFooted } from '../support/MujocoFourFooted.ts';
import { MOON, plane, shippedLander } from '../support/touchDown.ts';
import { nanosecondsPerCall, type BenchRow } from './row.ts';

const ARRIVAL = { vx: 1, vz: -1.5, rate: 0 } as const;
const FRICTION = 0.8;
const SLOPE = 0.1;
/** Of the legs [N/m]: such that the bound on stiffness leaves the wanted step alone. */
const SOFT = 4e5;
/** Length of the touchdown in both [s]; here it may end earlier, when the body is at rest. */
const SECONDS = 4;

/** Touchdowns a second against a general-purpose 3-D engine, and the hot loop against its twin in C where there is a compiler. */
export async function benchTouchdown(): Promise<readonly BenchRow[]> {
  const mujoco = await loadMujocoEngine();
  const fine = DEFAULT_STEP / 2;
  const rate = (step: number): { here: number; there: number } => ({
    here: 1e9 / nanosecondsHere(step),
    there: 1e9 / nanosecondsThere(mujoco, step),
  });
  const [same, usual] = [rate(fine), rate(USUAL_STEP)];
  return [
    row(`four-footed touchdown at a step of ${(1000 * fine).toPrecision(3)} ms`, 'touchdowns/s', same.here, {
      reference: 'general-purpose 3-D engine, same step',
      referenceValue: same.there,
    }),
    row('the same at the default step', 'touchdowns/s', 1e9 / nanosecondsHere(DEFAULT_STEP), {
      reference: `general-purpose 3-D engine, its usual ${1000 * USUAL_STEP} ms`,
      referenceValue: usual.there,
    }),
    ...standingRows(mujoco),
    ...twinRows(),
    randomRow(),
  ];
}

function row(
  measure: string,
  unit: string,
  value: number,
  against: Pick<BenchRow, 'reference' | 'referenceValue'>,
): BenchRow {
  return { measure, unit, value, ...against };
}

function kernelOf(step: number): TouchdownKernel {
  const kernel = squareKernel(FOUR_FOOTED, SOFT);
  const used = touch(kernel, step).step;
  if (Math.abs(used / step - 1) > 1e-9) throw new Error(`The bench asked for a step of ${step} s and got ${used} s.`);
  return kernel;
}

function touch(kernel: TouchdownKernel, step: number): ReturnType<typeof runTouchdown> {
  const state = {
    horizontalSpeed: ARRIVAL.vx * Math.cos(SLOPE),
    descentRate: -ARRIVAL.vz,
    pitch: SLOPE,
  };
  const conditions = { gravity: MOON, ground: plane(FRICTION, SLOPE), state };
  return runTouchdown(kernel, conditions, { step, timeLimit: SECONDS, stopWhenDecided: false });
}

/** One touchdown here [ns]. */
function nanosecondsHere(step: number): number {
  const kernel = kernelOf(step);
  return nanosecondsPerCall(() => touch(kernel, step), { calls: 100, batches: 5 });
}

function other(mujoco: Awaited<ReturnType<typeof loadMujocoEngine>>, step: number): MujocoFourFooted {
  const contact = [0.02, 1] as const;
  return fourFootedThere(mujoco, { friction: FRICTION, gravity: MOON, slope: SLOPE, step, contact });
}

/** One touchdown there [ns]. */
function nanosecondsThere(mujoco: Awaited<ReturnType<typeof loadMujocoEngine>>, step: number): number {
  const there = other(mujoco, step);
  const steps = Math.round(SECONDS / step);
  const taken = nanosecondsPerCall(
    () => {
      there.start(ARRIVAL);
      for (let i = 0; i < steps; i++) there.step();
    },
    { calls: 5, batches: 4 },
  );
  there.delete();
  return taken;
}

/** A step of the body standing on its four feet. */
function standingRows(mujoco: Awaited<ReturnType<typeof loadMujocoEngine>>): readonly BenchRow[] {
  const kernel = kernelOf(DEFAULT_STEP);
  touch(kernel, DEFAULT_STEP);
  const here = nanosecondsPerCall(() => advance(kernel, 8), { calls: 10_000, batches: 5 }) / 8;
  if (kernel.found[FOUND_CONTACTS] !== 4) throw new Error('The body of the bench does not stand.');
  const there = other(mujoco, USUAL_STEP);
  there.start({ vx: 0, vz: 0, rate: 0 });
  const step = nanosecondsPerCall(() => there.step(), { calls: 5000, batches: 5 });
  there.delete();
  return [
    row('one step on four feet', 'ns', here, {
      reference: 'one step of the general-purpose 3-D engine',
      referenceValue: step,
    }),
  ];
}

/** The same steps in C, when there is a compiler; the states have to agree. */
function twinRows(): readonly BenchRow[] {
  const folder = mkdtempSync(path.join(tmpdir(), 'kilter-twin-'));
  try {
    const program = path.join(folder, 'twin');
    const source = path.join(import.meta.dirname, 'touchdown.c');
    const built = spawnSync('cc', ['-O2', '-ffp-contract=off', '-o', program, source, '-lm']);
    if (built.status !== 0) return [];
    const kernel = kernelOf(DEFAULT_STEP);
    touch(kernel, DEFAULT_STEP);
    const steps = 80_000;
    const input = Buffer.concat(
      [kernel.body, kernel.feet.subarray(0, kernel.feetEnd), kernel.run].map((array) =>
        Buffer.from(array.slice().buffer),
      ),
    );
    const args = [steps, kernel.feetEnd, FOOT_SIZE, 5].map(String);
    const ran = spawnSync(program, args, { input, maxBuffer: 1 << 20 });
    if (ran.status !== 0) throw new Error(`The twin in C ended with ${ran.status}.`);
    const answer = new Float64Array(new Uint8Array(ran.stdout).buffer);
    const here = nanosecondsPerCall(() => advance(kernel, 8), { calls: steps / 8, batches: 1 }) / 8;
    // the warm-up batch is what the twin has done too: compare after the same number of steps
    const again = kernelOf(DEFAULT_STEP);
    touch(again, DEFAULT_STEP);
    for (let done = 0; done < steps; done += 8) advance(again, 8);
    for (let i = 0; i < 10; i++) {
      if (again.body[i] !== answer[i]) throw new Error('The twin in C came to another state.');
    }
    return [
      row('one step on four feet', 'ns', here, {
        reference: 'its twin in C, -O2',
        referenceValue: answer[BODY_SIZE]!,
      }),
    ];
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Whole touchdowns of Trivet from random arrivals, crushing legs and verdict included. */
function randomRow(): BenchRow {
  const prepared = prepareTouchdown(shippedLander('trivet'));
  if (!prepared.ok) throw new Error(JSON.stringify(prepared.error));
  const arrivals = drawArrivals(300, 3);
  let next = 0;
  let computed = 0;
  const taken = nanosecondsPerCall(
    () => {
      computed += runTouchdown(prepared.value, arrivals[next]!).steps;
      next = (next + 1) % arrivals.length;
    },
    { calls: arrivals.length, batches: 5 },
  );
  const steps = computed / (arrivals.length * 6);
  return row('random touchdown of Trivet', 'touchdowns/s', 1e9 / taken, {
    reference: `steps a second, ${steps.toFixed(0)} steps a touchdown`,
    referenceValue: (1e9 / taken) * steps,
  });
}
