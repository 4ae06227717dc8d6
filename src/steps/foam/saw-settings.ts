import type { PieceEdge } from '../../model/foam-piece.ts';
import type { HandCut, SawSetting, SawSettings } from '../../model/saw-settings.ts';

/** An edge is cut true enough by a table that is off by this much, degrees: foam gives, and scales on tables are no finer [J]. */
export const SAME_SETTING_DEG = 1;

/** What is left of rounding in a bevel, degrees. */
const ROUNDING_DEG = 1e-6;

/** The bevels along one edge, least and greatest, degrees. */
interface Lean {
  readonly edge: number;
  readonly least: number;
  readonly most: number;
}

/**
 * Which edges of a piece can be cut with one setting of the table, with as few settings as will do.
 *
 * A setting serves an edge whose bevel stays within {@link SAME_SETTING_DEG} of it all along, and leans to the same side. Edges that square
 * serves are cut square; the others are taken from the flattest up, each setting serving every edge it can (the least number of points that
 * stab all intervals), and is then put midway between the least and the greatest bevel it serves.
 * @param limitDeg the most that blade or table lean, degrees: steeper edges are cut by hand.
 */
export function sawSettings(edges: readonly Pick<PieceEdge, 'bevelDeg'>[], limitDeg: number): SawSettings {
  const leans = edges.map(({ bevelDeg }, edge): Lean => ({
    edge,
    least: bevelDeg.reduce((a, b) => Math.min(a, b), Infinity),
    most: bevelDeg.reduce((a, b) => Math.max(a, b), -Infinity),
  }));
  const square: Lean[] = [];
  const inward: Lean[] = [];
  const outward: Lean[] = [];
  const byHand: HandCut[] = [];
  for (const lean of leans) {
    const steepest = Math.max(Math.abs(lean.least), Math.abs(lean.most));
    const isSteep = steepest > limitDeg + ROUNDING_DEG;
    const isSteady = lean.most - lean.least <= 2 * SAME_SETTING_DEG + ROUNDING_DEG;
    const turnsOver = lean.least < -ROUNDING_DEG && lean.most > ROUNDING_DEG;
    if (steepest <= SAME_SETTING_DEG + ROUNDING_DEG) square.push(lean);
    else if (isSteep || !isSteady || turnsOver) byHand.push(handCut(edges[lean.edge].bevelDeg, lean, isSteep));
    else (lean.most > 0 ? inward : outward).push(lean);
  }
  const settings = [
    ...(square.length === 0 ? [] : [{ bevelDeg: 0, edges: square.map(({ edge }) => edge) }]),
    ...fewestSettings(inward, 1),
    ...fewestSettings(outward, -1),
  ];
  // The sort keeps what leans in before what leans out where both lean alike.
  return { settings: settings.sort((a, b) => Math.abs(a.bevelDeg) - Math.abs(b.bevelDeg)), byHand };
}

function handCut(bevelDeg: Float64Array, { edge, least, most }: Lean, isSteep: boolean): HandCut {
  return {
    edge,
    fromDeg: bevelDeg[0],
    toDeg: bevelDeg[bevelDeg.length - 1],
    leastDeg: least,
    mostDeg: most,
    why: isSteep ? 'steep' : 'changes',
  };
}

/** @param sign 1 for edges that lean in, -1 for those that lean out. */
function fewestSettings(leans: readonly Lean[], sign: 1 | -1): SawSetting[] {
  let left = leans
    .map(({ edge, least, most }) => (sign > 0 ? { edge, least, most } : { edge, least: -most, most: -least }))
    .sort((a, b) => a.least - b.least || a.edge - b.edge);
  const settings: SawSetting[] = [];
  while (left.length > 0) {
    const highest = left[0].least + SAME_SETTING_DEG + ROUNDING_DEG;
    const isServed = ({ most }: Lean): boolean => most - SAME_SETTING_DEG <= highest;
    const served = left.filter(isServed);
    const most = Math.max(...served.map((lean) => lean.most));
    settings.push({
      bevelDeg: (sign * (left[0].least + most)) / 2,
      edges: served.map(({ edge }) => edge).sort((a, b) => a - b),
    });
    left = left.filter((lean) => !isServed(lean));
  }
  return settings;
}
