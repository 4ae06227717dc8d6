import { foamId, layerId, partId } from '../../../src/base/ids.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { FOAM_RULES } from '../../../src/model/foam-settings.ts';
import type { FlatPiece, Spread } from '../../../src/model/flat-piece.ts';
import type { Patch } from '../../../src/model/patch.ts';
import type { SeamChain, SeamSetting } from '../../../src/model/seams.ts';
import type { ModelIs, ShellLayer } from '../../../src/model/shell-layer.ts';
import { meshOf } from '../../support/meshes.ts';
import { cutPatches } from '../../../src/steps/cut/cut-patches.ts';
import { seamChains } from '../../../src/steps/cut/seam-chains.ts';
import { makeFoamPieces, type FoamInput, type FoamOutcome } from '../../../src/steps/foam/make-foam-pieces.ts';
import { partBends } from '../../../src/steps/foam/part-bends.ts';
import { makeShellLayer } from '../../../src/steps/shell/make-shell-layer.ts';

export type Pair = readonly [number, number];

/** A mesh parted along pairs of vertices, moved to its foam: what the foam step is handed. */
export interface Parted {
  readonly mesh: Mesh;
  readonly layer: ShellLayer;
  readonly patches: readonly Patch[];
  readonly chains: readonly SeamChain[];
}

export interface Foam {
  readonly thicknessMm?: number;
  readonly neutralFraction?: number;
  readonly modelIs?: ModelIs;
}

export function partedAlong(
  mesh: Mesh,
  pairs: readonly Pair[],
  foam: Foam = {},
  settings: readonly SeamSetting[] = [],
): Parted {
  const topology = topologyOf(mesh);
  const isSeam = new Uint8Array(topology.edgeCount);
  for (const [v, w] of pairs) {
    const edge = topology.edgeBetween(v, w);
    if (edge < 0) throw new Error(`no edge ${v}-${w}`);
    isSeam[edge] = 1;
  }
  const layer = makeShellLayer(mesh, {
    layer: layerId('layer-1'),
    foam: foamId('eva'),
    thicknessMm: foam.thicknessMm ?? 10,
    neutralFraction: foam.neutralFraction ?? 0.5,
    modelIs: foam.modelIs ?? 'face',
  });
  const seams = { isSeam, count: pairs.length };
  const cut = cutPatches(mesh, seams, mesh.positions);
  return { mesh, layer, patches: cut.patches, chains: seamChains(mesh, seams, cut, settings) };
}

const NOTHING: Spread = { max: 0, p99: 0, mean: 0 };

/** A flat piece without stretch from known coordinates. */
export function flatOf(patch: Patch, uv: Float64Array, change: Partial<FlatPiece> = {}): FlatPiece {
  const count = patch.meshTriangles.length;
  return {
    uv,
    major: new Float64Array(count).fill(1),
    minor: new Float64Array(count).fill(1),
    majorAngle: new Float64Array(count),
    stretchPct: NOTHING,
    squashPct: NOTHING,
    energy: 4,
    flipped: 0,
    overlaps: [],
    solve: { method: 'unfolded', steps: 0, converged: true },
    ...change,
  };
}

/**
 * Lays a patch flat by hinging each triangle on the one before it: exact for whatever bends without stretch, and only for that.
 * @param positions the neutral surface, x y z per vertex of the mesh.
 */
export function hingedFlat(patch: Patch, positions: Float64Array): FlatPiece {
  const uv = new Float64Array(2 * patch.meshVertices.length).fill(NaN);
  const point = (v: number): number[] => [
    ...positions.subarray(3 * patch.meshVertices[v], 3 * patch.meshVertices[v] + 3),
  ];
  const away = (p: readonly number[], q: readonly number[]): number =>
    Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
  const isPlaced = (v: number): boolean => !Number.isNaN(uv[2 * v]);
  const [a, b] = patch.triangles;
  uv.set([0, 0], 2 * a);
  uv.set([away(point(a), point(b)), 0], 2 * b);
  const done = new Set<number>();
  while (done.size < patch.meshTriangles.length) {
    const before = done.size;
    for (let t = 0; t < patch.meshTriangles.length; t += 1) {
      if (done.has(t)) continue;
      for (let k = 0; k < 3; k += 1) {
        const [p, q, r] = [0, 1, 2].map((i) => patch.triangles[3 * t + ((k + i) % 3)]);
        if (!isPlaced(p) || !isPlaced(q)) continue;
        done.add(t);
        if (isPlaced(r)) break;
        const base = away(point(p), point(q));
        const [pr, qr] = [away(point(p), point(r)), away(point(q), point(r))];
        const x = (base * base + pr * pr - qr * qr) / (2 * base);
        const y = Math.sqrt(Math.max(0, pr * pr - x * x));
        const [dx, dy] = [(uv[2 * q] - uv[2 * p]) / base, (uv[2 * q + 1] - uv[2 * p + 1]) / base];
        uv.set([uv[2 * p] + x * dx - y * dy, uv[2 * p + 1] + x * dy + y * dx], 2 * r);
        break;
      }
    }
    if (done.size === before) throw new Error('hingedFlat: a triangle that touches no other');
  }
  return flatOf(patch, uv);
}

