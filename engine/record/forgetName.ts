import { createProblemList } from '../fieldReader.ts';
import { accept, refuse, type Result } from '../result.ts';
import { applyEntry, createTable, judgeEntry, stepTable, type EntryContent } from '../table/index.ts';
import { resumeKeptTable, markLine } from './keepRecord.ts';
import { readContent } from './readEntry.ts';
import { MARK_FIELDS, type RecordLine, type RecordParts, type TableRecord } from './record.ts';

/** Fields of an entry in which people write what they like. */
const WRITTEN = ['text', 'owner', 'due', 'evidence', 'reason', 'word', 'thing'] as const;

/** In place of a name, the longest that fits. A text may be as long as it may get. */
const LAST_RESORT = '…';

/** What a name may change of the table: everything else of a mark has to stay, to the bit. */
const OF_NAMES = ['table', 'hash'] as const;

export const NOT_AS_RECORDED = 'This run does not play again as it was recorded, so nothing in it can be changed.';

/**
 * The record without a person's name: "Person 2" stands for it, at joining and in all that anybody wrote, letters large or small. It is played again and its
 * marks are made anew, so that it still replays to the bit; the motion stays as it was. Refused, in words, where nobody has that name.
 */
export function forgetName(record: TableRecord, parts: RecordParts, name: string): Result<TableRecord, string> {
  const joined = record.lines.find(({ line, ...of }) => line === 'entry' && nameIn(of) === name);
  if (joined?.line !== 'entry') return refuse(`Nobody in this run has the name ${name}.`);
  const resumed = resumeKeptTable(record, { ...parts, write: () => undefined });
  if (!resumed.ok) return refuse(NOT_AS_RECORDED);
  const standIn = unusedStandIn(record, joined.member.slice(1));
  const lines = playRenamed(record, parts, (content) => rename(content, name, standIn));
  return lines === undefined ? refuse(NOT_AS_RECORDED) : accept({ header: record.header, lines });
}

function nameIn(of: object): string | undefined {
  const { content } = of as { readonly content?: EntryContent };
  return content?.kind === 'joined' ? content.name : undefined;
}

/** "Person 2" for the second who joined, unless somebody calls themselves that. */
function unusedStandIn({ lines }: TableRecord, number: string): string {
  const used = new Set(lines.map((line) => nameIn(line)));
  let candidate = `Person ${number}`;
  for (let next = 101; used.has(candidate); next += 1) candidate = `Person ${next}`;
  return candidate;
}

/** The lines of the record renamed, with their marks as they are then; undefined where more than names would be otherwise. */
function playRenamed(
  { lines }: TableRecord,
  parts: RecordParts,
  renamed: (content: EntryContent) => EntryContent,
): readonly RecordLine[] | undefined {
  const table = createTable(parts);
  const played: RecordLine[] = [];
  for (const line of lines) {
    while (table.state.tick < line.tick) stepTable(table);
    if (line.line === 'mark') {
      const mark = { ...line, ...markLine(table) };
      const differs = MARK_FIELDS.some((field) => !OF_NAMES.some((of) => of === field) && mark[field] !== line[field]);
      if (differs) return undefined;
      played.push(mark);
      continue;
    }
    const entry = { ...line, content: renamed(line.content) };
    if (judgeEntry(table.state, entry) !== undefined) return undefined;
    applyEntry(table, entry);
    played.push(entry);
  }
  return played;
}

function rename(content: EntryContent, name: string, standIn: string): EntryContent {
  if (content.kind === 'joined') return content.name === name ? { ...content, name: standIn } : content;
  // as a word of its own, whatever stands around it
  const word = new RegExp(`(?<![\\p{L}\\p{N}])${escaped(name)}(?![\\p{L}\\p{N}])`, 'giu');
  const written = Object.entries(content).filter(
    (field): field is [string, string] => WRITTEN.some((known) => known === field[0]) && typeof field[1] === 'string',
  );
  if (!written.some(([, text]) => text.search(word) >= 0)) return content;
  for (const instead of [standIn, LAST_RESORT]) {
    const texts = written.map(([field, text]) => [field, text.replace(word, instead)] as const);
    const changed = readContent(createProblemList('record'), { ...content, ...Object.fromEntries(texts) }, 'content');
    if (changed !== undefined) return changed;
  }
  return content;
}

function escaped(name: string): string {
  return name.replaceAll(/[$()*+.?[\\\]^{|}/-]/g, String.raw`\$&`);
}
