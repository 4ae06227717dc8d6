// Tests read paper with the reader that the program reads its own files back with: a library that had no part in writing them.
export { readPdf, type ReadPage, type ReadPath, type ReadPdf } from '../../src/steps/read-back/read-pdf.ts';
