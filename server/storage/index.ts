export { NO_JOURNAL, openJournal, type Journal, type TableJournal, type UnfinishedTable } from './journal.ts';
export { JOURNAL_FILE } from './journalFile.ts';
export { openRecordShelf, type RecordShelf, type ShelvedRecord } from './recordShelf.ts';
export { openRunShelf, type RunShelf, type ShelvedRun } from './runShelf.ts';
