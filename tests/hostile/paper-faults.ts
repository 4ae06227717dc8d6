import { LINE_STYLES } from '../../src/model/line-style.ts';
import type { Page } from '../../src/model/page.ts';
import { besideOf, type Outcome } from '../../src/pipeline/outcome.ts';
import { wantedPaper } from '../../src/pipeline/wanted-paper.ts';
import { checkPaper } from '../../src/steps/read-back/check-paper.ts';
import type { ReadPdf } from '../../src/steps/read-back/read-pdf.ts';

const PT_PER_MM = 72 / 25.4;

/** Sheets and pages: every copy has one place on foam or is told to have none, and every piece is whole on paper. */
export const paperFaults = (outcome: Outcome): string[] => [...sheetFaults(outcome), ...pageFaults(outcome)];

function sheetFaults({ pieces, sheets, templates, strips, plain }: Outcome): string[] {
  if (pieces === null || sheets === null || templates === null) return [];
  const faults: string[] = [];
  const wanted = pieces.length + besideOf({ strips, plain }).length;
  if (templates.length !== wanted) faults.push(`${templates.length} templates of ${wanted} pieces`);
  const places = new Map<string, number>();
  const add = (piece: string): void => void places.set(piece, (places.get(piece) ?? 0) + 1);
  for (const { placements } of sheets.sheets) for (const { piece } of placements) add(piece);
  for (const { piece } of sheets.odd?.unlaid ?? []) add(piece);
  const tooLarge = new Set<string>(sheets.tooLarge);
  for (const { id, quantity } of pieces) {
    const count = places.get(id) ?? 0;
    if (count !== (tooLarge.has(id) ? 0 : quantity)) faults.push(`${id} lies ${count} times on foam, of ${quantity}`);
  }
  for (const { usedShare, filledMm, widthMm, heightMm, fillAlong } of sheets.sheets)
    if (!(usedShare > 0 && usedShare <= 1 + 1e-9 && filledMm <= (fillAlong === 'x' ? widthMm : heightMm) + 1e-6))
      faults.push(`a sheet is used by ${usedShare} and filled to ${filledMm} mm`);
  return faults;
}

/** The pages held against the pieces by the code that reads finished PDFs, as if they had been written and read without loss. */
function pageFaults(outcome: Outcome): string[] {
  const { project, paper, pieces } = outcome;
  if (paper === null || pieces === null) return [];
  const faults = checkPaper(asRead(paper.pages), wantedPaper(project, paper, pieces, besideOf(outcome)));
  return faults.map(
    ({ what, piece, page, found, wanted }) => `paper, ${what}, ${piece ?? page}: ${found} for ${wanted}`,
  );
}

/** Pages as a reader would see them in the file. */
const asRead = (pages: readonly Page[]): ReadPdf => ({
  layers: [],
  bookmarks: [],
  preferences: { PrintScaling: 'None' },
  info: {},
  pages: pages.map(({ widthMm, heightMm, drawing }) => ({
    widthPt: widthMm * PT_PER_MM,
    heightPt: heightMm * PT_PER_MM,
    userUnit: 1,
    turnDeg: 0,
    texts: [],
    paths: drawing.strokes.map(({ role, points, closed }) => ({
      points: Array.from(points, (mm) => mm * PT_PER_MM),
      closed,
      layer: LINE_STYLES[role].layer,
      widthPt: 1,
      dashPt: [],
      grey: 0,
    })),
  })),
});
