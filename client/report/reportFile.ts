import { REPORT } from '../text/debrief.ts';

/** A page that stands by itself: the article, its style, no script, nothing from elsewhere. */
export function reportFile(article: HTMLElement, style: string, title: string): string {
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(`${REPORT.title}: ${title}`)}</title>`,
    `<style>${style}</style>`,
    '</head>',
    `<body><main>${article.outerHTML}</main></body>`,
    '</html>',
    '',
  ].join('\n');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}
