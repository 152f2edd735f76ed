import type { Command } from 'commander';
import { landerShape } from '../../engine/checks/index.ts';
import type { Lander } from '../../engine/lander/index.ts';
import { ASSUMED_DESCENT, ASSUMED_SPEED, DEFAULT_FRICTION, type StudyCase } from '../../engine/study/index.ts';
import { namePlace, readCondition } from './condition.ts';
import { addField, DOWNHILL, sayField, type FieldOptions } from './fieldOptions.ts';
import { checkLegNumbers } from './gearOptions.ts';
import { legNumbersParser } from './quantity.ts';
import { missingIndices, nameLander } from './subject.ts';
import { addWorldOptions, worldOf, type WorldOptions } from './worldOptions.ts';

/** One upright arrival that a study asks about. */
export interface StudyOptions
  extends WorldOptions, FieldOptions<'slopeDeg' | 'descentRate' | 'horizontalSpeed' | 'friction'> {
  readonly missing?: readonly number[];
}

export function addStudyOptions(command: Command): Command {
  addWorldOptions(command).optionsGroup('Arrival:');
  addField(command, 'slopeDeg', { note: ', in the direction of travel', within: { least: 0, most: 45 } });
  addField(command, 'descentRate', { otherwise: `default: ${ASSUMED_DESCENT}`, within: { least: 0, most: 12 } });
  addField(command, 'horizontalSpeed', {
    note: DOWNHILL,
    otherwise: `default: ${ASSUMED_SPEED}`,
    within: { least: -12, most: 12 },
  });
  addField(command, 'friction', { otherwise: `default: ${DEFAULT_FRICTION}`, within: { least: 0, most: 3 } });
  return command.option(
    '--missing <legs>',
    'numbers of legs that are gone, such as 2 or 1,3; legs count from 1 in the order of the file',
    legNumbersParser,
  );
}

export function readStudy(lander: Lander, options: StudyOptions): StudyCase {
  const { slope = 0, descent = ASSUMED_DESCENT, horizontal = ASSUMED_SPEED, friction = DEFAULT_FRICTION } = options;
  const { missing = [] } = options;
  checkLegNumbers('--missing', lander, missing);
  return {
    lander,
    gravity: readCondition(worldOf(options), 'lander').gravity,
    slopeDeg: slope,
    descentRate: descent,
    horizontalSpeed: horizontal,
    friction,
    missing: missingIndices(missing),
  };
}

/** What was asked, defaults filled in. */
export function echoStudy(options: StudyOptions, asked: StudyCase): Readonly<Record<string, unknown>> {
  const { gravity, slopeDeg, descentRate, horizontalSpeed, friction } = asked;
  const world = options.gravity === undefined ? (options.world?.toLowerCase() ?? 'moon') : null;
  return { world, gravity, slopeDeg, descentRate, horizontalSpeed, friction, missing: options.missing ?? [] };
}

/** 'Trivet without leg 2 on the Moon: slope 5 deg, descent rate 1 m/s, horizontal speed 0.6 m/s, friction 0.8'. */
export function studyWords(options: StudyOptions, asked: StudyCase): string {
  const fields = (['slopeDeg', 'descentRate', 'horizontalSpeed', 'friction'] as const).map((name) =>
    sayField(name, asked[name]),
  );
  return `${nameLander(asked.lander, options.missing ?? [])} ${namePlace(worldOf(options))}: ${fields.join(', ')}`;
}

/** What the checked range of the simulation looks at in a study. */
export function rangedStudy({ lander, missing, ...asked }: StudyCase): Readonly<Record<string, unknown>> {
  return { ...asked, ...landerShape(lander, missing), missing: missing.map((leg) => leg + 1) };
}
