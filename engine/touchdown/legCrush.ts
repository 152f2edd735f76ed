import type { CrushStage } from '../lander/lander.ts';

/**
 * Irreversible crush of a leg in stages, as scalars along its axis.
 *
 * Rate-free plasticity with return mapping: take the axial load that elasticity alone would give (the trial load); where
 * it exceeds what the present stage bears, shorten the leg for good until the load is back on that stage's force. The
 * force never depends on speed or time step, and the work done on the leg is force times shortening, so energy is only
 * lost. Standard one-dimensional perfect plasticity, stage by stage; common practice for honeycomb absorbers.
 *
 * Knows nothing of frames: the caller says what its trial load is and how fast that load falls as the leg shortens.
 */
export interface CrushLaw {
  /** In the order in which they crush. Forces do not decrease; strokes are positive. */
  readonly stages: readonly CrushStage[];
  /** Axial stiffness before a stage crushes and on unloading [N/m]. */
  readonly stiffness: number;
  /** Stiffness of what is left once every stage is used up [N/m]. */
  readonly bottomedStiffness: number;
}

/** Sum of the strokes of all stages [m]. */
export function totalStroke(law: CrushLaw): number {
  let total = 0;
  for (const stage of law.stages) total += stage.stroke;
  return total;
}

/** Index of the stage that crushes next after a crushed length [m]; stages.length once all are used up. */
export function stageAt(law: CrushLaw, crushed: number): number {
  let end = 0;
  for (let i = 0; i < law.stages.length; i++) {
    end += law.stages[i]?.stroke ?? 0;
    if (crushed < end) return i;
  }
  return law.stages.length;
}

/** Axial load at which the leg shortens further [N]; Infinity once all stages are used up. */
export function yieldForce(law: CrushLaw, crushed: number): number {
  return law.stages[stageAt(law, crushed)]?.force ?? Infinity;
}

/**
 * Crushed length after a trial load has been returned to what the stages bear [m].
 *
 *   crushed' = crushed + (trial − F) / k,  stage by stage                return mapping
 *
 * trial  axial load if nothing more crushed [N]        F  force of the present stage [N]
 * k      by how much the load falls for each meter the leg shortens [N/m], positive; the axial stiffness of the leg
 *        where only the leg is elastic
 *
 * Never shrinks. Equals the total stroke, to the bit, once the leg has bottomed.
 */
export function crushedAfter(law: CrushLaw, crushed: number, trial: number, k: number): number {
  let length = crushed;
  let load = trial;
  let end = 0;
  for (const stage of law.stages) {
    end += stage.stroke;
    if (length >= end) continue;
    if (load <= stage.force) return length;
    const needed = (load - stage.force) / k;
    if (length + needed < end) return length + needed;
    load -= k * (end - length);
    length = end;
  }
  return length;
}

/**
 * Elastic force of a leg shortened by `compression` beyond its crushed length [N]; 0 when it is not compressed.
 *
 * While a stage is left: k·x. Bottomed: k·x up to the last stage's force, and from there with the bottomed stiffness.
 * A function of x alone, so loading and unloading follow one line and no energy is made or lost.
 */
export function elasticForce(law: CrushLaw, isBottomed: boolean, compression: number): number {
  if (compression <= 0) return 0;
  const soft = law.stiffness * compression;
  const last = law.stages[law.stages.length - 1]?.force ?? 0;
  if (!isBottomed || soft <= last) return soft;
  return last + law.bottomedStiffness * (compression - last / law.stiffness);
}
