import type * as DeskModule from './desk.ts';
import { codeInAddress } from './codeAddress.ts';
import { onSettings, settings } from './settings/store.ts';
import { keepForOffline } from './offline/register.ts';
import { isAtTable } from './wayBack.ts';

/**
 * The start page: a few hundred bytes that make its actions work. Everything else (engine, drawing, network) is one
 * import away and is fetched once the page shows.
 */
const start = byId('start');
const status = byId('start-status');
const field = fieldById('code');
const codeProblem = byId('code-problem');
const crewName = fieldById('name');

byId('fly').addEventListener('click', () => void sitDown((desk) => desk.flyAlone()));
byId('open').addEventListener('click', () => void sitDown((desk) => desk.openTable(crewName.value)));
byId('choose').addEventListener('click', () => void choose());
byId('trouble').addEventListener('click', () => void choose(true));
byId('drill').addEventListener('click', () => void chooseDrill());
byId('logbook').addEventListener('click', () => void sitDown((desk) => desk.openPage('logbook')));
byId('workbench').addEventListener('click', () => void sitDown((desk) => desk.openPage('workbench')));
byId('hall').addEventListener('click', () => void sitDown((desk) => desk.openPage('hall')));
byId('about').addEventListener('click', () => void sitDown((desk) => desk.openPage('about')));
byId('settings').addEventListener('click', () => void sitDown(async (desk) => desk.showSettings()));
byId('join').addEventListener('submit', (event) => {
  event.preventDefault();
  void join(field.value);
});

// what of the start page follows the settings is left to the style sheet
showSettings();
onSettings(showSettings);

// a link to a table leads straight to it, so does the browser's Forward after leaving one; a flight outlives a reload
const isFollowed = openNamedPage() || followInvitation();
if (!isFollowed && isAtTable()) {
  void sitDown((desk) => desk.goOnFlying());
} else if (!isFollowed && namesLanding()) {
  void choose();
} else if (!isFollowed) {
  // once the page shows and rests, the table is fetched ahead of the press
  const wait = window.requestIdleCallback ?? ((run: () => void) => setTimeout(run, 300));
  wait(() => void loadDesk().catch(() => undefined));
}

if (import.meta.env.PROD) keepForOffline();

addEventListener('popstate', () => {
  if (!start.hidden) openNamedPage();
});
// a link with a code that was pasted over the address of this page, too
addEventListener('hashchange', () => {
  if (!start.hidden && !openNamedPage()) followInvitation();
});

type Desk = typeof DeskModule;

declare global {
  /** Put in by the build; PROD: this is the built page. */
  interface ImportMeta {
    readonly env: { readonly PROD: boolean };
  }
}

function showSettings(): void {
  const { units, motion } = settings();
  Object.assign(document.documentElement.dataset, { units, motion });
}

/** Opens the page that the address names; false when it names none. */
function openNamedPage(): boolean {
  const words = new URLSearchParams(location.search);
  const isVote = codeInAddress('vote', location) !== undefined;
  const page = isVote
    ? 'vote'
    : (['logbook', 'workbench', 'hall', 'about', 'network'] as const).find((name) => words.has(name));
  if (page !== undefined) void sitDown((desk) => desk.openPage(page));
  return page !== undefined;
}

/** Sits down at the table that the address leads to; false when it leads to none. */
function followInvitation(): boolean {
  const invited = codeInAddress('table', location);
  if (invited === undefined) return false;
  field.value = invited;
  void join(invited);
  return true;
}

/** Whether the address names a landing that somebody chose. */
function namesLanding(): boolean {
  const words = new URLSearchParams(location.search);
  return ['lander', 'site', 'world', 'start', 'mode', 'pace'].some((name) => words.has(name));
}

/** Lays out the landings to choose from. */
async function choose(isTroubled = false): Promise<void> {
  await sitDown(async (desk) =>
    desk.chooseLanding(
      {
        fly: (choice, seat) => void sitDown((loaded) => loaded.flyChosen(choice, seat)),
        open: (choice) => void sitDown((loaded) => loaded.openTable(crewName.value, choice)),
      },
      isTroubled,
    ),
  );
}

/** Lays out the drills to choose from. */
async function chooseDrill(): Promise<void> {
  await sitDown((desk) =>
    desk.chooseDrill({
      open: (choice) => void sitDown((loaded) => loaded.openDrill(crewName.value, choice)),
      alone: (choice, seat) => void sitDown((loaded) => loaded.flyDrill(choice, seat)),
    }),
  );
}

/** Joins the table with this code. What is wrong with the code stands at its field. */
async function join(code: string): Promise<void> {
  await sitDown((desk) => desk.joinTable(code, crewName.value, joinedAs()), codeProblem);
  if (codeProblem.textContent === '') return;
  field.setAttribute('aria-invalid', 'true');
  field.focus();
}

/** What the person wants to be at the table; crew unless they say otherwise. */
function joinedAs(): DeskModule.JoinedAs {
  const said = document.querySelector<HTMLSelectElement>('#as')?.value;
  return said === 'observer' || said === 'room screen' ? said : 'crew';
}

function loadDesk(): Promise<Desk> {
  return import('./desk.ts');
}

/** Loads the table and does the action there; what went wrong stands under the buttons, or where else it belongs. */
async function sitDown(act: (desk: Desk) => Promise<string | undefined>, problemAt = status): Promise<void> {
  document.body.classList.add('busy');
  codeProblem.textContent = '';
  field.removeAttribute('aria-invalid');
  status.textContent = 'Setting the table …';
  try {
    const problem = await act(await loadDesk());
    status.textContent = '';
    problemAt.textContent = problem ?? '';
    // a way to see what is blocked, where the words say that the network may be it
    byId('network').hidden = problem?.includes('network') !== true;
  } catch {
    status.textContent = 'A part of the page did not load. Check the connection and try again.';
  }
  document.body.classList.remove('busy');
}

function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The start page has no element named ${id}`);
  return found;
}

function fieldById(id: string): HTMLInputElement {
  const found = byId(id);
  if (!(found instanceof HTMLInputElement)) throw new Error(`The start page has no field named ${id}`);
  return found;
}
