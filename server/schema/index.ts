export { readPaper } from './readPaper.ts';
export { TablePapers, createPaper, writePaper } from './tablePapers.ts';
