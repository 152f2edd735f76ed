import { assert } from '../assert.ts';
import { createHash, formatHash, mixByte, mixFloat64, mixWord, type HashState } from './hash.ts';

/**
 * Hash of plain data, whatever the order in which its fields were written: objects by name of field, numbers to the bit (but 0 and -0 alike), each
 * value preceded by a byte for its kind so that no two different values run together. A field that is undefined counts as absent.
 */
export function hashValue(value: unknown): string {
  const hash = createHash();
  mixValue(hash, value);
  return formatHash(hash);
}

const KINDS = { number: 1, text: 2, list: 3, object: 4, truth: 5 } as const;

function mixValue(hash: HashState, value: unknown): void {
  if (typeof value === 'number') {
    mixByte(hash, KINDS.number);
    // 0 and −0 step the same bits
    mixFloat64(hash, value + 0);
  } else if (typeof value === 'string') mixText(hash, value);
  else if (typeof value === 'boolean') {
    mixByte(hash, KINDS.truth);
    mixByte(hash, value ? 1 : 0);
  } else {
    assert(typeof value === 'object' && value !== null, 'what is hashed is plain data');
    mixObject(hash, value);
  }
}

function mixText(hash: HashState, text: string): void {
  mixByte(hash, KINDS.text);
  mixFloat64(hash, text.length);
  for (let i = 0; i < text.length; i++) mixWord(hash, text.charCodeAt(i), 2);
}

function mixObject(hash: HashState, value: object): void {
  if (Array.isArray(value)) {
    mixByte(hash, KINDS.list);
    mixFloat64(hash, value.length);
    for (const item of value) mixValue(hash, item);
    return;
  }
  const fields: Readonly<Record<string, unknown>> = { ...value };
  const names = Object.keys(fields)
    .filter((name) => fields[name] !== undefined)
    .toSorted();
  mixByte(hash, KINDS.object);
  mixFloat64(hash, names.length);
  for (const name of names) {
    mixText(hash, name);
    mixValue(hash, fields[name]);
  }
}
