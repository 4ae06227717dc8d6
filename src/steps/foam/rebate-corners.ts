import { clipPlaces, type Finding } from '../../base/finding.ts';
import { rad } from '../../geom/vec.ts';
import type { SeamChain } from '../../model/seams.ts';
import type { SeamCut } from './seam-cuts.ts';

/** Pieces at a bevelled seam that leans less than this lie in one plane: they make no corner with what stands on both of them. */
const FLAT_RAD = rad(1);

/** A seam that ends at a corner: its two patches, and which of them stands on the other; null at a bevelled one. */
interface Spoke {
  readonly chain: SeamChain;
  readonly stands: number | null;
}

/**
 * Corners where rebates leave a hole: those where of the two pieces at a bevelled seam only one stands on a third, or only one runs on past it;
 * and those where the pieces stand on each other in a ring, so that none fills the corner. Where one order runs through all pieces of a
 * corner, every rebate closes.
 * @param sheetMm  thickness of the thickest foam: no hole is wider.
 */
export function rebateCornerFindings(
  part: string,
  chains: readonly SeamChain[],
  cuts: readonly SeamCut[],
  sheetMm: number,
): readonly Finding[] {
  const mixed: [number, readonly Spoke[]][] = [];
  const rings: [number, readonly Spoke[]][] = [];
  for (const [vertex, spokes] of cornersOf(chains, cuts)) {
    const rebates = spokes.filter(({ stands }) => stands !== null);
    if (spokes.length < 3 || rebates.length === 0) continue;
    if (isUneven(spokes)) mixed.push([vertex, spokes]);
    else if (rebates.length === spokes.length && isRing(spokes)) rings.push([vertex, spokes]);
  }
  const hole = `up to ${Math.round(10 * sheetMm) / 10} mm wide`;
  return [
    ...told(
      mixed,
      part,
      'foam/rebate-corner',
      (where, letters) =>
        `Seams ${letters} meet ${where}, some as rebates and some bevelled, which leaves a hole ${hole} on the back: make all of them rebates, or none, or fill it.`,
    ),
    ...told(
      rings,
      part,
      'foam/rebate-ring',
      (where, letters) =>
        `The pieces at seams ${letters} stand on each other in a ring ${where}, which leaves a hole ${hole}: let the other piece stand at one of these seams.`,
    ),
  ];
}

/** Seams by the corner they end at. */
function cornersOf(chains: readonly SeamChain[], cuts: readonly SeamCut[]): ReadonlyMap<number, readonly Spoke[]> {
  const corners = new Map<number, Spoke[]>();
  chains.forEach((chain, c) => {
    const { joining, sides } = cuts[c];
    if (chain.closed || joining === 'square') return;
    const last = chain.vertices.length - 1;
    const ends = [
      [chain.vertices[0], sides[0].bevel.atStart[0]],
      [chain.vertices[last], sides[0].bevel.atEnd[last - 1]],
    ] as const;
    for (const [vertex, bevel] of ends) {
      const isRebate = joining === 'rebate' && chain.standSide !== undefined;
      if (!isRebate && Math.abs(bevel) < FLAT_RAD) continue;
      const stands = isRebate ? chain.sides[chain.standSide].patch : null;
      const known = corners.get(vertex);
      if (known === undefined) corners.set(vertex, [{ chain, stands }]);
      else known.push({ chain, stands });
    }
  });
  return corners;
}

/**
 * True where one of the two pieces at a bevelled seam was made shorter or longer at its other seam of the corner and the other was not: the plane
 * between them ends at different heights.
 */
function isUneven(spokes: readonly Spoke[]): boolean {
  return spokes.some((spoke) => {
    if (spoke.stands !== null) return false;
    const roles = spoke.chain.sides.map(({ patch }) => {
      const other = spokes.find((one) => one !== spoke && one.chain.sides.some((side) => side.patch === patch));
      return other === undefined || other.stands === null ? 'bevelled' : other.stands === patch ? 'stands' : 'runs on';
    });
    return roles[0] !== roles[1];
  });
}

/** True where every piece of the corner stands on just one of the others: none runs on past both its neighbours. */
function isRing(spokes: readonly Spoke[]): boolean {
  const standing = new Set(spokes.map(({ stands }) => stands));
  const patches = new Set(spokes.flatMap(({ chain }) => chain.sides.map(({ patch }) => patch)));
  return standing.size === patches.size;
}

function told(
  corners: readonly (readonly [number, readonly Spoke[]])[],
  part: string,
  code: string,
  text: (where: string, letters: string) => string,
): readonly Finding[] {
  if (corners.length === 0) return [];
  const letters = [...new Set(corners[0][1].map(({ chain }) => chain.letter))].sort();
  const more = corners.length - 1;
  const where = `at a corner${more === 0 ? '' : `, and others at ${more} more`}`;
  const list = `${letters.slice(0, -1).join(', ')} and ${letters[letters.length - 1]}`;
  return [
    {
      code,
      severity: 'warning',
      text: text(where, list),
      value: corners.length,
      where: { part, seam: corners[0][1][0].chain.id, vertices: clipPlaces(corners.map(([vertex]) => vertex)) },
    },
  ];
}
