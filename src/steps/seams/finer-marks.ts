import type { CutMesh } from '../../mesh/lines/cut-along.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { topologyOf } from '../../mesh/topology.ts';
import type { EdgeWish } from '../../model/flatten-settings.ts';
import type { ScoredLine } from '../../model/score.ts';
import type { PlacedSetting, SeamMarks, SeamPath } from '../../model/seams.ts';

/** Two corners in numbers of the file. */
export type FilePair = readonly [number, number];

/** What names edges of the sculpt, brought to a mesh that was cut along its paths; lists that name nothing that was cut are the same objects. */
export interface FinerMarks {
  /** Edges alone: those marked, and those along the paths. */
  readonly seams: SeamMarks;
  readonly seamSettings: readonly PlacedSetting[];
  readonly edgeWishes: readonly EdgeWish[];
  readonly scores: readonly ScoredLine[];
}

/**
 * Brings marks and wishes to the finer mesh. Where an edge of the sculpt was cut they hold for all of its parts; pairs that are no edge stay as
 * they are. Paths become edges with the wishes they carry.
 * @param paths  one for each line that was cut.
 */
export function finerMarks(
  mesh: Mesh,
  cut: CutMesh,
  { edges, paths }: SeamMarks,
  { seamSettings, edgeWishes, scores }: Pick<FinerMarks, 'seamSettings' | 'edgeWishes' | 'scores'>,
): FinerMarks {
  const partsOf = edgeParts(mesh, cut);
  const pairsOfPath = cut.lines.map((line) => pairsAlong(cut, line));
  const seamsOfPaths = paths.flatMap((path, i) => settingsOf(cut, path, cut.lines[i], pairsOfPath[i]));
  const wishesOfPaths = paths.flatMap(({ holdLength, straight }, i): EdgeWish[] =>
    holdLength === undefined && straight === undefined
      ? []
      : pairsOfPath[i].map((edge) => ({
          edge,
          ...(holdLength === undefined ? {} : { holdLength }),
          ...(straight === undefined ? {} : { straight }),
        })),
  );
  const alongEdge = <T extends { readonly edge: FilePair }>(said: T): T[] =>
    partsOf(said.edge).map((edge) => (edge === said.edge ? said : { ...said, edge }));
  return {
    seams: { edges: [...edges.flatMap(partsOf), ...pairsOfPath.flat()], paths: [] },
    seamSettings: joined(seamSettings, alongEdge, seamsOfPaths),
    edgeWishes: joined(edgeWishes, alongEdge, wishesOfPaths),
    scores: joined(
      scores,
      (score) => {
        const own = score.edges.flatMap(partsOf);
        return own.length === score.edges.length ? [score] : [{ ...score, edges: own }];
      },
      [],
    ),
  };
}

/** The edges that an edge of the sculpt was cut into, in its own direction; the very pair where it was not cut. */
export function edgeParts(mesh: Mesh, cut: CutMesh): (pair: FilePair) => readonly FilePair[] {
  const topology = topologyOf(mesh);
  return (pair) => {
    const [v, w] = [mesh.vertexOfFile[pair[0]] ?? -1, mesh.vertexOfFile[pair[1]] ?? -1];
    const edge = topology.edgeBetween(v, w);
    const parts = edge < 0 ? undefined : cut.partsOfEdge.get(edge);
    if (parts === undefined) return [pair];
    const pairs = pairsAlong(cut, parts);
    return parts[0] === v ? pairs : pairs.reverse().map(([a, b]): FilePair => [b, a]);
  };
}

const pairsAlong = ({ mesh }: CutMesh, line: Uint32Array): FilePair[] =>
  Array.from(line.subarray(1), (v, i): FilePair => [mesh.fileVertex[line[i]], mesh.fileVertex[v]]);

/** Lists that nothing is changed in keep being the same, so that what was made of them is known again. */
function joined<T>(list: readonly T[], finer: (one: T) => readonly T[], more: readonly T[]): readonly T[] {
  const found = list.flatMap(finer);
  const isSame = more.length === 0 && found.length === list.length && found.every((one, i) => one === list[i]);
  return isSame ? list : [...found, ...more];
}

/** What a path says of the seams along it, said at each of its edges. Sides are named by triangles: both may lie on one polygon. */
function settingsOf(
  { mesh }: CutMesh,
  path: SeamPath,
  line: Uint32Array,
  pairs: readonly FilePair[],
): readonly PlacedSetting[] {
  const { kind, allowanceMm = 0, lapSide, lapUnder, standSide, steep } = path;
  if (kind === 'butt' && allowanceMm === 0 && steep === undefined) return [];
  const topology = topologyOf(mesh);
  const { halfedgeOfEdge, twin } = topology;
  const beside = (i: number, side: 'left' | 'right'): number => {
    const h = halfedgeOfEdge[topology.edgeBetween(line[i], line[i + 1])];
    const isAlong = mesh.triangles[h] === line[i];
    const wanted = isAlong === (side === 'left') ? h : twin[h];
    return wanted < 0 ? -1 : Math.floor(wanted / 3);
  };
  return pairs.map((edge, i) => ({
    edge,
    kind,
    allowanceMm,
    ...(lapUnder === undefined ? {} : { lapUnder }),
    ...(steep === undefined ? {} : { steep }),
    ...(lapSide === undefined ? {} : { lapTriangle: beside(i, lapSide) }),
    ...(standSide === undefined ? {} : { standTriangle: beside(i, standSide) }),
  }));
}
