import { Argument } from 'commander';
import { formatTableCode } from '../../engine/table/index.ts';
import { parseConfig } from '../config.ts';
import { openRecordShelf, type RecordShelf, type ShelvedRecord } from '../storage/index.ts';
import type { DefineVerb } from './program.ts';
import type { Report } from './report.ts';
import { textTable } from './textTable.ts';
import { oneLine, UsageError } from './usageError.ts';
import { writeFile } from './writeFile.ts';

const ACTIONS = ['list', 'keep', 'unkeep', 'delete', 'export'] as const;
type Action = (typeof ACTIONS)[number];

interface RecordsOptions {
  readonly records?: string;
  readonly out?: string;
}

export const defineRecords: DefineVerb = (command, deliver) => {
  command
    .description(
      'The records that a server keeps, also while it runs: list them; keep one so that it does not expire, or unkeep it; delete one now, with its names; ' +
        'export one as JSON Lines, which `kilter replay` plays again. A record is named by the code of its table, such as HKTVRQ, or by its id.',
    )
    .addArgument(new Argument('[action]', 'what to do').choices(ACTIONS).default('list'))
    .argument('[record]', 'code of a table, or id of a record')
    .option('--records <folder>', 'folder of the records; by default that of the server')
    .option('--out <file>', 'where to export to')
    .addHelpText('after', '\nExamples:\n  kilter records\n  kilter records list --json')
    .action((action: Action, name: string | undefined, options: RecordsOptions) => {
      deliver(withShelf(folderOf(options), (shelf) => act(shelf, action, { name, out: options.out })));
    });
};

function folderOf({ records }: RecordsOptions): string {
  const config = parseConfig(records === undefined ? process.env : { KILTER_RECORDS: records });
  if (!config.ok) throw new UsageError(config.error.join('; '));
  const { recordsFolder } = config.value;
  if (recordsFolder === undefined) throw new UsageError('KILTER_RECORDS is none: no records are kept');
  return recordsFolder;
}

function withShelf(folder: string, use: (shelf: RecordShelf | undefined) => Report): Report {
  let shelf: RecordShelf | undefined;
  try {
    shelf = openRecordShelf(folder);
    return use(shelf);
  } catch (error) {
    if (error instanceof UsageError) throw error;
    throw new UsageError(`the records in '${oneLine(folder, 200)}': ${error instanceof Error ? error.message : 'no'}`);
  } finally {
    shelf?.close();
  }
}

interface Asked {
  readonly name: string | undefined;
  readonly out: string | undefined;
}

function act(shelf: RecordShelf | undefined, action: Action, { name, out }: Asked): Report {
  if (action === 'list') return listReport(shelf?.list() ?? []);
  if (name === undefined) throw new UsageError(`expected the code of a table, or the id of a record, to ${action}`);
  if ((out !== undefined) !== (action === 'export'))
    throw new UsageError('expected --out with export, and with nothing else');
  if (shelf === undefined) throw new UsageError('no records are kept there yet');
  const found = find(shelf.list(), name);
  return {
    verb: 'records',
    inputs: { action, record: name },
    results: { id: found.id, code: found.code },
    text: carryOut(shelf, action, found, out),
  };
}

function carryOut(shelf: RecordShelf, action: Exclude<Action, 'list'>, found: ShelvedRecord, out = ''): string {
  const { id } = found;
  const shown = `${formatTableCode(found.code)} (${id})`;
  switch (action) {
    case 'keep':
    case 'unkeep':
      shelf.keep(id, action === 'keep');
      return action === 'keep'
        ? `${shown} is kept: it does not expire`
        : `${shown} is not kept any more: it will expire`;
    case 'delete':
      if (shelf.remove(id)) return `${shown} is deleted`;
      throw new UsageError(`the table of ${shown} is open on the server that runs: let everybody leave it first`);
    case 'export':
      writeFile(out, shelf.text(id));
      return `${shown}: ${out}${found.isOpen ? '; its table was not ended, so it goes as far as there is' : ''}`;
  }
  return action satisfies never;
}

/** By its code, typed with or without the space; of two of one code only by the id. */
function find(records: readonly ShelvedRecord[], name: string): ShelvedRecord {
  const code = name.replaceAll(/\s/g, '').toUpperCase();
  const named = records.filter((record) => record.id === name || record.code === code);
  const [found, ...others] = named;
  if (found === undefined) throw new UsageError(`no record '${oneLine(name, 40)}'`);
  if (others.length > 0)
    throw new UsageError(
      `several records have the code ${code}; name one by its id: ${named.map(({ id }) => id).join(', ')}`,
    );
  return found;
}

function listReport(records: readonly ShelvedRecord[]): Report {
  const rows = records.map((record) => [
    formatTableCode(record.code),
    record.isOpen ? 'open' : 'ended',
    record.isKept ? 'kept' : 'expires',
    minute(record.openedMs),
    minute(record.changedMs),
    String(record.lines),
    record.id,
  ]);
  const columns = ['table', 'state', 'kept', 'opened, UTC', 'last change, UTC'].map(
    (heading) => ({ heading, align: 'left' }) as const,
  );
  const table = textTable([...columns, { heading: 'lines', align: 'right' }, { heading: 'id', align: 'left' }], rows);
  return {
    verb: 'records',
    inputs: { action: 'list' },
    results: { records },
    text: records.length === 0 ? 'no records are kept there yet' : table,
  };
}

function minute(timeMs: number): string {
  return new Date(timeMs).toISOString().slice(0, 16).replace('T', ' ');
}
