import type { Finding } from '../../base/finding.ts';
import { formatPlain } from '../../base/format-length.ts';
import type { FoamPiece, FoamSeam } from '../../model/foam-piece.ts';
import type { LengthRange, SteepJoin } from '../../model/steep-join.ts';
import { rad } from '../../geom/vec.ts';
import { seamReachMm } from './foam-strips.ts';
import { degrees, mm } from './seam-findings.ts';

/** Widths that differ by less than this are cut as one, mm. */
const SAME_WIDTH_MM = 0.1;

/** Whether a width is cut as one all along. */
export const isOneWidth = ({ min, max }: LengthRange): boolean => max - min < SAME_WIDTH_MM;

/** `11.6 mm`, or `9 to 11.6 mm` where it changes along the seam. */
export const widthText = (width: LengthRange): string =>
  isOneWidth(width) ? mm(width.max) : `${mm(width.min).replace(' mm', '')} to ${mm(width.max)}`;

/** What stands at an edge on its template: `strip between`, `fill 1.5 mm at the face`, `trim over 1.5 mm at the face`. */
export function steepEdgeText(steep: SteepJoin): string {
  if (steep.way === 'split') return steep.strips === 1 ? 'strip between' : `${steep.strips} strips between`;
  return `${steep.way === 'fill' ? 'fill' : 'trim over'} ${mm(steep.gapMm)} at the ${steep.openOn}`;
}

/** What is cut or filled beside the pieces at a seam, to cut it by; undefined where its fold needs nothing. */
export function steepWork(seam: FoamSeam, thicknessMm: number): string | undefined {
  const { letter, steep } = seam;
  if (steep === undefined) return undefined;
  const length = mm(seamReachMm(seam));
  if (steep.way === 'split') {
    const strips = steep.strips === 1 ? 'a strip' : `${steep.strips} strips`;
    return `Seam ${letter}: ${strips} of ${mm(thicknessMm)} foam, ${widthText(steep.faceMm)} wide on the face and ${widthText(steep.backMm)} on the back, ${length} long, long edges at ${degrees(steep.bevelDeg)}`;
  }
  const gap = `${mm(steep.gapMm)} wide at the ${steep.openOn}, ${length} long`;
  return steep.trimMm === undefined
    ? `Seam ${letter}: fill the gap, ${gap}${fillingText(seam, steep.gapMm, thicknessMm)}`
    : `Seam ${letter}: a thin trim strip ${mm(steep.trimMm)} wide over the gap, ${gap}`;
}

/**
 * How deep a gap is and what fills it: `, 8.4 mm deep, at most 0.6 cm³ of filling`. Its sides are the two cuts, `t / cos` of their lean long, which meet
 * at its foot.
 */
function fillingText(seam: FoamSeam, gapMm: number, thicknessMm: number): string {
  const lean = rad(Math.max(Math.abs(seam.bevelDeg.min), Math.abs(seam.bevelDeg.max)));
  const depthMm = Math.sqrt(Math.max(0, (thicknessMm / Math.cos(lean)) ** 2 - (gapMm / 2) ** 2));
  const cm3 = (gapMm * depthMm * seamReachMm(seam)) / 2000;
  return `, ${mm(depthMm)} deep, at most ${formatPlain(Math.ceil(10 * cm3 - ROUNDING) / 10)} cm³ of filling`;
}

/** What rounding adds to a whole tenth of a cm³, in tenths. */
const ROUNDING = 1e-6;

/** A note of what the chosen way asks for. */
export function steepNote(part: string, seam: FoamSeam, thicknessMm: number): Finding | null {
  const work = steepWork(seam, thicknessMm);
  return work === undefined
    ? null
    : {
        code: 'foam/steep-built',
        severity: 'note',
        text: `${work}: its fold is beyond the blade, and this is how you chose to build it.`,
        where: { part, seam: seam.id },
      };
}

/** What is cut or filled beside the pieces of a whole job, one sentence for each seam beyond the blade. */
export function beyondBlade(pieces: readonly FoamPiece[], seams: readonly FoamSeam[]): readonly string[] {
  const thickness = new Map(pieces.map(({ id, thicknessMm }) => [id, thicknessMm]));
  return seams.flatMap((seam) => {
    const work = steepWork(seam, Math.max(0, ...seam.pieces.map((id) => thickness.get(id) ?? 0)));
    return work === undefined ? [] : [`${work}.`];
  });
}
