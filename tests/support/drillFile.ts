import { readSource } from './sources.ts';

/** A drill as JSON, apart from the program's own list of drills: tests change it as they like. */
export function drillJson(file = 'quietAltimeter'): Record<string, unknown> {
  return JSON.parse(readSource(`levels/drills/${file}.json`)) as Record<string, unknown>;
}
