import { createHash } from 'node:crypto';

/** The first 16 digits of the SHA-256 of plain data, as JSON. */
export function digest(data: unknown): string {
  return createHash('sha256').update(JSON.stringify(data)).digest('hex').slice(0, 16);
}
