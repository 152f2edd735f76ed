/** The legal name that a mistyped one most likely stands for, or undefined when none is near. */
export function nearestName(mistyped: string, legal: readonly string[]): string | undefined {
  let nearest: string | undefined;
  // as many edits as a third of the name, and at least one
  let least = Math.max(1, Math.floor(mistyped.length / 3)) + 1;
  for (const name of legal) {
    const edits = editDistance(mistyped.toLowerCase(), name.toLowerCase());
    if (edits < least) {
      least = edits;
      nearest = name;
    }
  }
  return nearest;
}

/** Fewest insertions, deletions and replacements of one character that turn a into b. [Levenshtein1966], by rows. */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
