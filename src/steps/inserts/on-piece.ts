import type { Finding } from '../../base/finding.ts';
import { formatMm } from '../../base/format-length.ts';
import { movePoints, type Move2 } from '../../geom/turn-and-move.ts';
import { boxOfPoints, type Ring } from '../../geom/ring.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import type { InsertCut, InsertPlan } from '../../model/insert.ts';

/** Foam that stays between a pocket and an edge or a seam, mm: glue and hands need it [J]. */
export const LEAST_LAND_MM = 10;

/** A flat piece of the wall as far as something is let into it. */
export interface InsertHost {
  readonly name: string;
  /** Its edges on the face, seams among them: outer ring and holes, mm, in its own frame. */
  readonly rings: readonly Ring[];
  /** Least radius it is bent to, mm; null where it stays flat. */
  readonly leastRadiusMm: number | null;
}

/** Where an insert lies on the flat piece: turned, then moved, mm. */
export type InsertPlace = Move2;

/** What is cut into a piece for an insert, in the frame of the piece. */
export const cutsOnPiece = (cuts: readonly InsertCut[], place: InsertPlace): readonly InsertCut[] =>
  cuts.map((cut) => ({ ...cut, ring: movePoints(cut.ring, place) }));

/** Whether there is room for it on its piece, from edges, and how far the bend of the piece leaves it hollow. */
export function hostFindings(plan: InsertPlan, host: InsertHost, place: InsertPlace): readonly Finding[] {
  const findings: Finding[] = [];
  const own = cutsOnPiece(plan.cuts, place).filter(({ what }) => what !== 'channel');
  const channels = cutsOnPiece(plan.cuts, place).filter(({ what }) => what === 'channel');
  const land = leastDepth(host.rings, own);
  const ofChannel = leastDepth(host.rings, channels);
  if (land < 0)
    findings.push({
      code: 'insert/off-piece',
      severity: 'error',
      text: `What is let in for the ${plan.name} reaches ${formatMm(-land)} past the edge of ${host.name}: move it in, or to another piece.`,
      value: -land,
      unit: 'mm',
      where: {},
    });
  else if (land < LEAST_LAND_MM)
    findings.push({
      code: 'insert/near-edge',
      severity: 'warning',
      text: `Between the ${plan.name} and an edge or seam of ${host.name} ${formatMm(land)} of foam stay, under ${formatMm(LEAST_LAND_MM)}: move it in.`,
      value: land,
      limit: LEAST_LAND_MM,
      unit: 'mm',
      where: {},
    });
  if (ofChannel < 0 && land >= 0)
    findings.push({
      code: 'insert/channel-over-edge',
      severity: 'note',
      text: `The way for the wires of the ${plan.name} runs over an edge of ${host.name}: it goes on in the piece that is glued there, at the same place of the seam.`,
      where: {},
    });
  const hollow = hollowOf(plan, host);
  if (hollow > FLAT_ENOUGH_MM)
    findings.push({
      code: 'insert/on-bend',
      severity: 'note',
      text: `${host.name} is bent, and the ${plan.name} is not: its pocket is to be ${formatMm(hollow)} deeper in the middle or at its ends, or the foam is left flat there.`,
      value: hollow,
      limit: FLAT_ENOUGH_MM,
      unit: 'mm',
      where: {},
    });
  return findings;
}

/** Foam gives so much under what lies in it, mm [J]. */
const FLAT_ENOUGH_MM = 0.5;

/** How far the arc of the bend stands off a straight thing as long as its pocket: R - sqrt(R² - (l/2)²). */
function hollowOf({ cuts, body }: InsertPlan, { leastRadiusMm }: InsertHost): number {
  if (leastRadiusMm === null || body === null) return 0;
  const half = cuts
    .filter(({ what }) => what === 'pocket' || what === 'rebate')
    .reduce((most, { ring }) => {
      const { minX, minY, maxX, maxY } = boxOfPoints(ring);
      return Math.max(most, Math.min(maxX - minX, maxY - minY) / 2);
    }, 0);
  return half >= leastRadiusMm ? leastRadiusMm : leastRadiusMm - Math.sqrt(leastRadiusMm ** 2 - half ** 2);
}

/** How far inside the piece all that is cut lies, mm; negative where some of it does not. Infinity where nothing is cut. */
const leastDepth = (rings: readonly Ring[], cuts: readonly InsertCut[]): number =>
  cuts.reduce((least, { ring }) => {
    let own = least;
    for (let i = 0; i < ring.length; i += 2) own = Math.min(own, depthInside(rings, ring[i], ring[i + 1]));
    return own;
  }, Infinity);
