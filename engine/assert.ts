/**
 * Throws when a contract inside the engine is broken. Foreign data never gets this far: it is parsed into checked types,
 * and what the parsers refuse comes back as a value. Asserts are always on.
 */
export function assert(condition: boolean, message: string): asserts condition {
  if (!condition) throw new Error(`Broken contract: ${message}`);
}
