import type { Page } from 'playwright';
import { openSharedTable } from '../../client/net/sharedTable.ts';
import type { TableLink } from '../../client/net/index.ts';
import type { Command } from '../../engine/table/index.ts';
import { choiceOfDrill, DRILLS } from '../../levels/index.ts';
import type { LiveTable } from './liveTable.ts';
import { createTabStore, until } from './tableServer.ts';

/** What happens in the descent, by Fay: the altimeter falls silent at once, and the descent is ended some seconds later. */
const FLOWN_MS = 9000;

/** A drill that was cut short: Fay opened it from elsewhere, Ada sits at Sensors in `crew`, and `runs` has the table since it is at rest. */
export async function drillAtRest(
  live: LiveTable,
  sizes: { readonly runs?: { width: number; height: number }; readonly crew?: { width: number; height: number } } = {},
): Promise<{ readonly runs: Page; readonly crew: Page; readonly code: string; readonly link: TableLink }> {
  const drill = DRILLS.find(({ id }) => id === 'quiet-altimeter')!;
  const opened = await openSharedTable({
    name: 'Fay',
    origin: live.origin,
    store: createTabStore(),
    choice: choiceOfDrill(drill),
    facilitates: true,
  });
  if (!opened.ok) throw new Error(opened.error.reason);
  const link = opened.value;
  const code = link.code!.replaceAll(' ', '');
  const [runs, crew] = await Promise.all([
    join(live, { code, name: 'Lin', size: sizes.runs }),
    join(live, { code, name: 'Ada', size: sizes.crew }),
  ]);
  await until('both are here', () => link.view?.others.length === 2);
  await crew.getByRole('button', { name: 'Take Sensors' }).click();
  await until('Ada sits', () => link.view?.others.some(({ seat }) => seat === 'sensors') === true);
  await ask(link, { kind: 'begin' });
  await until('it runs', () => (link.view?.flight.tick ?? 0) > 60);
  await ask(link, { kind: 'sendInject', inject: drill.events[0]!.id });
  await new Promise((resolve) => setTimeout(resolve, FLOWN_MS));
  await ask(link, { kind: 'end' });
  const lin = link.view?.others.find(({ name }) => name === 'Lin');
  if (lin === undefined) throw new Error('Lin has gone');
  await ask(link, { kind: 'handOverTable', member: lin.id });
  return { runs, crew, code, link };
}

async function join(
  live: LiveTable,
  { code, name, size }: { code: string; name: string; size: { width: number; height: number } | undefined },
): Promise<Page> {
  const page = await live.openPage('/', size);
  await page.getByRole('textbox', { name: 'your name, if you like' }).fill(name);
  await page.getByRole('textbox', { name: 'or join with a code' }).fill(code);
  await page.getByRole('button', { name: 'Join' }).click();
  await page.locator('main.desk').waitFor();
  return page;
}

async function ask(link: TableLink, command: Command): Promise<void> {
  const answer = await link.command(command);
  if (!answer.ok) throw new Error(`${command.kind}: ${answer.error.reason}`);
}
