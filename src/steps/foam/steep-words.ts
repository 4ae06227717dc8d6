import type { Finding } from '../../base/finding.ts';
import type { FoamSeam } from '../../model/foam-piece.ts';
import type { LengthRange, SteepJoin } from '../../model/steep-join.ts';
import { degrees, mm } from './seam-findings.ts';

/** Widths that differ by less than this are cut as one, mm. */
const SAME_WIDTH_MM = 0.1;

/** `11.6 mm`, or `9 to 11.6 mm` where it changes along the seam. */
const widthText = ({ min, max }: LengthRange): string =>
  max - min < SAME_WIDTH_MM ? mm(max) : `${mm(min).replace(' mm', '')} to ${mm(max)}`;

/** What stands at an edge on its template: `strip between`, `fill 1.5 mm at the face`, `trim over 1.5 mm at the face`. */
export function steepEdgeText(steep: SteepJoin): string {
  if (steep.way === 'split') return steep.strips === 1 ? 'strip between' : `${steep.strips} strips between`;
  return `${steep.way === 'fill' ? 'fill' : 'trim over'} ${mm(steep.gapMm)} at the ${steep.openOn}`;
}

/** What is cut or filled beside the pieces at a seam, to cut it by; undefined where its fold needs nothing. */
export function steepWork({ letter, steep, trueLengthMm }: FoamSeam, thicknessMm: number): string | undefined {
  if (steep === undefined) return undefined;
  const length = mm(Math.ceil(trueLengthMm));
  if (steep.way === 'split') {
    const strips = steep.strips === 1 ? 'a strip' : `${steep.strips} strips`;
    return `Seam ${letter}: ${strips} of ${mm(thicknessMm)} foam, ${widthText(steep.faceMm)} wide on the face and ${widthText(steep.backMm)} on the back, ${length} long, long edges at ${degrees(steep.bevelDeg)}`;
  }
  const gap = `${mm(steep.gapMm)} wide at the ${steep.openOn}, ${length} long`;
  return steep.trimMm === undefined
    ? `Seam ${letter}: fill the gap, ${gap}`
    : `Seam ${letter}: a thin trim strip ${mm(steep.trimMm)} wide over the gap, ${gap}`;
}

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
