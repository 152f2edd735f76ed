/**
 * Control, formatting (bidirectional marks, zero-width), private-use and lone surrogate code points: none of them is seen,
 * and some change how the words around them read. Line and paragraph separators too.
 */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u;

/** Whether a text that others read has characters that none of them sees. */
export function hasUnseen(text: string): boolean {
  return UNSEEN.test(text);
}
