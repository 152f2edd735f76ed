/**
 * Lets the browser keep the page, once it rests. Browsers do so for pages from this machine and over secure lines alone: a phone that plays over the plain line of
 * a network needs the server each time.
 */
export function keepForOffline(): void {
  if (!('serviceWorker' in navigator)) return;
  const wait = window.requestIdleCallback ?? ((run: () => void) => setTimeout(run, 1000));
  const register = () => wait(() => void navigator.serviceWorker.register('./offline.js').catch(() => undefined));
  if (document.readyState === 'complete') register();
  else addEventListener('load', register);
}
