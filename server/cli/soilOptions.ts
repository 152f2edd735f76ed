import type { Command } from 'commander';
import type { Soil } from '../../engine/ground/index.ts';
import { quantityParser, type Quantity } from './quantity.ts';
import { UsageError } from './usageError.ts';

/** Soil under the footpads: up to a bearing strength, or by Bekker's law. */
export interface SoilOptions {
  readonly soilStiffness?: number;
  readonly soilStrength?: number;
  readonly soilCohesive?: number;
  readonly soilFrictional?: number;
  readonly soilExponent?: number;
}

const STIFFNESS: Quantity = { unit: 'N/m', least: 1e3, most: 1e9 };
const STRENGTH: Quantity = { unit: 'Pa', least: 1, most: 1e9 };
const COHESIVE: Quantity = { unit: 'N/m^(n+1)', least: 0, most: 1e9 };
const FRICTIONAL: Quantity = { unit: 'N/m^(n+2)', least: 1, most: 1e10 };
const EXPONENT: Quantity = { unit: '', least: 0.2, most: 3 };

/** Sinkage in proportion to pressure, where nothing is said [-]. */
const DEFAULT_EXPONENT = 1;

export function addSoilOptions(command: Command): Command {
  return command
    .optionsGroup('Soil (rigid without any of these):')
    .option(
      '--soil-stiffness <N/m>',
      'elastic stiffness under one footpad, also of unloading; every soil needs it',
      quantityParser(STIFFNESS),
    )
    .option('--soil-strength <Pa>', 'bearing strength, beyond which a footpad sinks', quantityParser(STRENGTH))
    .option(
      '--soil-cohesive <k_c>',
      "in place of a strength, Bekker's law p = (k_c/b + k_phi) z^n: k_c [N/m^(n+1)]; b is the radius of the footpad",
      quantityParser(COHESIVE),
    )
    .option('--soil-frictional <k_phi>', 'k_phi of that law [N/m^(n+2)]', quantityParser(FRICTIONAL))
    .option('--soil-exponent <n>', `n of that law (default: ${DEFAULT_EXPONENT})`, quantityParser(EXPONENT));
}

export function readSoil(options: SoilOptions): Soil | undefined {
  const { soilStiffness: stiffness, soilStrength: strength } = options;
  const { soilCohesive: cohesive, soilFrictional: frictional, soilExponent: exponent } = options;
  const isBekker = cohesive !== undefined || frictional !== undefined || exponent !== undefined;
  if (stiffness === undefined && strength === undefined && !isBekker) return undefined;
  if (strength !== undefined && isBekker)
    throw new UsageError("expected --soil-strength or the three of Bekker's law, came both");
  if (isBekker) {
    if (stiffness === undefined || cohesive === undefined || frictional === undefined)
      throw new UsageError('expected --soil-stiffness, --soil-cohesive and --soil-frictional together');
    return { kind: 'bekker', cohesive, frictional, exponent: exponent ?? DEFAULT_EXPONENT, stiffness };
  }
  if (stiffness === undefined || strength === undefined)
    throw new UsageError('expected --soil-stiffness and --soil-strength together');
  return { kind: 'bearing', stiffness, strength };
}

/** The soil, whether asked for or that of the site; null where it does not enter. */
export function echoSoil(soil: Soil | undefined): Readonly<Record<string, unknown>> {
  const { stiffness, strength, cohesive, frictional, exponent } = { ...NO_SOIL, ...soil };
  return {
    soilStiffness: stiffness,
    soilStrength: strength,
    soilCohesive: cohesive,
    soilFrictional: frictional,
    soilExponent: exponent,
  };
}

const NO_SOIL = { stiffness: null, strength: null, cohesive: null, frictional: null, exponent: null };

/** Such as 'soil of 20000 Pa'; '' for rigid ground. */
export function describeSoil(soil: Soil | undefined): string {
  if (soil === undefined || soil.kind === 'rigid') return '';
  if (soil.kind === 'bearing') return `soil that bears ${soil.strength} Pa`;
  return `soil with k_c ${soil.cohesive}, k_phi ${soil.frictional}, n ${soil.exponent}`;
}
