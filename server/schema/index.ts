export { readPaper } from './readPaper.ts';
export { TablePapers, createPaper, writePaper, type MemberPaper } from './tablePapers.ts';
