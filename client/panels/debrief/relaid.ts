/** A part of a sheet that is laid anew only where what it shows is another: what is read, or being typed, stays. */
export function createRelaid<Holder extends HTMLElement>(
  holder: Holder,
): { readonly holder: Holder; lay(shown: unknown, make: () => readonly (Node | string | undefined)[]): void } {
  let laid: string | undefined;
  return {
    holder,
    lay(shown, make) {
      const key = JSON.stringify(shown) ?? '';
      if (key === laid) return;
      laid = key;
      holder.replaceChildren(...make().filter((child) => child !== undefined));
    },
  };
}
