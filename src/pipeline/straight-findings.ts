import type { Finding } from '../base/finding.ts';
import { cross3, deg, dot3, length3, pointAt3, sub3, type Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { StretchLimits } from '../model/foam-stock.ts';
import type { StraightRun } from '../steps/flatten/flatten-options.ts';
import type { CutSculpt } from './outcome.ts';
import type { PatchWishes } from './patch-wishes.ts';

/** A bow of a cut line that a maker sees against a straightedge, mm. */
const SEEN_BOW_MM = 0.2;

/**
 * What straight edges cost: a finding for each where the foam beside it must stretch more than it takes, or where its line still bows. An
 * edge that turns on the sculpt can only be straight by stretching or gathering the foam beside it.
 * @param flats   one per patch, as the wishes.
 * @param limits  of the foam, shop rules.
 */
export function straightFindings(
  mesh: Mesh,
  cut: Pick<CutSculpt, 'patches' | 'chains'>,
  flats: readonly (FlatPiece | null)[],
  wishes: readonly PatchWishes[],
  pieces: readonly FoamPiece[],
  limits: StretchLimits,
): readonly Finding[] {
  return pieces.flatMap((piece) => {
    const flat = flats[piece.patch];
    const { straightChains, options } = wishes[piece.patch];
    if (flat === null) return [];
    const { triangles, meshVertices } = cut.patches[piece.patch];
    return (options.straightRuns ?? []).flatMap((run, i): Finding[] => {
      const worstPct = worstBeside(triangles, flat, run);
      const bowMm = bowOf(flat.uv, run);
      const isTooMuch = worstPct > limits.tooMuchPct;
      if (!isTooMuch && bowMm <= SEEN_BOW_MM) return [];
      const vertices = Array.from(run.vertices, (v) => meshVertices[v]);
      const edges = vertices.slice(1).map((v, i) => [vertices[i], v] as const);
      const chain = cut.chains[straightChains[i]];
      const name = chain.kind === 'open' ? 'The open edge' : `Seam ${chain.letter}`;
      const turns = `turns by ${Math.round(deg(turnAlong(mesh, cut, piece.patch, run)))}° on the sculpt`;
      const cost = isTooMuch
        ? `the foam beside it would have to give by ${Math.round(worstPct)} %, over the ${limits.tooMuchPct} % it takes by shop rule`
        : '';
      const bow = bowMm > SEEN_BOW_MM ? `its cut line still bows by ${bowMm.toFixed(1)} mm` : '';
      return [
        {
          code: 'wish/straight-costs',
          severity: 'warning',
          text: `${name} of ${piece.name} is to be straight, but ${turns}: ${[cost, bow].filter((said) => said !== '').join(', and ')}. Let it curve, or part the piece where the edge turns.`,
          value: worstPct,
          limit: limits.tooMuchPct,
          unit: '%',
          where: { part: piece.part, piece: piece.id, seam: chain.id, edges },
        },
      ];
    });
  });
}

/** Greatest stretch or squash of the triangles that touch a run, per cent. */
function worstBeside(triangles: Uint32Array, { major, minor }: FlatPiece, { vertices }: StraightRun): number {
  const isOnRun = new Set(vertices);
  let worst = 0;
  for (let t = 0; t < major.length; t += 1) {
    if (![0, 1, 2].some((k) => isOnRun.has(triangles[3 * t + k]))) continue;
    worst = Math.max(worst, 100 * (major[t] - 1), 100 * (1 - minor[t]));
  }
  return worst;
}

/** Greatest distance of the cut line from the straight line between its ends, mm. */
function bowOf(uv: Float64Array, { vertices, outwardMm }: StraightRun): number {
  const last = vertices.length - 1;
  const [a, b] = [2 * vertices[0], 2 * vertices[last]];
  const [dx, dy] = [uv[b] - uv[a], uv[b + 1] - uv[a + 1]];
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) return 0;
  const places = Array.from(vertices, (v, i) => {
    const [x, y] = [uv[2 * v] - uv[a], uv[2 * v + 1] - uv[a + 1]];
    return { along: (dx * x + dy * y) / length, left: (dx * y - dy * x) / length - outwardMm[i] };
  });
  const [first, end] = [places[0], places[last]];
  const slope = (end.left - first.left) / length;
  return places.reduce((most, { along, left }) => Math.max(most, Math.abs(left - first.left - slope * along)), 0);
}

/** How much a run turns on the surface all in all, radians: what must be taken up beside it to make it straight. */
function turnAlong(
  mesh: Mesh,
  { patches }: Pick<CutSculpt, 'patches'>,
  patch: number,
  { vertices }: StraightRun,
): number {
  const { triangles, meshVertices } = patches[patch];
  const angles = new Map(Array.from(vertices.subarray(1, -1), (v) => [v, 0]));
  const pointOf = (corner: number) => pointAt3(mesh.positions, meshVertices[triangles[corner]]);
  for (let h = 0; h < triangles.length; h += 1) {
    const before = angles.get(triangles[h]);
    if (before === undefined) continue;
    const [next, last] = [h % 3 === 2 ? h - 2 : h + 1, h % 3 === 0 ? h + 2 : h - 1];
    angles.set(triangles[h], before + angleBetween(sub3(pointOf(next), pointOf(h)), sub3(pointOf(last), pointOf(h))));
  }
  let turn = 0;
  for (const angle of angles.values()) turn += Math.abs(Math.PI - angle);
  return turn;
}

const angleBetween = (a: Vec3, b: Vec3): number => Math.atan2(length3(cross3(a, b)), dot3(a, b));
