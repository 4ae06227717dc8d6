import { ringOfPoints } from '../../geom/ring.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Patch } from '../../model/patch.ts';
import type { OutlineLine, PieceOutline, PieceScore, ScoredLine } from '../../model/score.ts';

/** A line that runs along edges of the sculpt. */
type EdgeLine = Pick<ScoredLine, 'edges'>;

/** Lines found again on the patches. */
export interface FoundLines<Line extends EdgeLine> {
  /** One list per patch: runs of local vertices, each the run of one line. */
  readonly runs: readonly (readonly LineRun<Line>[])[];
  /** One per line: how many of its edges lie inside a patch, so that they can be cut or drawn there. */
  readonly inside: readonly number[];
}

interface LineRun<Line> {
  readonly line: Line;
  readonly vertices: readonly number[];
}

/**
 * Where lines run over patches. Edges between patches, or at an edge of one, are cut through anyway and are left out; so are pairs that are
 * no edges of the sculpt.
 */
export function findLines<Line extends EdgeLine>(
  mesh: Mesh,
  patches: readonly Patch[],
  lines: readonly Line[],
): FoundLines<Line> {
  const inside = lines.map(() => 0);
  if (lines.length === 0) return { runs: patches.map(() => []), inside };
  const wanted = new Set(lines.flatMap(({ edges }) => edges.map(([a, b]) => keyOf(a, b))));
  const runs = patches.map((patch) => {
    const found = edgesInside(mesh, patch, wanted);
    return lines.flatMap((line, i) => {
      const own = line.edges.flatMap(([a, b]) => {
        const edge = found.get(keyOf(a, b));
        // In the order the line names it, so that edges run on from each other.
        return edge === undefined
          ? []
          : [mesh.fileVertex[patch.meshVertices[edge[0]]] === a ? edge : edge.toReversed()];
      });
      inside[i] += own.length;
      return joined(own).map((vertices): LineRun<Line> => ({ line, vertices }));
    });
  });
  return { runs, inside };
}

/** The scored lines of a piece in its own frame. @param uv of every local vertex, mm. */
export const pieceScores = (runs: readonly LineRun<ScoredLine>[], uv: Float64Array): readonly PieceScore[] =>
  runs.map(({ line: { id, depthMm, openMm }, vertices }) => ({
    line: id,
    points: ringOfPoints(uv, Uint32Array.from(vertices)),
    depthMm,
    openMm,
  }));

/** The outlines on a piece, likewise. */
export const pieceOutlines = (runs: readonly LineRun<OutlineLine>[], uv: Float64Array): readonly PieceOutline[] =>
  runs.map(({ line: { area, name }, vertices }) => ({
    area,
    name,
    points: ringOfPoints(uv, Uint32Array.from(vertices)),
  }));

const keyOf = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Of the wanted edges those with a triangle of the patch on both sides, as local vertices, by the key of their file numbers. */
function edgesInside(mesh: Mesh, patch: Patch, wanted: ReadonlySet<string>): ReadonlyMap<string, readonly number[]> {
  const sides = new Map<string, { readonly edge: readonly number[]; readonly key: string; count: number }>();
  for (let i = 0; i < patch.triangles.length; i += 1) {
    const [v, w] = [patch.triangles[i], patch.triangles[i % 3 === 2 ? i - 2 : i + 1]];
    const key = keyOf(mesh.fileVertex[patch.meshVertices[v]], mesh.fileVertex[patch.meshVertices[w]]);
    if (!wanted.has(key)) continue;
    // By local numbers: along a dart the two sides of one edge of the sculpt are two edges of the patch.
    const local = keyOf(v, w);
    const known = sides.get(local);
    if (known === undefined) sides.set(local, { edge: [v, w], key, count: 1 });
    else known.count += 1;
  }
  return new Map([...sides.values()].flatMap(({ edge, key, count }) => (count === 2 ? [[key, edge] as const] : [])));
}

/** Edges that follow each other as runs of vertices. */
function joined(edges: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const runs: number[][] = [];
  for (const [from, to] of edges) {
    const last = runs.at(-1);
    if (last !== undefined && last[last.length - 1] === from) last.push(to);
    else runs.push([from, to]);
  }
  return runs;
}
