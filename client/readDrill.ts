import type { Drill } from '../engine/drill/index.ts';
import type { TableLink } from './net/index.ts';

/** The drill of the table with all that it hides; undefined where the table does not give it, or plays none. */
export async function readDrill(link: Pick<TableLink, 'drillText'>): Promise<Drill | undefined> {
  const [text, { parseDrill }] = await Promise.all([link.drillText(), import('./drillShelf.ts')]);
  const parsed = text.ok ? parseDrill(JSON.parse(text.value)) : undefined;
  return parsed?.ok === true ? parsed.value : undefined;
}
