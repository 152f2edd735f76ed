/**
 * A window like that of a phone, held either way: the page is laid in rows, a slip at a time lies there, and what a seat can say opens over it. The same windows as in
 * styles/phone.css and styles/short.css.
 */
export const HANDHELD = matchMedia(
  [
    '(max-width: 34.9375em)',
    '(max-width: 43.75em) and (min-height: 35.0625em)',
    '(max-width: 62.5em) and (orientation: portrait)',
    '(max-height: 35em) and (min-width: 35em) and (orientation: landscape)',
  ].join(', '),
);
