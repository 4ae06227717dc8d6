import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { SeamMarks, SeamPath, SurfacePoint } from '../model/seams.ts';
import type { MeshPoint } from '../model/surface-line.ts';
import type { SculptPart } from '../project/project.ts';
import { edgeParts } from '../steps/seams/finer-marks.ts';
import { facePolygons, surfacePointOf } from '../steps/seams/surface-points.ts';
import type { DrawnSurface } from './drawn-lines.ts';
import type { SizedSculpt } from './outcome.ts';
import type { SeamWishes } from './seam-wishes.ts';

/** What seams are sought on: the sculpt, or that cut finer along the paths drawn on it. */
export interface SearchSurface {
  readonly mesh: Mesh;
  /** What was wished of edges and pieces, brought to the mesh. */
  readonly part: SculptPart;
  /** Adds that paths stay as they are, and that no seam runs along an edge which only the cutting has made. */
  withPaths(wishes: Partial<SeamWishes>): Partial<SeamWishes>;
  /** An array per edge of the sculpt, naming edges of it, for the mesh: -1 where it names none. */
  edgesOnMesh(ofEdge: Int32Array): Int32Array;
  /** Seams of the mesh in the words of the file. Parts of an edge that a path has cut become paths of their own. */
  marksOf(isSeam: Uint8Array): SeamMarks;
}

/**
 * @param drawn   null where no path is drawn.
 * @param isKept  tells of a path whether it stays: then it is a seam whatever is sought.
 */
export function searchSurface(
  sculpt: SizedSculpt,
  part: SculptPart,
  drawn: DrawnSurface | null,
  isKept: (path: SeamPath) => boolean,
): SearchSurface {
  if (drawn === null) return onSculpt(sculpt, part, isKept);
  const { mesh, cut, pathOfLine } = drawn;
  const topology = topologyOf(mesh);
  const parts = partsOfEdges(sculpt.mesh, cut.partsOfEdge);
  const edgesAlong = (line: ArrayLike<number>): number[] =>
    Array.from({ length: Math.max(0, line.length - 1) }, (_, i) => topology.edgeBetween(line[i], line[i + 1]));
  const onPath = new Uint8Array(topology.edgeCount);
  const keptLines = cut.lines.filter((_, i) => isKept(part.seams.paths[pathOfLine[i]]));
  for (const e of keptLines.flatMap(edgesAlong)) onPath[e] = 1;
  const known = onPath.slice();
  for (const line of parts) for (const e of edgesAlong(line)) known[e] = 1;
  const partsOf = edgeParts(sculpt.mesh, cut);
  const edgeOnMesh = parts.map((line) => (line.length === 2 ? topology.edgeBetween(line[0], line[1]) : -1));
  const { heldSeams } = part;
  return {
    mesh,
    part: {
      ...part,
      seams: drawn.part.seams,
      ...(heldSeams === undefined ? {} : { heldSeams: heldSeams.flatMap(partsOf) }),
    },
    withPaths: ({ weights = new Float64Array(topology.edgeCount).fill(1), locked = onPath, ...others }) => ({
      ...others,
      weights: weights.map((weight, e) => (known[e] === 1 ? weight : Infinity)),
      locked: locked.map((value, e) => (onPath[e] === 1 ? 1 : value)),
    }),
    edgesOnMesh(ofEdge) {
      const onMesh = new Int32Array(topology.edgeCount).fill(-1);
      ofEdge.forEach((other, e) => {
        if (edgeOnMesh[e] >= 0 && other >= 0) onMesh[edgeOnMesh[e]] = edgeOnMesh[other];
      });
      return onMesh;
    },
    marksOf(isSeam) {
      const edges: (readonly [number, number])[] = [];
      const paths: SeamPath[] = part.seams.paths.filter(isKept);
      const polygons = facePolygons(sculpt.model);
      const count = sculpt.mesh.positions.length / 3;
      const placeOf = (v: number): MeshPoint => (v < count ? { at: 'vertex', vertex: v } : cut.added[v - count]);
      const pointOf = (v: number): SurfacePoint => surfacePointOf(sculpt.mesh, polygons, placeOf(v));
      for (const line of parts) {
        const own = edgesAlong(line);
        if (own.every((e) => isSeam[e] === 1)) {
          if (own.some((e) => onPath[e] === 0)) edges.push(filePair(sculpt.mesh, line[0], line[line.length - 1]));
          continue;
        }
        for (const run of runsOf(own.map((e) => isSeam[e] === 1 && onPath[e] === 0)))
          paths.push({ kind: 'butt', points: [pointOf(line[run.from]), pointOf(line[run.to])] });
      }
      return { edges, paths };
    },
  };
}

function onSculpt(
  { mesh }: SizedSculpt,
  part: SearchSurface['part'],
  isKept: (path: SeamPath) => boolean,
): SearchSurface {
  const { edgeVertices } = topologyOf(mesh);
  return {
    mesh,
    part,
    withPaths: (wishes) => wishes,
    edgesOnMesh: (ofEdge) => ofEdge,
    marksOf: (isSeam) => ({
      edges: [...isSeam.keys()].flatMap((e) =>
        isSeam[e] === 1 ? [filePair(mesh, edgeVertices[2 * e], edgeVertices[2 * e + 1])] : [],
      ),
      // Those that have lost their place are not on the mesh, but still the maker's.
      paths: part.seams.paths.filter(isKept),
    }),
  };
}

/** Per edge of the sculpt its vertices in the finer mesh, from its first end to its second. */
function partsOfEdges(sculpt: Mesh, cut: ReadonlyMap<number, ArrayLike<number>>): readonly ArrayLike<number>[] {
  const { edgeCount, edgeVertices } = topologyOf(sculpt);
  return Array.from({ length: edgeCount }, (_, e) => cut.get(e) ?? [edgeVertices[2 * e], edgeVertices[2 * e + 1]]);
}

const filePair = ({ fileVertex }: Mesh, v: number, w: number): readonly [number, number] => [
  fileVertex[v],
  fileVertex[w],
];

/** Runs of true values: from which place to behind which. */
function runsOf(flags: readonly boolean[]): { readonly from: number; readonly to: number }[] {
  const runs: { from: number; to: number }[] = [];
  flags.forEach((flag, i) => {
    if (!flag) return;
    const last = runs.at(-1);
    if (last?.to === i) last.to = i + 1;
    else runs.push({ from: i, to: i + 1 });
  });
  return runs;
}
