import { parseRecording, type Recording } from '../engine/replay/index.ts';

const KEY = 'kilter-flight';

/** Keeps a flight alone over a reload of its page. Kept by the tab, gone with it. */
export function keepFlight(recording: Recording): void {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(recording));
  } catch {
    // where storage is blocked, a reload begins anew
  }
}

/** The flight that was kept, once: it is not kept any longer. Undefined when there is none, or none of this version. */
export function takeKeptFlight(): Recording | undefined {
  try {
    const text = sessionStorage.getItem(KEY);
    sessionStorage.removeItem(KEY);
    if (text === null) return undefined;
    const parsed = parseRecording(JSON.parse(text));
    return parsed.ok ? parsed.value : undefined;
  } catch {
    return undefined;
  }
}
