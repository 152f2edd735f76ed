/** What the build left for the worker to keep. */
export interface Built {
  /** Of this build: another build has another. */
  readonly version: string;
  /** Every file of the page, from its folder on; './' is the page itself. */
  readonly files: readonly string[];
}

/** What of a request matters here. */
interface Asked {
  readonly method: string;
  readonly mode: string;
  readonly url: string;
}

/**
 * What a request is for: the page, or one of its parts. Everything else, tables and their rooms above all, goes to the server as if there were no worker. `scope`:
 * the folder of the page, with its origin.
 */
export function partOf({ method, mode, url }: Asked, scope: string, { files }: Built): 'page' | 'part' | undefined {
  if (method !== 'GET' || !url.startsWith(scope)) return undefined;
  const [path = ''] = url.slice(scope.length).split(/[?#]/);
  if (mode === 'navigate') return path === '' || path === 'index.html' ? 'page' : undefined;
  return path !== '' && files.includes(path) ? 'part' : undefined;
}

/** Which stores of earlier builds go: all but the one before, from which a page may still run. `stores`: the oldest first. */
export function outdatedStores(stores: readonly string[], own: string): readonly string[] {
  return stores.filter((store) => store.startsWith(STORE) && store !== own).slice(0, -1);
}

const STORE = 'kilter-';

/** Where a build keeps its files. */
export function storeOf({ version }: Built): string {
  return STORE + version;
}
