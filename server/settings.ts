/** A setting of the server: a variable of its environment. */
interface Setting {
  readonly name: string;
  /** Where nothing is said; in words where it is no number. */
  readonly usual: number | string;
  /** Of a whole number. */
  readonly range?: readonly [least: number, most: number];
  readonly meaning: string;
}

/** All there are, as `--help` lists them. */
export const SETTINGS = [
  { name: 'PORT', usual: 2567, range: [0, 65_535], meaning: 'port to listen on; 0 lets the system choose' },
  { name: 'HOST', usual: 'all', meaning: 'address of this machine to listen on' },
  {
    name: 'KILTER_MOST_TABLES',
    usual: 60,
    range: [1, 1000],
    meaning: 'tables with somebody at them; one more is refused in words',
  },
  {
    name: 'KILTER_TABLES_PER_ADDRESS',
    usual: 12,
    range: [1, 1000],
    meaning: 'tables opened from one address and still open',
  },
  {
    name: 'KILTER_LINES_PER_ADDRESS',
    usual: 120,
    range: [1, 10_000],
    meaning: 'lines to tables from one address at once',
  },
  {
    name: 'KILTER_SEAT_KEPT_SECONDS',
    usual: 300,
    range: [5, 86_400],
    meaning: 'how long the place of a member whose line dropped is kept',
  },
  {
    name: 'KILTER_IDLE_MINUTES',
    usual: 240,
    range: [1, 10_080],
    meaning: 'a table at which nobody does anything for so long is closed',
  },
  {
    name: 'KILTER_RECORDS',
    usual: '.records',
    meaning: 'folder of the records; none: none are kept, and a restart ends all tables',
  },
  {
    name: 'KILTER_RECORD_DAYS',
    usual: 30,
    range: [1, 3650],
    meaning: 'a record is deleted so many days after its last change, unless it is kept',
  },
  {
    name: 'KILTER_ADMIN_KEY',
    usual: 'none',
    meaning: 'opens every run of the logbook, and the metrics; 16 to 128 letters, digits or signs',
  },
  {
    name: 'KILTER_TRUSTED_PROXIES',
    usual: 'none',
    meaning: 'addresses or networks of proxies in front, with commas; only what they say of others is believed',
  },
  {
    name: 'KILTER_HOSTS',
    usual: 'all',
    meaning: 'names under which browsers reach the server, with commas; others are turned away',
  },
  {
    name: 'KILTER_BASE_PATH',
    usual: 'none',
    meaning: 'path below which it lies, such as /kilter, where the proxy in front leaves it in the address',
  },
  {
    name: 'KILTER_REDIS',
    usual: 'none',
    meaning: 'address of a Redis, such as redis://127.0.0.1:6379, through which several processes serve one name',
  },
  {
    name: 'KILTER_PUBLIC_ADDRESS',
    usual: 'none',
    meaning: 'where there are several: name and path under which browsers reach this one, such as kilter.example/p1',
  },
  { name: 'KILTER_LOG', usual: 'plain on a terminal', meaning: 'plain: lines for people; json: one object a line' },
] as const satisfies readonly Setting[];

export type SettingName = (typeof SETTINGS)[number]['name'];

export function settingNamed(name: SettingName): Setting {
  const setting = SETTINGS.find((one) => one.name === name);
  if (setting === undefined) throw new Error(`no setting ${name}`);
  return setting;
}

/** What `node server/main.ts --help` prints. */
export function settingsText(): string {
  const width = Math.max(...SETTINGS.map(({ name }) => name.length));
  const lines = SETTINGS.map((setting: Setting) => {
    const range = setting.range === undefined ? '' : `, ${setting.range[0]} to ${setting.range[1]}`;
    return `  ${setting.name.padEnd(width)}  ${setting.meaning} (usual: ${setting.usual}${range})`;
  });
  return [
    'node server/main.ts: sets the tables of Kilter on one port.',
    '',
    'Settings, from the environment:',
    ...lines,
    '',
  ].join('\n');
}
