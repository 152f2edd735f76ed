export { readPapers } from './readPaper.ts';
export { TablePapers, layPaper, writeCommon, writeOwn } from './tablePapers.ts';
