import { ringArea } from '../geom/ring.ts';
import type { Sheet } from '../model/sheet.ts';
import type { SheetCrew } from '../pipeline/sheet-crew.ts';
import type { FoundLayout } from './sheet-search-api.ts';

/** The best layout of a search with what it comes to. */
export function foundLayout(crew: Pick<SheetCrew, 'layout' | 'kept' | 'score'>): FoundLayout {
  const { sheets } = crew.layout;
  return { sheets, kept: crew.kept, figures: { ...crew.score, densityPct: densityPct(sheets) } };
}

/** Per cent of the foam that is used up which becomes pieces: of the last sheet of each foam only what lies before the end of its last piece counts. */
export function densityPct(sheets: readonly Sheet[]): number {
  let [pieces, foam] = [0, 0];
  for (const [i, sheet] of sheets.entries()) {
    const area = areaOf(sheet);
    const isLast = sheets[i + 1]?.foam !== sheet.foam;
    pieces += sheet.usedShare * area;
    foam += isLast ? (area * sheet.filledMm) / (sheet.fillAlong === 'x' ? sheet.widthMm : sheet.heightMm) : area;
  }
  return foam === 0 ? 0 : (100 * pieces) / foam;
}

const areaOf = ({ outline, widthMm, heightMm }: Sheet): number =>
  outline === undefined ? widthMm * heightMm : ringArea(outline);
