/** Words of the page that checks the network. */
export const NETWORK = {
  documentTitle: 'Network check, Kilter',
  back: 'Back to the start',
  title: 'Network check',
  lead: 'Whether this network lets you sit at a table with others. To fly alone you need none.',
  checking: 'Checking. This takes a few seconds.',
  allWell: 'All well: you can open and join tables from here.',
  noServer: 'The server does not answer from here. You can fly alone. Check the network, then try again.',
  noLine:
    'This network blocks the lines that tables need (WebSocket). You can fly alone. Try another network, or ask whoever runs this one to let WebSocket through to this address.',
  request: 'Request to the server',
  line: 'Line to a table (WebSocket)',
  works: (tookMs: number) => `works, ${tookMs} ms`,
  blocked: 'blocked',
  again: 'Check again',
} as const;