/** The foam step's input for parted surfaces that bend without stretch. */
export function foamInput(parted: Parted, change: Partial<FoamInput> = {}): FoamInput {
  const { rules = FOAM_RULES, pieceSettings = [] } = change;
  return {
    part: partId('part-1'),
    partName: 'bench block',
    layer: parted.layer,
    mesh: parted.mesh,
    patches: parted.patches,
    flats: parted.patches.map((patch) =>
      patch.kind === 'closed' || patch.kind === 'handled' ? null : hingedFlat(patch, parted.layer.neutralPositions),
    ),
    chains: parted.chains,
    bends: partBends(parted.mesh, parted.patches, parted.chains, pieceSettings, rules),
    pieceSettings,
    tracedSide: 'face',
    upAxis: 'z',
    limits: { noticePct: 3, tooMuchPct: 8 },
    rules,
    copies: 1,
    firstNumber: 1,
    ...change,
  };
}

export const foamOf = (parted: Parted, change: Partial<FoamInput> = {}): FoamOutcome =>
  makeFoamPieces(foamInput(parted, change));

/** All twelve edges of `boxMesh`. */
export const BOX_EDGES: readonly Pair[] = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
  [1, 2, 4].filter((bit) => (i & bit) === 0).map((bit) => [i, i | bit] as const),
);

/** Vertical edges of a mesh of rings of `sides` vertices, at place `i` round it. */
export const columnEdges = (sides: number, i: number, rings: number): readonly Pair[] =>
  Array.from({ length: rings }, (_, j) => [j * sides + i, (j + 1) * sides + i] as const);

/** Edges of ring `j` of such a mesh. */
export const ringEdges = (sides: number, j: number): readonly Pair[] =>
  Array.from({ length: sides }, (_, i) => [j * sides + i, j * sides + ((i + 1) % sides)] as const);

/** A surface of revolution round z through the given radii and heights, bottom to top, outside outward. */
export function turnedMesh(sides: number, profile: readonly (readonly [number, number])[]): Mesh {
  const points = profile.flatMap(([r, z]) =>
    Array.from({ length: sides }, (_, i): [number, number, number] => {
      const angle = (2 * Math.PI * i) / sides;
      return [r * Math.cos(angle), r * Math.sin(angle), z];
    }),
  );
  const faces = profile.slice(1).flatMap((_, j) =>
    Array.from({ length: sides }, (_, i) => {
      const next = (i + 1) % sides;
      return [j * sides + i, j * sides + next, (j + 1) * sides + next, (j + 1) * sides + i];
    }),
  );
  return meshOf(points, faces);
}

/**
 * Two panels `width` wide and `length` long that meet along the y axis with the given fold (radians, convex > 0), outside up.
 *
 *     4 ---- 1 ---- 5        y
 *     |      |      |        |
 *     2 ---- 0 ---- 3        +-- x
 */
export function hingeMesh(fold: number, width = 60, length = 100): Mesh {
  const [c, s] = [Math.cos(fold / 2) * width, Math.sin(fold / 2) * width];
  return meshOf(
    [
      [0, 0, 0],
      [0, length, 0],
      [-c, 0, -s],
      [c, 0, -s],
      [-c, length, -s],
      [c, length, -s],
    ],
    [
      [2, 0, 1, 4],
      [0, 3, 5, 1],
    ],
  );
}
