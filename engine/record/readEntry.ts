import { readChoice, readFields, readKind, readText, type ProblemList } from '../fieldReader.ts';
import { ROLES, type EntryContent } from '../table/index.ts';
import { COMMAND_KINDS, readCommand } from './readCommand.ts';

const NAME = { least: 1, most: 24, pattern: /\S/, words: 'a name' };

/** What happens to a member, without more to it than that. */
const BARE = ['dropped', 'returned', 'left', 'interrupted'] as const;

const KINDS = ['joined', ...BARE, ...COMMAND_KINDS] as const satisfies readonly EntryContent['kind'][];

/** What stands in an entry, strictly. */
export function readContent(list: ProblemList, value: unknown, path: string): EntryContent | undefined {
  const kind = readKind(list, value, path, KINDS);
  if (kind === undefined) return undefined;
  if (kind === 'joined') {
    const fields = readFields(list, value, path, ['kind', 'name', 'role']);
    const name = readText(list, fields?.name, `${path}.name`, NAME);
    const role = readChoice(list, fields?.role, `${path}.role`, ROLES);
    return name === undefined || role === undefined ? undefined : { kind, name, role };
  }
  const happening = BARE.find((bare) => bare === kind);
  if (happening === undefined) return readCommand(list, value, path);
  return readFields(list, value, path, ['kind']) === undefined ? undefined : { kind: happening };
}
