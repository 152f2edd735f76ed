import { createHash } from 'node:crypto';

/** How long a text or file is and the SHA-256 of its bytes, hexadecimal. */
export function sha256Of(content: string | Uint8Array): { readonly bytes: number; readonly sha256: string } {
  return { bytes: Buffer.byteLength(content), sha256: createHash('sha256').update(content).digest('hex') };
}
