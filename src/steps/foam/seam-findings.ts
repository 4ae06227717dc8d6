import { clipPlaces, type Finding } from '../../base/finding.ts';
import { SEAM_DIFFERENCE_MM, SEAM_DIFFERENCE_SHARE, SEAM_SLIP_BETWEEN_MARKS_MM } from '../../base/tolerance.ts';
import { deg, rad } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { ChainBevels } from './chain-bevels.ts';
import type { SeamWalk } from './seam-walk.ts';
import { steepOffers } from './steep-offers.ts';

/** A seam as its findings call it. */
export const seamName = (chain: SeamChain): string => `Seam ${chain.letter}`;

/** Edges that lean more than a blade or a saw table can, one finding for each seam, with what can be done at its sharpest place. */
export function bevelFinding(
  mesh: Mesh,
  part: string,
  chain: SeamChain,
  bevels: ChainBevels,
  limitDeg: number,
  thicknessMm: number,
): Finding | null {
  const leans = Array.from(bevels.atStart, (bevel, i) => deg(Math.max(Math.abs(bevel), Math.abs(bevels.atEnd[i]))));
  const most = leans.reduce((a, b) => Math.max(a, b), 0);
  // Half a fold of 90 degrees is 45 to the last digit only on paper.
  if (most <= limitDeg + ROUNDING_DEG) return null;
  const steep = [...leans.keys()].filter((i) => leans[i] > limitDeg + ROUNDING_DEG);
  const worst = steep.reduce((a, b) => (leans[b] > leans[a] ? b : a), steep[0]);
  return {
    code: 'foam/bevel-steep',
    severity: 'warning',
    text: `${seamName(chain)} is so sharp that its edges lean ${degrees(most)} from square, and a blade or saw table leans at most ${degrees(limitDeg)}: ${offersText(steepBevel(bevels, worst), limitDeg, thicknessMm)}.`,
    value: most,
    limit: limitDeg,
    unit: 'deg',
    where: {
      part,
      seam: chain.id,
      edges: clipPlaces(steep.map((i) => [chain.vertices[i], chain.vertices[i + 1]] as const)),
      point: middleOf(mesh, chain.vertices[worst], chain.vertices[worst + 1]),
    },
  };
}

export const ROUNDING_DEG = 1e-6;

/** The steeper end of an edge, radians. */
const steepBevel = ({ atStart, atEnd }: ChainBevels, i: number): number =>
  Math.abs(atStart[i]) > Math.abs(atEnd[i]) ? atStart[i] : atEnd[i];

/** To the tenth where there is one. */
const short = (value: number): string => `${Math.round(10 * value) / 10}`;
export const degrees = (angleDeg: number): string => `${short(angleDeg)}°`;
export const mm = (length: number): string => `${short(length)} mm`;

function offersText(bevel: number, limitDeg: number, thicknessMm: number): string {
  const { split, fill, trimMm } = steepOffers(bevel, rad(limitDeg), thicknessMm);
  const strips = split.seams === 2 ? 'a strip between them' : `${split.seams - 1} strips between them, each`;
  const left = degrees(deg(Math.abs(split.bevel)));
  return [
    `spread the fold over ${NUMBERS[split.seams] ?? split.seams} seams with ${strips} ${mm(split.faceMm)} wide on the face and ${mm(split.backMm)} on the back, which leaves bevels of ${left}`,
    `or cut both edges at ${degrees(limitDeg)}, glue them where they touch and fill the gap, ${mm(fill.gapMm)} wide at the ${fill.openOn}`,
    `or cover that gap with a thin trim strip ${mm(trimMm)} wide`,
  ].join('; ');
}

const NUMBERS: Readonly<Record<number, string>> = { 2: 'two', 3: 'three', 4: 'four' };

/** Edges of a seam as places of a finding. */
export const edgesOf = ({ vertices }: SeamChain) =>
  clipPlaces(Array.from({ length: vertices.length - 1 }, (_, i) => [vertices[i], vertices[i + 1]] as const));

/** Sides of unlike length, and sides that run apart between two marks (foam model 4: limits of a shop's eye and tape). */
export function walkFindings(mesh: Mesh, part: string, chain: SeamChain, walk: SeamWalk): readonly Finding[] {
  const findings: Finding[] = [];
  const longest = Math.max(...walk.lengthMm);
  const limit = Math.max(SEAM_DIFFERENCE_MM, SEAM_DIFFERENCE_SHARE * longest);
  const edges = edgesOf(chain);
  if (walk.differenceMm > limit) {
    findings.push({
      code: 'foam/seam-difference',
      severity: 'warning',
      text: `The two sides of seam ${chain.letter} differ by ${walk.differenceMm.toFixed(1)} mm over ${longest.toFixed(0)} mm: ease the longer one in between the marks, or move the seam where the surface bends less both ways.`,
      value: walk.differenceMm,
      limit,
      unit: 'mm',
      where: { part, seam: chain.id, edges },
    });
  }
  if (walk.worstSlipMm > SEAM_SLIP_BETWEEN_MARKS_MM) {
    const v = 3 * chain.vertices[walk.worstAt];
    findings.push({
      code: 'foam/seam-slip',
      severity: 'warning',
      text: `${seamName(chain)} runs ${walk.worstSlipMm.toFixed(1)} mm apart between two marks: warm the shorter side and stretch it to meet, or part the piece once more.`,
      value: walk.worstSlipMm,
      limit: SEAM_SLIP_BETWEEN_MARKS_MM,
      unit: 'mm',
      where: { part, seam: chain.id, edges, point: [mesh.positions[v], mesh.positions[v + 1], mesh.positions[v + 2]] },
    });
  }
  return findings;
}

function middleOf(mesh: Mesh, v: number, w: number): [number, number, number] {
  const { positions } = mesh;
  return [
    (positions[3 * v] + positions[3 * w]) / 2,
    (positions[3 * v + 1] + positions[3 * w + 1]) / 2,
    (positions[3 * v + 2] + positions[3 * w + 2]) / 2,
  ];
}
