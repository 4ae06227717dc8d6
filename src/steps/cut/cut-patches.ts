import type { Finding } from '../../base/finding.ts';
import { inStretches, runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import {
  nextHalfedge,
  prevHalfedge,
  topologyOf,
  topologySteps,
  triangleOfHalfedge,
  type Topology,
} from '../../mesh/topology.ts';
import type { Patch, PatchKind } from '../../model/patch.ts';
import type { SeamSet } from '../../model/seams.ts';
import { borderLoops } from './border-loops.ts';

/** Every triangle's patch and every corner's local vertex: what the chains need to find their sides. */
export interface CutSurface {
  readonly patches: readonly Patch[];
  /** Index of the patch, per triangle of the mesh. */
  readonly patchOfTriangle: Int32Array;
  /** Local vertex in its patch of the corner a half-edge leaves, per half-edge of the mesh. */
  readonly localOfHalfedge: Uint32Array;
}

/**
 * Cuts the surface along its seams. Patches are numbered by their lowest triangle; a vertex on a seam inside a patch is doubled, and
 * so is one where two sheets of the surface touch in a point only, so every patch is a proper surface with clean borders.
 * @param positions the surface whose angles and lengths decide which loop is the outer one; mm.
 */
export function cutPatches(mesh: Mesh, seams: SeamSet, positions: Float64Array): CutSurface {
  return runAtOnce(cutSteps(mesh, seams, positions));
}

/** The same in stretches. */
export function* cutSteps(mesh: Mesh, seams: SeamSet, positions: Float64Array): Stepwise<CutSurface> {
  const topology = yield* topologySteps(mesh);
  const joined = joinedAcross(topology, seams);
  yield;
  const every = Uint32Array.from({ length: mesh.triangles.length / 3 }, (_, t) => t);
  const patchOfTriangle = numberPatches(mesh, joined, every);
  yield;
  const patchCount = patchOfTriangle.reduce((most, p) => Math.max(most, p + 1), 0);
  const cornerGroup = yield* groupCorners(mesh, joined, every);
  yield;
  const trianglesOfPatch: number[][] = Array.from({ length: patchCount }, () => []);
  for (let t = 0; t < patchOfTriangle.length; t += 1) trianglesOfPatch[patchOfTriangle[t]].push(t);
  const localOfHalfedge = new Uint32Array(mesh.triangles.length);
  const patches: Patch[] = [];
  for (const list of trianglesOfPatch) {
    patches.push(yield* patchSteps(mesh, joined, list, cornerGroup, localOfHalfedge, positions));
    yield;
  }
  return { patches, patchOfTriangle, localOfHalfedge };
}

/**
 * The same for some of its triangles: whole pieces, as they are or were, so that no other triangle is joined to one of them.
 * @param triangles  numbers of triangles of the mesh, ascending.
 * @returns the patches they fall into, by their lowest triangle.
 */
export function cutTriangles(
  mesh: Mesh,
  seams: Pick<SeamSet, 'isSeam'>,
  positions: Float64Array,
  triangles: Uint32Array,
): readonly Patch[] {
  const joined = joinedAcross(topologyOf(mesh), seams);
  const patchOfTriangle = numberPatches(mesh, joined, triangles);
  const cornerGroup = runAtOnce(groupCorners(mesh, joined, triangles));
  const lists: number[][] = [];
  for (const t of triangles) (lists[patchOfTriangle[t]] ??= []).push(t);
  const localOfHalfedge = new Uint32Array(mesh.triangles.length);
  return lists.map((list) => runAtOnce(patchSteps(mesh, joined, list, cornerGroup, localOfHalfedge, positions)));
}

/** Triangles gathered, and corners grouped, in one stretch: a few milliseconds. */
const STRETCH_TRIANGLES = 1 << 14;
const STRETCH_CORNERS = 1 << 17;

/** The half-edge across where the foam stays joined, or -1. */
function joinedAcross(topology: Topology, seams: Pick<SeamSet, 'isSeam'>): Int32Array {
  return topology.twin.map((across, h) =>
    across >= 0 && seams.isSeam[topology.edgeOfHalfedge[h]] === 0 ? across : -1,
  );
}

function numberPatches(mesh: Mesh, joined: Int32Array, triangles: Uint32Array): Int32Array {
  const count = mesh.triangles.length / 3;
  const patch = new Int32Array(count).fill(-1);
  let next = 0;
  const stack: number[] = [];
  for (const seed of triangles) {
    if (patch[seed] >= 0) continue;
    patch[seed] = next;
    stack.push(seed);
    for (let t = stack.pop(); t !== undefined; t = stack.pop()) {
      for (let h = 3 * t; h < 3 * t + 3; h += 1) {
        if (joined[h] < 0) continue;
        const other = triangleOfHalfedge(joined[h]);
        if (patch[other] >= 0) continue;
        patch[other] = next;
        stack.push(other);
      }
    }
    next += 1;
  }
  return patch;
}

/** For each corner (half-edge leaving it) the lowest corner of the fan it belongs to: corners of one fan are one local vertex. */
function* groupCorners(mesh: Mesh, joined: Int32Array, triangles: Uint32Array): Stepwise<Int32Array> {
  const group = new Int32Array(mesh.triangles.length).fill(-1);
  const stack: number[] = [];
  yield* inStretches(3 * triangles.length, STRETCH_CORNERS, (from, to) => {
    for (let corner = from; corner < to; corner += 1) {
      const seed = 3 * triangles[Math.floor(corner / 3)] + (corner % 3);
      if (group[seed] >= 0) continue;
      group[seed] = seed;
      stack.push(seed);
      for (let h = stack.pop(); h !== undefined; h = stack.pop()) {
        // The next corner one way round lies beyond the edge that arrives here, the other way beyond the edge that leaves.
        const arriving = joined[prevHalfedge(h)];
        const leaving = joined[h] < 0 ? -1 : nextHalfedge(joined[h]);
        for (const other of [arriving, leaving]) {
          if (other < 0 || group[other] >= 0) continue;
          group[other] = seed;
          stack.push(other);
        }
      }
    }
  });
  return group;
}

function* patchSteps(
  mesh: Mesh,
  joined: Int32Array,
  list: readonly number[],
  cornerGroup: Int32Array,
  localOfHalfedge: Uint32Array,
  positions: Float64Array,
): Stepwise<Patch> {
  const localOfGroup = new Map<number, number>();
  const meshVertices: number[] = [];
  const triangles = new Uint32Array(3 * list.length);
  let inner = 0;
  let border = 0;
  for (const [i, t] of list.entries()) {
    if (i % STRETCH_TRIANGLES === STRETCH_TRIANGLES - 1) yield;
    for (let k = 0; k < 3; k += 1) {
      const h = 3 * t + k;
      const group = cornerGroup[h];
      let local = localOfGroup.get(group);
      if (local === undefined) {
        local = meshVertices.length;
        localOfGroup.set(group, local);
        meshVertices.push(mesh.triangles[h]);
      }
      triangles[3 * i + k] = local;
      localOfHalfedge[h] = local;
      if (joined[h] < 0) border += 1;
      else inner += 1;
    }
  }
  yield;
  const numbers = Uint32Array.from(meshVertices);
  const loops = borderLoops({ list, joined, localOfHalfedge, meshVertices: numbers, positions });
  const euler = meshVertices.length - (inner / 2 + border) + list.length;
  const kind = kindOf(euler, loops.length);
  return {
    meshTriangles: Uint32Array.from(list),
    triangles,
    meshVertices: numbers,
    loops,
    euler,
    kind,
    findings: kindFindings(kind, euler, loops.length, list),
  };
}

/** A surface with g handles and b loops has Euler number 2 - 2 g - b. */
function kindOf(euler: number, loops: number): PatchKind {
  if (loops === 0) return 'closed';
  if (euler === 2 - loops) return loops === 1 ? 'disc' : 'windowed';
  return 'handled';
}

function kindFindings(kind: PatchKind, euler: number, loops: number, list: readonly number[]): Finding[] {
  const where = { triangles: list.slice(0, 1) };
  const handles = Math.round((2 - loops - euler) / 2);
  switch (kind) {
    case 'disc':
      return [];
    case 'windowed':
      return [
        {
          code: 'cut/window',
          severity: 'note',
          text: `A piece has ${loops - 1} ${loops === 2 ? 'hole' : 'holes'} in it: fine for a window, but a ring or a tube needs a cut from edge to edge before it lies flat.`,
          value: loops - 1,
          where,
        },
      ];
    case 'closed':
      return [
        {
          code: 'cut/closed',
          severity: 'error',
          text:
            handles === 0
              ? 'A closed surface cannot be laid flat: it needs at least one seam along a line that opens it.'
              : `A closed surface with ${handles} ${handles === 1 ? 'handle' : 'handles'} cannot be laid flat: it needs at least ${2 * handles} seams that each go all the way round.`,
          value: handles,
          where,
        },
      ];
    case 'handled':
      return [
        {
          code: 'cut/handle',
          severity: 'error',
          text: `A piece has ${handles} ${handles === 1 ? 'handle' : 'handles'} like a mug and cannot be laid flat: it needs at least ${2 * handles} seams round and along ${handles === 1 ? 'it' : 'them'}.`,
          value: handles,
          where,
        },
      ];
  }
}
