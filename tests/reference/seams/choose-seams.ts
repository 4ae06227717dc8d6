import { piecesOf, type CutPiece } from './cut-surface.ts';
import { regionsOf, type RegionChoice } from './regions.ts';
import { shortestWays, stepsTo, type Step } from './shortest-ways.ts';
import { distance, type Surface } from './surface.ts';

export interface SeamChoice extends RegionChoice {
  /** A place inside a piece that misses more angle than this to lie flat gets a dart, radians. */
  readonly dartFrom: number;
  /** How far round a corner its missing angle is gathered, as a share of the diagonal. */
  readonly dartReach: number;
  /** The most darts for the whole model. */
  readonly mostDarts: number;
}

/**
 * Seams for a test model, as a patient beginner might mark them: borders of regions that keep to creases, a slit from rim to rim where a
 * piece closes round a limb, darts to the places that bulge most.
 * @returns pairs of corners in file order, sorted; every piece they leave is a disc
 */
export function chooseSeams(surface: Surface, choice: SeamChoice): [number, number][] {
  const regions = regionsOf(surface, choice);
  const isCut = Uint8Array.from(surface.edges, ({ faces }) =>
    faces.length === 2 && regions[faces[0]] !== regions[faces[1]] ? 1 : 0,
  );
  slitRings(surface, isCut);
  addDarts(surface, isCut, choice);
  const pairs = surface.edges.flatMap(({ v, w }, e): [number, number][] => (isCut[e] === 1 ? [[v, w]] : []));
  return pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}

/** Cuts every piece with more than one border from one border to the next until all are discs. */
function slitRings(surface: Surface, isCut: Uint8Array): void {
  for (;;) {
    const ring = piecesOf(surface, isCut).find((piece) => piece.euler !== 1);
    if (ring === undefined) return;
    if (ring.borders.length < 2) throw new Error(`a piece of ${ring.faces.length} faces is closed or has a handle`);
    const [first, ...others] = ring.borders;
    const ways = waysInside(surface, ring, isCut, first);
    const goals = others.flat();
    const goal = goals.reduce((best, v) => (ways.cost[v] < ways.cost[best] ? v : best), goals[0]);
    const path = stepsTo(ways, goal);
    if (path.length === 0) throw new Error('two borders of a piece touch in a corner');
    for (const e of path) isCut[e] = 1;
  }
}

/** Ways along edges inside a piece; none runs through a corner on a border, so that the cut ends there. */
function waysInside(surface: Surface, piece: CutPiece, isCut: Uint8Array, starts: readonly number[]) {
  const onBorder = new Set(piece.borders.flat());
  const isStart = new Set(starts);
  const steps = new Map<number, Step[]>();
  for (const e of new Set(piece.faces.flatMap((f) => surface.edgesOfFace[f]))) {
    const { v, w, faces, length, fold } = surface.edges[e];
    if (isCut[e] === 1 || faces.length !== 2) continue;
    // A crease is the better place for a cut.
    const cost = length / (1 + fold);
    steps.set(v, [...(steps.get(v) ?? []), { to: w, cost, by: e }]);
    steps.set(w, [...(steps.get(w) ?? []), { to: v, cost, by: e }]);
  }
  return shortestWays(surface.positions.length, [...isStart], (v) =>
    onBorder.has(v) && !isStart.has(v) ? [] : (steps.get(v) ?? []).filter(({ to }) => !isStart.has(to)),
  );
}

/** One dart after another, each from the nearest border to the corner round which most angle is missing. */
function addDarts(surface: Surface, isCut: Uint8Array, choice: SeamChoice): void {
  // A dart changes one piece; the others bulge as before.
  const known = new Map<string, { corner: number; angle: number }>();
  for (let darts = 0; darts < choice.mostDarts; darts += 1) {
    const bulges = piecesOf(surface, isCut).map((piece) => {
      const key = `${piece.faces[0]} ${piece.borders.map((border) => border.length).join(' ')}`;
      const bulge = known.get(key) ?? bulgeOf(surface, piece, choice.dartReach * surface.diagonal);
      known.set(key, bulge);
      return { piece, ...bulge };
    });
    const worst = bulges.reduce((a, b) => (b.angle > a.angle ? b : a));
    if (worst.angle < choice.dartFrom) return;
    const path = stepsTo(waysInside(surface, worst.piece, isCut, worst.piece.borders.flat()), worst.corner);
    if (path.length === 0) return;
    for (const e of path) isCut[e] = 1;
  }
}

/** The corner inside a piece round which most angle is missing. Where there is too much of it a cut would lay its sides on each other. */
function bulgeOf(surface: Surface, piece: CutPiece, reach: number): { corner: number; angle: number } {
  const onBorder = new Set(piece.borders.flat());
  const inside = [...new Set(piece.faces.flatMap((f) => surface.faces[f]))].filter((v) => !onBorder.has(v));
  let [corner, angle] = [-1, 0];
  for (const v of inside) {
    let sum = 0;
    for (const w of inside) {
      const away = distance(surface.positions[v], surface.positions[w]);
      if (away < reach) sum += surface.defects[w] * (1 - away / reach);
    }
    if (sum > angle) [corner, angle] = [v, sum];
  }
  return { corner, angle };
}
