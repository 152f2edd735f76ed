export { createBacklogWatch } from './backlog.ts';
export { ClientSocket } from './ClientSocket.ts';
export { isPlainFrame } from './frame.ts';
