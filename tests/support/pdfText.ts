import { inflateSync } from 'node:zlib';

/** Glyphs of a font, by their codes: the letters they stand for. */
type Letters = ReadonlyMap<number, string>;

interface PrintedFont {
  readonly letters: Letters;
  /** Codes as the page writes them: two hexadecimal digits in a font that is drawn glyph by glyph, as a variable one is, else four. */
  readonly code: RegExp;
}

/**
 * The letters on each page of a PDF as the browser prints it, in the order in which they are drawn and without spaces: lines break where the sheet ends. Reads only what
 * the browser writes: objects in the open, deflated streams, one or two bytes a glyph, and for each font the map from glyphs to letters (ISO 32000-1, 9.10.3).
 */
export function pdfPages(pdf: Buffer): readonly string[] {
  const objects = new Map<string, string>();
  for (const [, id = '', body = ''] of pdf.toString('latin1').matchAll(/^(\d+) 0 obj\s([\s\S]*?)\sendobj/gm))
    objects.set(id, body);
  const pages = [...objects.values()].filter((body) => /^<<\/Type \/Page\b(?!s)/.test(body));
  return pages.map((page) => lettersOf(page, objects));
}

function lettersOf(page: string, objects: ReadonlyMap<string, string>): string {
  const fonts = new Map<string, PrintedFont>();
  const named = /\/Font <<([\s\S]*?)>>/.exec(page)?.[1] ?? '';
  for (const [, name = '', id = ''] of named.matchAll(/\/(\w+) (\d+) 0 R/g)) {
    const body = objects.get(id) ?? '';
    const map = /\/ToUnicode (\d+) 0 R/.exec(body)?.[1] ?? '';
    const code = /\/Subtype \/Type3/.test(body) ? /.{2}/g : /.{4}/g;
    fonts.set(name, { letters: readLetters(streamOf(objects.get(map) ?? '')), code });
  }
  let font: PrintedFont | undefined;
  let read = '';
  const content = /\/Contents (\d+) 0 R/.exec(page)?.[1] ?? '';
  for (const [, name, codes] of streamOf(objects.get(content) ?? '').matchAll(/\/(\w+) [\d.]+ Tf|<([0-9A-F]+)> Tj/g)) {
    if (name !== undefined) font = fonts.get(name);
    for (const code of codes?.match(font?.code ?? /.{4}/g) ?? [])
      read += font?.letters.get(Number.parseInt(code, 16)) ?? '\uFFFD';
  }
  // letters that are printed as one are two again
  return read.replaceAll(/\s/g, '').replaceAll(/[\uFB00-\uFB06]/g, (drawn) => drawn.normalize('NFKC'));
}

/** What a stream holds; nothing where the object is none. */
function streamOf(body: string): string {
  const [, head = '', data = ''] = /^([\s\S]*?)stream\r?\n([\s\S]*)\r?\nendstream/.exec(body) ?? [];
  return head.includes('/FlateDecode') ? inflateSync(Buffer.from(data, 'latin1')).toString('latin1') : data;
}

/** Single glyphs, and runs of glyphs that stand for a run of letters. */
function readLetters(map: string): Letters {
  const letters = new Map<number, string>();
  const pairs = /<([0-9A-F]+)> <([0-9A-F]+)>(?: <([0-9A-F]+)>)?\n/g;
  for (const [, block = ''] of map.matchAll(/beginbf(?:char|range)\n([\s\S]*?)endbf/g))
    for (const [, first = '', second = '', third] of block.matchAll(pairs)) {
      const from = Number.parseInt(first, 16);
      const to = third === undefined ? from : Number.parseInt(second, 16);
      const units = (third ?? second).match(/.{4}/g)?.map((unit) => Number.parseInt(unit, 16)) ?? [];
      for (let code = from; code <= to; code += 1)
        letters.set(code, String.fromCharCode(...units.slice(0, -1), (units.at(-1) ?? 0) + code - from));
    }
  return letters;
}
