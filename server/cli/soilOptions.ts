import type { Command } from 'commander';
import { CONDITION_FIELDS } from '../../engine/condition/index.ts';
import type { Soil } from '../../engine/ground/index.ts';
import { addField, type FieldOptions } from './fieldOptions.ts';
import { UsageError } from './usageError.ts';

/** Soil under the footpads: up to a bearing strength, or by Bekker's law. */
export type SoilOptions = FieldOptions<
  'soilStiffness' | 'soilStrength' | 'soilCohesive' | 'soilFrictional' | 'soilExponent'
>;

const DEFAULT_EXPONENT = CONDITION_FIELDS.soilExponent.fallback;

export function addSoilOptions(command: Command): Command {
  addField(command.optionsGroup('Soil (rigid without any of these):'), 'soilStiffness', {
    note: '; every soil needs it',
  });
  addField(command, 'soilStrength');
  addField(command, 'soilCohesive', {
    before: "in place of a strength, Bekker's law p = (k_c/b + k_phi) z^n: ",
    note: ' [N/m^(n+1)]; b is the radius of the footpad',
    symbol: 'k_c',
  });
  addField(command, 'soilFrictional', { note: ' of that law [N/m^(n+2)]', symbol: 'k_phi' });
  return addField(command, 'soilExponent', { note: ' of that law', symbol: 'n' });
}

export function readSoil(options: SoilOptions): Soil | undefined {
  const { soilStiffness: stiffness, soilStrength: strength } = options;
  const { soilCohesive: cohesive, soilFrictional: frictional, soilExponent: exponent } = options;
  const isBekker = cohesive !== undefined || frictional !== undefined || exponent !== undefined;
  if (stiffness === undefined && strength === undefined && !isBekker) return undefined;
  if (strength !== undefined && isBekker)
    throw new UsageError("expected --soil-strength or the three of Bekker's law, got both");
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
