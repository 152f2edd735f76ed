import { readSource } from './sources.ts';

/** The pages that show what the command prints. */
export const PAGES = ['README.md', 'server/cli/README.md'] as const;

/** A command line on a page and what stands below it; a line `...` stands for any number of lines. */
interface Example {
  readonly page: (typeof PAGES)[number];
  readonly line: string;
  readonly shown: string;
}

const BLOCK = /```\n\$ npx kilter ([^\n]+)\n([^`]*)```/g;
const LEFT_OUT = '...\n';

export function examplesOn(page: Example['page']): readonly Example[] {
  return [...readSource(page).matchAll(BLOCK)].map(([, line = '', shown = '']) => ({ page, line, shown }));
}

/** What an example ought to show of the real output: all of it, or as many lines before and after what is left out. */
export function abridge(output: string, shown: string): string {
  const at = shown.startsWith(LEFT_OUT) ? 0 : shown.indexOf(`\n${LEFT_OUT}`) + 1;
  if (at === 0 && !shown.startsWith(LEFT_OUT)) return output;
  const lines = output.split('\n');
  const before = shown.slice(0, at).split('\n').length - 1;
  const after = shown.slice(at + LEFT_OUT.length).split('\n').length;
  return [...lines.slice(0, before), '...', ...lines.slice(-after)].join('\n');
}

/** The page with every example as it ought to be. */
export async function withRealOutput(page: Example['page'], run: (line: string) => Promise<string>): Promise<string> {
  let text = readSource(page);
  for (const { line, shown } of examplesOn(page)) {
    const start = `$ npx kilter ${line}\n`;
    const real = abridge(await run(line), shown);
    text = text.replace(start + shown, () => start + real);
  }
  return text;
}
