import { parseDocumentText } from '../../engine/documentText.ts';
import type { Drill } from '../../engine/drill/index.ts';
import { createProblemList } from '../../engine/fieldReader.ts';
import { withLines } from '../../engine/lineOfPath.ts';
import type { FieldProblem, Result } from '../../engine/result.ts';
import { DRILL_BUDGET } from './drillRanges.ts';
import { parseDrill } from './parseDrill.ts';

/** The drill that the text of a file describes. Whoever writes one by hand is told the line of each problem. */
export function parseDrillText(text: string): Result<Drill, readonly FieldProblem[]> {
  const json = parseDocumentText(createProblemList('drill'), text, DRILL_BUDGET);
  const drill = json.ok ? parseDrill(json.value) : json;
  if (drill.ok || !json.ok) return drill;
  return { ok: false, error: withLines(text, drill.error) };
}
