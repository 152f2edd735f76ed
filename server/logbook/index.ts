export { MOST_KEYS, RUN_KEY_LETTERS, type Keys } from './keys.ts';
export { openLogbook, type Logbook, type LogbookRefusal, type RunList } from './logbook.ts';
