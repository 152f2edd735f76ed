/** What brings a reloaded page back to its seat. Kept by the tab, gone with it; never sent anywhere but to the table. */
export interface Place {
  /** Six letters, without the space. */
  readonly code: string;
  readonly name: string;
  readonly resume: string;
}

export interface PlaceStore {
  load(): Place | undefined;
  save(place: Place): void;
  clear(): void;
}

const KEY = 'kilter-place';

/** The tab's own storage. Where it is blocked, a reload has to join anew. */
export const TAB_STORE: PlaceStore = {
  load() {
    try {
      return parsePlace(sessionStorage.getItem(KEY));
    } catch {
      return undefined;
    }
  },
  save(place) {
    try {
      sessionStorage.setItem(KEY, JSON.stringify(place));
    } catch {
      // nothing to do: the table works without it
    }
  },
  clear() {
    try {
      sessionStorage.removeItem(KEY);
    } catch {
      // as above
    }
  },
};

function parsePlace(text: string | null): Place | undefined {
  const value: unknown = text === null ? undefined : JSON.parse(text);
  if (typeof value !== 'object' || value === null) return undefined;
  if (!('code' in value && 'name' in value && 'resume' in value)) return undefined;
  const { code, name, resume } = value;
  if (typeof code !== 'string' || typeof name !== 'string' || typeof resume !== 'string') return undefined;
  return { code, name, resume };
}
