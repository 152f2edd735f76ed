/**
 * Makes something for an owner, and makes it again only when one of the things that it is made `from` is another. Views are asked for twenty times a second, and
 * most of what is in them stays: the very object that was made before is shown again, and then travels to nobody.
 */
export type Memo<Owner extends object, Made> = (owner: Owner, from: readonly unknown[], make: () => Made) => Made;

/** What is made is forgotten with its owner. */
export function createMemo<Owner extends object, Made>(): Memo<Owner, Made> {
  const remembered = new WeakMap<Owner, { readonly from: readonly unknown[]; readonly made: Made }>();
  return (owner, from, make) => {
    const last = remembered.get(owner);
    if (last !== undefined && last.from.every((one, i) => Object.is(one, from[i]))) return last.made;
    const made = make();
    remembered.set(owner, { from, made });
    return made;
  };
}
