export { ClientSocket } from './ClientSocket.ts';
export { isPlainFrame } from './frame.ts';
