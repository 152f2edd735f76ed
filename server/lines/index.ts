export { createBacklogWatch } from './backlog.ts';
export { isPlainFrame } from './frame.ts';
export { PolledSocket } from './PolledSocket.ts';
export { TableTransport } from './TableTransport.ts';
