import { ok, type Result } from '../base/result.ts';
import { Cancelled, QUIET_WORK, shareOfWork, type Work } from '../base/work.ts';
import type { Page } from '../model/page.ts';
import { checkPaper, type PaperFault, type WantedPaper } from '../steps/read-back/check-paper.ts';
import { readPdf } from '../steps/read-back/read-pdf.ts';
import { writePdf, type PdfOptions } from '../steps/write/pdf.ts';

/** Name of the file that tells of a PDF that did not come out as it should. */
export const PAPER_FAULT_FILE = 'paper-fault.json';

/** Writing takes less than reading back. */
const WRITING_SHARE = 0.4;

/** So many faults are written down; a file that is wholly wrong has one for each line. */
const MOST_FAULTS = 200;

/** Pages that show no piece in true size: only they themselves are looked at. */
export const onlyPages = (pages: readonly Page[]): WantedPaper => ({
  plan: { pages, blocks: [], turned: [] },
  pieces: [],
  printer: null,
  isRoll: false,
});

/**
 * Writes pages to a PDF, reads the finished file with a reader that had no part in writing it, and compares it with the pieces.
 * @param work  pauses all through it; called off, there is no file.
 * @returns fails with `paper/read-back` where it does not agree: then there is no file, and the problem brings a report of the fault.
 */
export async function provenPdf(
  wanted: WantedPaper,
  options: PdfOptions,
  work: Work = QUIET_WORK,
): Promise<Result<Uint8Array>> {
  const bytes = await writePdf(wanted.plan.pages, options, shareOfWork(work, 0, WRITING_SHARE));
  await work.pause(WRITING_SHARE);
  return await proven(bytes, wanted, options, shareOfWork(work, WRITING_SHARE, 1));
}

/** The same for a file that is written. */
export async function proven(
  bytes: Uint8Array,
  wanted: WantedPaper,
  options: Pick<PdfOptions, 'title' | 'date' | 'revision'>,
  work: Work = QUIET_WORK,
): Promise<Result<Uint8Array>> {
  const faults = await faultsIn(bytes, wanted, work);
  if (faults.length === 0) return ok(bytes);
  const report = `${JSON.stringify(faultReport(faults, wanted, options), null, 1)}\n`;
  return {
    ok: false,
    problem: {
      code: 'paper/read-back',
      text: `The finished PDF was read back and is not what it should be: ${sentenceOf(faults[0])} No PDF was made. This is a fault of the program: keep the report of it, and another paper or another layout may work meanwhile.`,
      where: faults[0].piece === undefined ? {} : { piece: faults[0].piece },
      report: { name: PAPER_FAULT_FILE, text: report },
    },
  };
}

async function faultsIn(bytes: Uint8Array, wanted: WantedPaper, work: Work): Promise<readonly PaperFault[]> {
  try {
    return checkPaper(await readPdf(bytes, work), wanted);
  } catch (error) {
    // Called off, the file is not at fault.
    if (error instanceof Cancelled) throw error;
    return [{ what: 'unreadable', found: error instanceof Error ? error.message : String(error), wanted: 'a PDF' }];
  }
}

function sentenceOf({ what, page, number, found, wanted }: PaperFault): string {
  const piece = number === undefined ? 'a piece' : `piece ${number}`;
  switch (what) {
    case 'unreadable':
      return `it cannot be read (${found}).`;
    case 'pages':
      return `it has ${found} pages and should have ${wanted}.`;
    case 'page-size':
      return `page ${page} is ${found} and should be ${wanted}.`;
    case 'viewer-scales':
      return 'it does not ask printers for its true size.';
    case 'square':
      return `the square to measure is not true: ${found}.`;
    case 'missing':
      return `${piece} is on none of its pages.`;
    case 'twice':
      return `${piece} has more than one place on its pages.`;
    case 'outline':
      return `the line to cut of ${piece} is not the piece’s own (${found}; it should be ${wanted}).`;
    case 'stray':
      return `it shows lines to cut that belong to no piece (${found}).`;
  }
}

/** All that is needed to find the fault, and nothing of the sculpt. */
const faultReport = (
  faults: readonly PaperFault[],
  { plan, pieces, printer, isRoll }: WantedPaper,
  { title, date, revision }: Pick<PdfOptions, 'title' | 'date' | 'revision'>,
): object => ({
  fault: 'paper/read-back',
  title,
  date,
  revision,
  faultCount: faults.length,
  faults: faults.slice(0, MOST_FAULTS),
  printer,
  isRoll,
  pages: plan.pages.map(({ kind, name, widthMm, heightMm, pieces: shown }) => ({
    kind,
    name,
    widthMm,
    heightMm,
    shown,
  })),
  blocks: plan.blocks,
  pieces: pieces.map(({ piece, number, rings }) => ({ piece, number, rings: rings.map((ring) => [...ring]) })),
});
