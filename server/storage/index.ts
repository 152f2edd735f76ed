export {
  JOURNAL_FILE,
  NO_JOURNAL,
  openJournal,
  type Journal,
  type TableJournal,
  type UnfinishedTable,
} from './journal.ts';
