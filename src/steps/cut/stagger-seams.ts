import type { Finding } from '../../base/finding.ts';
import type { Stepwise } from '../../base/stepwise.ts';
import { vertexCount, type Mesh } from '../../mesh/mesh.ts';
import { edgeLengths } from '../../mesh/edge-fold.ts';
import { topologySteps, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { Patch } from '../../model/patch.ts';
import type { SeamChain, SeamSet } from '../../model/seams.ts';
import { cutSteps } from './cut-patches.ts';
import { joinCrumbs } from './join-crumbs.ts';
import { edgeKeyOf, endsOfKey, FinerSurface, NO_LABEL } from './finer-surface.ts';
import { stayFindings, type Stay } from './stagger-findings.ts';
import {
  isCrease,
  moveDistanceSteps,
  movesOf,
  reachOf,
  whyFixed,
  type SeamMove,
  type StripRoom,
} from './stagger-moves.ts';

/** The seams of the sheet above, and where those of a sheet under it are wished. */
export interface StaggerWish {
  readonly mesh: Mesh;
  readonly patches: readonly Patch[];
  readonly patchOfTriangle: Int32Array;
  readonly chains: readonly SeamChain[];
  /** How far beside them, mm along the surface; negative: to the other side. Not 0. */
  readonly staggerMm: number;
  /** A fold sharper than this is a crease that a sheet does not bend over, radians. */
  readonly creaseRad: number;
  /** A piece narrower than this is hard to cut and to glue, mm. */
  readonly leastWidthMm: number;
}

/** A surface cut finer along seams that lie beside those it was parted by. */
export interface StaggeredSeams {
  /** Vertices of the mesh it was made of keep their numbers. New ones have file numbers behind the file's own. */
  readonly mesh: Mesh;
  readonly seams: SeamSet;
  /** Patch of the sheet above that each triangle now goes with. */
  readonly ownerOfTriangle: Int32Array;
  /** Triangle of the earlier mesh, per triangle. */
  readonly sourceOfTriangle: Int32Array;
  /** For each chain of the sheet above, edges of the new mesh at which its seam now lies; empty for open edges. */
  readonly edgesOfChain: readonly (readonly (readonly [number, number])[])[];
  readonly findings: readonly Finding[];
}

/**
 * Moves seams sideways along the surface. At each the piece on one side grows by a strip of the other, up to a line at the distance asked
 * for ({@link moveDistanceSteps} says how true that is), along which triangles are cut. Where strips meet, the earlier seam's counts.
 * A seam stays where it was, and is told, along a crease, where it ends inside a piece, where a piece is too narrow, and where a piece would
 * get another form (a hole, two parts): then the last moves at it are taken back until it keeps its form.
 */
export function* staggerSteps(wish: StaggerWish): Stepwise<StaggeredSeams> {
  const { mesh, patches, chains, staggerMm, creaseRad } = wish;
  const stays: Stay[] = chains.flatMap((seam, chain) => {
    const reason = seam.kind === 'open' ? null : whyFixed(seam, creaseRad);
    return reason === null ? [] : [{ chain, reason }];
  });
  let moves = movesOf(mesh, chains, creaseRad, staggerMm < 0);
  const distances: Float64Array[] = [];
  for (const { chain, gives, side } of moves)
    distances.push(yield* moveDistanceSteps(mesh, patches[gives], chains[chain], side));
  // A seam that stays leaves its neighbours less room, so they are asked again.
  for (let isSettled = false; !isSettled;) {
    isSettled = true;
    for (const [i, move] of moves.entries()) {
      const reachMm = reachOf(mesh, patches[move.gives], distances[i], roomOf(wish, move, moves), Math.abs(staggerMm));
      yield;
      if (reachMm >= Math.abs(staggerMm)) continue;
      stays.push({ chain: move.chain, reason: 'narrow', reachMm });
      moves = moves.filter((other) => other !== move);
      distances.splice(i, 1);
      isSettled = false;
      break;
    }
  }
  for (;;) {
    const moved = yield* movedSteps(wish, moves, distances);
    const broken = yield* brokenPatches(wish, moved);
    const last = moves.findLastIndex(({ grows, gives }) => broken.has(grows) || broken.has(gives));
    if (last < 0) return { ...moved, findings: stayFindings(chains, stays, Math.abs(staggerMm)) };
    stays.push({ chain: moves[last].chain, reason: 'form' });
    moves = moves.filter((_, i) => i !== last);
    distances.splice(last, 1);
  }
}

/** A new edge shorter than this at a crease leaves the corner of the foam no room, mm [J]. */
const LEAST_EDGE_MM = 3;

/** What lies round the strip a move takes. */
function roomOf({ chains, leastWidthMm }: StaggerWish, move: SeamMove, moves: readonly SeamMove[]): StripRoom {
  const staying: Uint32Array[] = [];
  const giving: Uint32Array[] = [];
  for (const [i, { sides }] of chains.entries()) {
    const own = moves.find(({ chain }) => chain === i);
    sides.forEach(({ patch, localVertices }, side) => {
      if (patch !== move.gives || i === move.chain) return;
      if (own === undefined) staying.push(localVertices);
      else if (own.gives === patch && own.side === side) giving.push(localVertices);
    });
  }
  const seam = chains[move.chain];
  const across = move.grows === move.gives ? seam.sides[1 - move.side].localVertices : null;
  return { across, staying, giving, leastWidthMm };
}

interface Moved extends Omit<StaggeredSeams, 'findings'> {
  /** Patches with a new edge at a crease that is too short for the corner of their foam. */
  readonly cramped: ReadonlySet<number>;
}

function* movedSteps(
  { mesh, patches, patchOfTriangle, chains, staggerMm, creaseRad }: StaggerWish,
  moves: readonly SeamMove[],
  distances: readonly Float64Array[],
): Stepwise<Moved> {
  const fields = moves.map(({ gives }, i) => cornerValues(mesh, patches[gives], distances[i]));
  const surface = new FinerSurface(mesh, fields, chainsByEdge(chains));
  let owner = Array.from(patchOfTriangle);
  // The move whose strip a triangle lies in, where that strip stays with its own patch.
  let strip = owner.map(() => -1);
  const level = Math.abs(staggerMm);
  for (const [i, { gives, grows }] of moves.entries()) {
    const isFree = (t: number): boolean =>
      patchOfTriangle[surface.source[t]] === gives && owner[t] === gives && strip[t] < 0;
    const was = surface.cutAlong(i, level, isFree);
    [owner, strip] = [was.map((t) => owner[t]), was.map((t) => strip[t])];
    for (let t = 0; t < was.length; t += 1) {
      if (!isFree(t) || !(Math.max(...surface.fields[i].slice(3 * t, 3 * t + 3)) <= level)) continue;
      owner[t] = grows;
      if (grows === gives) strip[t] = i;
    }
    yield;
  }
  const finer = meshOf(mesh, surface);
  const topology = yield* topologySteps(finer);
  joinCrumbs(finer, topology, owner);
  yield;
  const movedChains = new Set(moves.map(({ chain }) => chain));
  const atCrease = creaseVertices(surface, chains, creaseRad);
  const lengths = edgeLengths(finer);
  const cramped = new Set<number>();
  const isSeam = new Uint8Array(topology.edgeCount);
  const edgesOfChain: [number, number][][] = chains.map(() => []);
  let count = 0;
  for (let e = 0; e < topology.edgeCount; e += 1) {
    const h = topology.halfedgeOfEdge[e];
    const across = topology.twin[h];
    if (across < 0) continue;
    const [s, t] = [triangleOfHalfedge(h), triangleOfHalfedge(across)];
    const [v, w] = [topology.edgeVertices[2 * e], topology.edgeVertices[2 * e + 1]];
    const chain = surface.labels.get(edgeKeyOf(v, w)) ?? NO_LABEL;
    const cuts = owner[s] !== owner[t] || (chain < 0 ? strip[s] !== strip[t] : stillCuts(chain, strip[s] !== strip[t]));
    if (!cuts) continue;
    isSeam[e] = 1;
    count += 1;
    const its = chain >= 0 ? chain : chainBetween(s, t);
    if (its >= 0) edgesOfChain[its].push([v, w]);
    const isShort =
      Math.max(v, w) >= vertexCount(mesh) && lengths[e] < LEAST_EDGE_MM && (atCrease.has(v) || atCrease.has(w));
    if (isShort) cramped.add(owner[s]).add(owner[t]);
  }
  return {
    mesh: finer,
    seams: { isSeam, count },
    ownerOfTriangle: Int32Array.from(owner),
    sourceOfTriangle: Int32Array.from(surface.source),
    edgesOfChain,
    cramped,
  };

  /** Whether an edge of an old seam, with one piece on both sides now, is still cut. */
  function stillCuts(chain: number, isStripBeside: boolean): boolean {
    const { sides } = chains[chain];
    const isSlit = sides[0].patch === sides[1].patch;
    if (movedChains.has(chain)) return isSlit && !isStripBeside;
    return isSlit || isCrease(chains[chain], creaseRad);
  }

  /** The chain whose moved seam runs between two triangles: the one by whose strip one of them came to its piece; -1 where none is. */
  function chainBetween(s: number, t: number): number {
    for (const triangle of [s, t]) {
      const from = patchOfTriangle[surface.source[triangle]];
      const other = triangle === s ? t : s;
      const found = moves.findIndex(
        ({ gives, grows }, i) =>
          gives === from &&
          grows === owner[triangle] &&
          (grows !== gives || strip[triangle] === i) &&
          Math.max(...surface.fields[i].slice(3 * triangle, 3 * triangle + 3)) <= level &&
          patchOfTriangle[surface.source[other]] === from,
      );
      if (found >= 0 && (owner[triangle] !== from || strip[triangle] >= 0)) return moves[found].chain;
    }
    return -1;
  }
}

/** Vertices on seams that run along creases. */
function creaseVertices({ labels }: FinerSurface, chains: readonly SeamChain[], creaseRad: number): Set<number> {
  const sharp = new Set(chains.flatMap((seam, i) => (isCrease(seam, creaseRad) ? [i] : [])));
  return new Set([...labels].flatMap(([key, chain]) => (sharp.has(chain) ? endsOfKey(key) : [])));
}

/** Patches of the sheet above that are no single piece of the same form any more. */
function* brokenPatches({ patches }: StaggerWish, moved: Moved): Stepwise<ReadonlySet<number>> {
  const { mesh, seams, ownerOfTriangle } = moved;
  const { patches: now } = yield* cutSteps(mesh, seams, mesh.positions);
  const found = new Map<number, number>();
  const broken = new Set<number>(moved.cramped);
  for (const { meshTriangles, kind, loops, euler } of now) {
    const owner = ownerOfTriangle[meshTriangles[0]];
    const before = patches[owner];
    found.set(owner, (found.get(owner) ?? 0) + 1);
    if (kind !== before.kind || loops.length !== before.loops.length || euler !== before.euler) broken.add(owner);
  }
  for (const i of patches.keys()) if (found.get(i) !== 1) broken.add(i);
  return broken;
}

/** The seam through each edge, by {@link edgeKeyOf}. */
export function chainsByEdge(chains: readonly SeamChain[]): Map<number, number> {
  const byEdge = new Map<number, number>();
  for (const [i, { vertices }] of chains.entries()) {
    for (let k = 1; k < vertices.length; k += 1) byEdge.set(edgeKeyOf(vertices[k - 1], vertices[k]), i);
  }
  return byEdge;
}

/** Values at local vertices of a patch brought to the corners of the mesh. */
function cornerValues(mesh: Mesh, { meshTriangles, triangles }: Patch, values: Float64Array): number[] {
  const corners = Array.from({ length: mesh.triangles.length }, () => Infinity);
  meshTriangles.forEach((t, i) => {
    for (let k = 0; k < 3; k += 1) corners[3 * t + k] = values[triangles[3 * i + k]];
  });
  return corners;
}

function meshOf(mesh: Mesh, { positions, triangles, source }: FinerSurface): Mesh {
  const before = mesh.positions.length / 3;
  const added = positions.length / 3 - before;
  const named = mesh.vertexOfFile.length;
  return {
    ...mesh,
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(triangles),
    faceOfTriangle: Uint32Array.from(source, (t) => mesh.faceOfTriangle[t]),
    fileVertex: Uint32Array.from([...mesh.fileVertex, ...Array.from({ length: added }, (_, i) => named + i)]),
    vertexOfFile: Int32Array.from([...mesh.vertexOfFile, ...Array.from({ length: added }, (_, i) => before + i)]),
  };
}
