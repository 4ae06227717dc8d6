import { fail, ok, type Result } from '../../base/result.ts';
import type { Finding } from '../../base/finding.ts';
import type { Paper } from '../../model/foam-stock.ts';

/** The paper as it goes through the printer and the part of it that pieces may be drawn on, mm. */
export interface PaperFrame {
  readonly paperName: string;
  readonly orientation: 'portrait' | 'landscape';
  readonly roll: boolean;
  readonly widthMm: number;
  /** For a roll the longest page; each page is as long as it must be. */
  readonly heightMm: number;
  readonly marginMm: number;
  readonly overlapMm: number;
  /** Largest tile: all inside the margin but the foot. Its lower left corner is at `marginMm`, `marginMm` + {@link FOOT_MM}. */
  readonly tileWidthMm: number;
  readonly tileHeightMm: number;
}

/** Strip along the lower edge of each page for its name, revisions and check rule, mm. */
export const FOOT_MM = 12;

/** Smallest side of a tile and smallest step from one to the next that is worth a page, mm [J]. */
const SMALLEST_TILE_MM = 60;
const SMALLEST_STEP_MM = 30;

/** Many printers leave this much of each edge white: 4.2 and 5.1 mm in printer manuals, mm. */
export const USUAL_WHITE_EDGE_MM = 5.1;

/** A piece this many pages large is a wrong unit, not a wish [J]. */
export const MOST_PAGES = 1000;

/**
 * Turns the paper and takes margin and foot away.
 * @param marginMm   white edge all round, mm, >= 0.
 * @param overlapMm  how far neighbouring tiles show the same, mm, >= 0; 0 for tiles that only meet.
 * @returns fails with `tile/margin` or `tile/overlap` where nothing useful is left, and says what would do.
 */
export function paperFrame(
  paper: Paper,
  orientation: PaperFrame['orientation'],
  marginMm: number,
  overlapMm: number,
): Result<PaperFrame> {
  const isTurned = orientation === 'landscape' && !paper.roll;
  const [widthMm, heightMm] = isTurned ? [paper.heightMm, paper.widthMm] : [paper.widthMm, paper.heightMm];
  const most = floorTenth(Math.min(widthMm - SMALLEST_TILE_MM, heightMm - FOOT_MM - SMALLEST_TILE_MM) / 2);
  if (!(marginMm >= 0 && marginMm <= most)) {
    return fail(
      'tile/margin',
      `A margin of ${marginMm} mm leaves too little of ${paper.name} to print on: choose 0 to ${most} mm.`,
    );
  }
  const tileWidthMm = widthMm - 2 * marginMm;
  const tileHeightMm = heightMm - 2 * marginMm - FOOT_MM;
  const mostOverlap = floorTenth(Math.min(tileWidthMm, tileHeightMm) - SMALLEST_STEP_MM);
  if (!(overlapMm >= 0 && overlapMm <= mostOverlap)) {
    const why = `An overlap of ${overlapMm} mm leaves each page too little of its own`;
    return fail('tile/overlap', `${why}: choose 0 to ${mostOverlap} mm on ${paper.name} with this margin.`);
  }
  const name = { paperName: paper.name, orientation, roll: paper.roll };
  return ok({ ...name, widthMm, heightMm, marginMm, overlapMm, tileWidthMm, tileHeightMm }, thinMargin(marginMm));
}

function thinMargin(marginMm: number): readonly Finding[] {
  if (marginMm >= USUAL_WHITE_EDGE_MM) return [];
  return [
    {
      code: 'tile/thin-margin',
      severity: 'warning',
      text: `With a margin of ${marginMm} mm many printers cut lines off at the edge of the paper: 10 mm is safe with most, 12.7 mm with all.`,
      value: marginMm,
      limit: USUAL_WHITE_EDGE_MM,
      unit: 'mm',
      where: {},
    },
  ];
}

const floorTenth = (mm: number): number => Math.max(0, Math.floor(mm * 10) / 10);
