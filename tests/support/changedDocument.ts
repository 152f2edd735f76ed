import * as fc from 'fast-check';
import { pathsIn, spoiled, valueAt } from './landerFile.ts';

/** One of the documents with up to three places changed: for another part of it, or for anything. */
export function changedDocument(sources: readonly unknown[]): fc.Arbitrary<unknown> {
  const cut = fc.record({ where: fc.nat(), from: fc.nat(), value: fc.jsonValue(), own: fc.boolean() });
  return fc
    .record({ source: fc.constantFrom(...sources), cuts: fc.array(cut, { maxLength: 3 }) })
    .map(({ source, cuts }) =>
      cuts.reduce<unknown>((document, { where, from, value, own }) => {
        const paths = pathsIn(document);
        const path = paths[where % paths.length] ?? [];
        if (path.length === 0) return document;
        return spoiled(document, path, own ? valueAt(document, paths[from % paths.length] ?? []) : value);
      }, structuredClone(source)),
    );
}
