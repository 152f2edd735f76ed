import { decimal } from '../text/numbers.ts';

/** Quantities as the workbench writes them: SI, as in the command line, whatever the table is set to. */
export const metersPerSecond = (value: number, digits = 2): string => `${decimal(value, digits)} m/s`;
export const degreesOf = (value: number, digits = 1): string => `${decimal(value, digits)}°`;
export const percent = (share: number, digits = 0): string => `${decimal(100 * share, digits)} %`;

/** A figure with as many digits as tell it apart, and its unit; '-' is none. */
export function quantity(value: number, unit: string): string {
  const size = Math.abs(value);
  const digits = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
  return `${decimal(value, digits)}${unit === '-' ? '' : ` ${unit}`}`;
}
