import { figure } from '../../engine/figures.ts';
import type { SimulatedStackUp, StackUp } from '../../engine/dispersion/index.ts';
import { drawnFigure } from './campaignRows.ts';

/** Stack-ups of a campaign: against the tip limit of the lander, and against the closed form. */
export interface CampaignStacks {
  readonly simulated: SimulatedStackUp | undefined;
  readonly feetTogether: StackUp | undefined;
}

/** For machines: a limit is null where nothing tips up to `upTo`. */
export function stackResults({ simulated, feetTogether }: CampaignStacks): Readonly<Record<string, unknown>> {
  return {
    simulated:
      simulated === undefined
        ? null
        : {
            ...simulated,
            nominalLimit: simulated.nominalLimit ?? null,
            worstLimit: simulated.worstLimit ?? null,
            worstMargin: simulated.worstMargin ?? null,
            rootSumSquare: simulated.rootSumSquare ?? null,
          },
    feetTogether:
      feetTogether === undefined ? null : { ...feetTogether, atWorstCorner: feetTogether.atWorstCorner ?? null },
  };
}

/** For people. */
export function stackLines({ simulated, feetTogether }: CampaignStacks): readonly string[] {
  return [...simulatedLines(simulated), ...closedFormLines(feetTogether)];
}

function simulatedLines(stack: SimulatedStackUp | undefined): readonly string[] {
  if (stack === undefined) return [];
  const { azimuths, nominalLimit, worstLimit, worstMargin, rootSumSquare, contributions, upTo } = stack;
  const limit = (value: number | undefined): string =>
    value === undefined ? `none up to ${figure(upTo, 2)} m/s` : `${figure(value, 3)} m/s`;
  const losses = contributions
    .filter(({ loss }) => loss > 0)
    .map(({ input, end, loss }) => `${input} ${drawnFigure(end)} costs ${figure(loss, 3)}`);
  return [
    `Stack-up by simulation, straight downhill, least of ${azimuths} azimuths, dispersions as three-deviation tolerances:`,
    `tip limit ${limit(nominalLimit)} at the medians, ${limit(worstLimit)} at the worst ends together; ${losses.join(', ') || 'no input alone costs any'}.`,
    `Less the speed (${figure(stack.speed, 3)} +- ${figure(stack.speedTolerance, 3)} m/s): root sum square ${marginWords(rootSumSquare)}, worst case ${marginWords(worstMargin)}.`,
  ];
}

function marginWords(margin: number | undefined): string {
  if (margin === undefined) return 'without limit';
  return margin > 0 ? `margin ${figure(margin, 3)} m/s` : `tips (${figure(margin, 3)} m/s)`;
}

function closedFormLines(stack: StackUp | undefined): readonly string[] {
  if (stack === undefined) return [];
  const { nominalMargin, worstCase, rootSumSquare, atWorstCorner } = stack;
  const corner = atWorstCorner === undefined ? 'no limit left' : `${figure(atWorstCorner, 3)} m/s`;
  return [
    `For comparison the closed form (feet together, rigid legs: no limit of this lander): margin ${figure(nominalMargin, 3)} m/s;`,
    `root sum square ${figure(rootSumSquare, 3)} m/s, worst case ${figure(worstCase, 3)} m/s (linear), ${corner} at the adverse corner.`,
  ];
}
