import type { TableView } from '../../engine/table/index.ts';

/** Who runs the table, the reader or another; nobody where whoever decides does. */
export function facilitatorOf({ you, others }: TableView): { readonly name: string } | undefined {
  return [you, ...others].find(({ role }) => role === 'facilitator');
}
