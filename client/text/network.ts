/** Words of the page that checks the network. */
export const NETWORK = {
  documentTitle: 'Network check, Kilter',
  back: 'Back to the start',
  title: 'Network check',
  lead: 'Whether this network lets you sit at a table with others. To fly alone you need none.',
  checking: 'Checking. This takes a few seconds.',
  allWell: 'All well: you can open and join tables from here, over WebSocket.',
  byRequests:
    'You can open and join tables from here. This network blocks WebSocket, so Kilter uses plain requests instead: what you see may come a moment later.',
  noServer: 'The server does not answer from here. You can fly alone. Check the network, then try again.',
  noLine:
    'This network blocks both ways to a table. You can fly alone. Try another network, or ask whoever runs this one to let WebSocket through to this address.',
  request: 'Request to the server',
  line: 'Line to a table, over WebSocket',
  requestLine: 'Line to a table, over plain requests',
  works: (tookMs: number) => `works, ${tookMs} ms`,
  blocked: 'blocked',
  again: 'Check again',
} as const;
