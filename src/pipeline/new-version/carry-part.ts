import type { Finding } from '../../base/finding.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { pointAt3 } from '../../geom/vec.ts';
import { topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { EdgeWish, Region } from '../../model/flatten-settings.ts';
import type { PieceSetting } from '../../model/foam-settings.ts';
import type { ScoredLine } from '../../model/score.ts';
import type { PathSide, SeamPath, SeamSetting } from '../../model/seams.ts';
import type { EdgePair } from '../../project/commands.ts';
import type { SculptPart, SimplifyChoice, SourceRef } from '../../project/project.ts';
import { cutPatches } from '../../steps/cut/cut-patches.ts';
import { edgePath } from '../../steps/seams/edge-path.ts';
import { seamSetFromMarks } from '../../steps/seams/seam-set.ts';
import { CarriedPlaces } from './carried-places.ts';
import { carrySeams, type CarriedSeams } from './carry-seams.ts';
import { lostFinding, type Lost } from './lost-findings.ts';
import type { SculptSide } from './sculpt-side.ts';

/** A part on a new version of its sculpt. */
export interface CarriedPart {
  readonly part: SculptPart;
  /** What could not be carried, each kind once. */
  readonly findings: readonly Finding[];
  /** How much of the seams followed: edges that are edges again, and lines across faces that others have become. */
  readonly keptEdges: number;
  readonly newPaths: number;
}

/**
 * Brings a part to a new version of its sculpt: what it says of corners, edges, polygons and places of the file is said of those that lie in the same
 * place, looking the same way. Edges that are no edges any more become lines across faces. A version with the very same polygons keeps all
 * numbers, however its corners moved.
 * @param source  the new version's file.
 * @param mostMm  what is farther away than this is lost.
 */
export function* carryPart(
  part: SculptPart,
  before: SculptSide,
  after: SculptSide,
  source: SourceRef,
  mostMm: number,
): Stepwise<CarriedPart> {
  if (hasSamePolygons(before, after))
    return { part: { ...part, source }, findings: [], keptEdges: part.seams.edges.length, newPaths: 0 };
  const places = new CarriedPlaces(before, after, mostMm);
  const seams = yield* carrySeams(places, part.seams.edges, part.seams.paths);
  const lost: Lost[] = [];
  const atEdge = (pair: EdgePair) => {
    const v = before.mesh.vertexOfFile[pair[0]] ?? -1;
    return v < 0 ? null : pointAt3(before.mesh.positions, v);
  };
  const lose = (what: Lost['what'], pair?: EdgePair): void => {
    lost.push({ what, at: pair === undefined ? null : atEdge(pair) });
  };
  for (const [v] of seams.lost) lost.push({ what: 'edge', at: pointAt3(before.mesh.positions, v) });
  for (const _ of seams.brokenPaths) lose('path');
  const wished = [...seams.paths];
  const { settings, edgeWishes } = carryWishes(part, places, seams, wished, lose);
  const held = (part.heldSeams ?? []).flatMap((pair): EdgePair[] => {
    const fate = seams.fateOf(pair);
    if (fate?.as === 'path') wished[fate.path] = { ...wished[fate.path], locked: true };
    return fate?.as === 'edge' ? [fate.pair] : [];
  });
  yield;
  const regions = yield* carryRegions(part.regions, places, () => lose('area'));
  const { heldSeams: _, scores: __, fillets = [], ...rest } = part;
  // A seam is named by its pieces there, and pieces by polygons: nothing tells which it has become.
  for (const ___ of fillets) lose('fillet');
  const scores = (part.scores ?? []).flatMap((line) => carryScore(places, line, () => lose('score', line.edges[0])));
  const openings = part.worn?.openings?.flatMap((opening) => {
    const vertex = places.nearVertexOf(before.mesh.vertexOfFile[opening.vertex] ?? -1);
    if (vertex < 0) lose('opening');
    return vertex < 0 ? [] : [{ ...opening, vertex: after.mesh.fileVertex[vertex] }];
  });
  return {
    part: {
      ...rest,
      source,
      seams: { edges: seams.edges, paths: wished },
      seamSettings: settings,
      edgeWishes,
      ...(held.length === 0 ? {} : { heldSeams: held }),
      ...(scores.length === 0 ? {} : { scores }),
      ...(part.simplify === undefined ? {} : { simplify: carrySimplify(part.simplify, places) }),
      regions,
      pieceSettings: carryPieces(part.pieceSettings, places, () => lose('piece')),
      ...(part.worn === undefined ? {} : { worn: openings === undefined ? part.worn : { ...part.worn, openings } }),
    },
    findings: lostFinding(lost, mostMm),
    keptEdges: seams.edges.length,
    newPaths: seams.paths.length - seams.pathsOf.flat().length,
  };
}

/** True where both files name the same polygons by the same corners. */
function hasSamePolygons({ model: a }: SculptSide, { model: b }: SculptSide): boolean {
  const same = (p: ArrayLike<number>, q: ArrayLike<number>): boolean => {
    if (p.length !== q.length) return false;
    for (let i = 0; i < p.length; i += 1) if (p[i] !== q[i]) return false;
    return true;
  };
  return (
    same(a.faceStarts, b.faceStarts) &&
    same(a.faceVertices, b.faceVertices) &&
    same(a.faceNumber, b.faceNumber) &&
    same(a.vertexOfFile, b.vertexOfFile)
  );
}

/** Wishes for seams and edges: those of edges that became paths are carried by the paths. @param paths  is changed. */
function carryWishes(
  part: SculptPart,
  places: CarriedPlaces,
  seams: CarriedSeams,
  paths: SeamPath[],
  lose: (what: Lost['what'], pair?: EdgePair) => void,
): { readonly settings: readonly SeamSetting[]; readonly edgeWishes: readonly EdgeWish[] } {
  const { before, after } = places;
  const sideOf = sidesOfEdges(part, places);
  const edgeOf = (pair: EdgePair): EdgePair | null => {
    const [a, b] = pair.map((n) => places.vertexOf(before.mesh.vertexOfFile[n] ?? -1));
    const isEdge = a >= 0 && b >= 0 && topologyOf(after.mesh).edgeBetween(a, b) >= 0;
    return isEdge ? [after.mesh.fileVertex[a], after.mesh.fileVertex[b]] : null;
  };
  const settings = part.seamSettings.flatMap((setting): SeamSetting[] => {
    const { edge, lapFace, standFace, ...join } = setting;
    const fate = seams.fateOf(edge);
    if (fate?.as === 'path') {
      const lapSide = sideOf(edge, lapFace, fate.isBack);
      const standSide = sideOf(edge, standFace, fate.isBack);
      paths[fate.path] = {
        ...paths[fate.path],
        ...join,
        ...(lapSide === null ? {} : { lapSide }),
        ...(standSide === null ? {} : { standSide }),
      };
      return [];
    }
    const own = edgeOf(edge);
    if (own === null) {
      lose('seam wish', edge);
      return [];
    }
    const faceOf = (name: 'lapFace' | 'standFace', face: number | undefined) => {
      const found = face === undefined ? -1 : places.ofFace(face);
      return found < 0 ? {} : { [name]: found };
    };
    return [{ ...join, edge: own, ...faceOf('lapFace', lapFace), ...faceOf('standFace', standFace) }];
  });
  const edgeWishes = part.edgeWishes.flatMap((wish): EdgeWish[] => {
    const { edge, ...asks } = wish;
    const fate = seams.fateOf(edge);
    if (fate?.as === 'path') {
      paths[fate.path] = { ...paths[fate.path], ...asks };
      return [];
    }
    const own = edgeOf(edge);
    if (own === null) lose('edge wish', edge);
    return own === null ? [] : [{ ...wish, edge: own }];
  });
  return { settings, edgeWishes };
}

/** Tells on which side of a path that an edge has become a polygon's piece lay; null where it lay on neither. */
function sidesOfEdges(
  part: SculptPart,
  { before }: CarriedPlaces,
): (edge: EdgePair, face: number | undefined, isBack: boolean) => PathSide | null {
  const { mesh } = before;
  const topology = topologyOf(mesh);
  let patches: Int32Array | null = null;
  const patchOf = (): Int32Array => {
    const seams = seamSetFromMarks(mesh, { edges: part.seams.edges, paths: [] }, false);
    if (!seams.ok) throw new Error('carryPart: marks that no sculpt has');
    return cutPatches(mesh, seams.value, mesh.positions).patchOfTriangle;
  };
  return (edge, face, isBack) => {
    if (face === undefined) return null;
    patches ??= patchOf();
    const [v, w] = edge.map((n) => mesh.vertexOfFile[n] ?? -1).sort((a, b) => a - b);
    const index = topology.edgeBetween(v, w);
    const own = mesh.faceOfTriangle.indexOf(face);
    if (index < 0 || own < 0) return null;
    const first = topology.halfedgeOfEdge[index];
    // The half-edge that runs as the path does has its left on the path's left.
    const isAlong = (mesh.triangles[first] === v) === !isBack;
    const left = isAlong ? first : topology.twin[first];
    const right = isAlong ? topology.twin[first] : first;
    if (left >= 0 && patches[triangleOfHalfedge(left)] === patches[own]) return 'left';
    return right >= 0 && patches[triangleOfHalfedge(right)] === patches[own] ? 'right' : null;
  };
}

/** A scored line along edges; where those are gone along the shortest way over others. */
function carryScore(places: CarriedPlaces, line: ScoredLine, lose: () => void): ScoredLine[] {
  const { mesh } = places.after;
  const edges: EdgePair[] = [];
  for (const pair of line.edges) {
    const [a, b] = pair.map((n) => places.nearVertexOf(places.before.mesh.vertexOfFile[n] ?? -1));
    if (a < 0 || b < 0) {
      lose();
      continue;
    }
    const way = edgePath(mesh, a, b);
    if (!way.ok) continue;
    way.value.slice(1).forEach((v, i) => edges.push([mesh.fileVertex[way.value[i]], mesh.fileVertex[v]]));
  }
  return edges.length === 0 ? [] : [{ ...line, edges }];
}

/** Areas are the polygons of the new version that lie on theirs. */
function* carryRegions(
  regions: readonly Region[],
  places: CarriedPlaces,
  lose: () => void,
): Stepwise<readonly Region[]> {
  if (regions.length === 0) return regions;
  const earlier = yield* places.earlierFaces();
  const { faceOfTriangle } = places.after.mesh;
  return regions.flatMap((region) => {
    const own = new Set(region.faces);
    const faces = new Set<number>();
    earlier.forEach((face, t) => {
      if (own.has(face)) faces.add(faceOfTriangle[t]);
    });
    if (faces.size > 0) return [{ ...region, faces: [...faces].sort((a, b) => a - b) }];
    lose();
    return [];
  });
}

/** Corners that are to stay where the sculpt is made simpler. */
function carrySimplify(simplify: SimplifyChoice, places: CarriedPlaces): SimplifyChoice {
  const { fileVertex } = places.after.mesh;
  const kept = simplify.keep
    .map((n) => places.vertexOf(places.before.mesh.vertexOfFile[n] ?? -1))
    .filter((v) => v >= 0)
    .map((v) => fileVertex[v]);
  return { ...simplify, keep: [...new Set(kept)].sort((a, b) => a - b) };
}

function carryPieces(
  settings: readonly PieceSetting[],
  places: CarriedPlaces,
  lose: () => void,
): readonly PieceSetting[] {
  return settings.flatMap((setting) => {
    const face = places.ofFace(setting.face);
    if (face >= 0) return [{ ...setting, face }];
    lose();
    return [];
  });
}
