import { runAtOnce } from '../../base/stepwise.ts';
import { chainRing } from '../../geom/outline.ts';
import { triangulateRings } from '../../geom/triangulate.ts';
import { vertexOffsetSteps } from '../../mesh/vertex-offset.ts';
import { openRims } from '../../mesh/open-rims.ts';
import { buildTopology } from '../../mesh/topology.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { PlainDraft } from '../../model/plain-piece.ts';
import type { ShapeEdge, ShapePatch } from '../../model/shape.ts';
import type { HostPiece, MeetingHost } from './meeting-host.ts';

/** Facets to a whole turn of a surface that lines are cut into: at 300 mm across they lie 0.05 mm inside the round. */
const FACETS = 180;
/** Chords of outlines lie no farther inside them, mm. */
const CHORD_MM = 0.02;
/** Corners of a surface nearer than this share of its size are one: rounding of what should be equal. */
const SAME_SHARE = 1e-9;

/** A piece of a shape with the patches of the finished surface it covers. */
export interface PatchedPiece {
  readonly id: string;
  readonly quantity: number;
  readonly patches: readonly ShapePatch[];
}

/**
 * The finished surface of a shape that only bends, with the places of its flat pieces.
 * @param neutralFraction  of the surface the patches are, from the back.
 * @returns null where a piece must stretch: then its flat places are not known.
 */
export function hostOfPatches(
  pieces: readonly PatchedPiece[],
  thicknessMm: number,
  neutralFraction: number,
): MeetingHost | null {
  const grids = pieces.flatMap((piece, number) => piece.patches.map((patch) => ({ number, patch })));
  if (grids.length === 0 || grids.some(({ patch }) => patch.flat === undefined)) return null;
  const joining = new Joining();
  const own = pieces.map(() => ({ triangles: [] as number[], mesh: [] as number[], uv: [] as number[] }));
  const all: number[] = [];
  const size = sizeOf(grids.map(({ patch }) => patch));
  for (const { number, patch } of grids) {
    const { flat, facets: [along, across] = [1, 0] } = patch;
    if (flat === undefined) throw new Error('a patch that lies nowhere');
    const [columns, rows] = [along, across].map((share) => Math.max(2, Math.round(FACETS * share)));
    const { triangles, mesh, uv } = own[number];
    const first = uv.length / 2;
    const corners: number[] = [];
    for (let j = 0; j <= rows; j += 1)
      for (let i = 0; i <= columns; i += 1) {
        const [u, v] = [i / columns, j / rows];
        corners.push(joining.numberOf(patch.solid(u, v), size * SAME_SHARE));
        const { x, y } = flat(u, v);
        uv.push(x, y);
      }
    for (let j = 0; j < rows; j += 1)
      for (let i = 0; i < columns; i += 1) {
        const a = j * (columns + 1) + i;
        const [b, c, d] = [a + 1, a + columns + 2, a + columns + 1];
        for (const corner of [
          [a, b, c],
          [a, c, d],
        ]) {
          const [p, q, r] = corner.map((k) => corners[k]);
          // At a tip a row comes to one point.
          if (p === q || q === r || r === p) continue;
          mesh.push(all.length / 3);
          all.push(p, q, r);
          triangles.push(...corner.map((k) => first + k));
        }
      }
  }
  const triangles = Uint32Array.from(all);
  const positions = Float64Array.from(joining.positions);
  const { directions } = runAtOnce(vertexOffsetSteps(positions, triangles));
  const topology = buildTopology(triangles, positions.length / 3);
  const moved = (mm: number): Surface => ({
    positions: positions.map((value, i) => value + mm * directions[i]),
    triangles,
    topology,
  });
  return {
    shell: {
      face: moved((1 - neutralFraction) * thicknessMm),
      neutral: { positions, triangles, topology },
      back: moved(-neutralFraction * thicknessMm),
    },
    pieces: pieces.map(({ id, quantity }, i): HostPiece => {
      const packed = Uint32Array.from(own[i].triangles);
      const flatTopology = buildTopology(packed, own[i].uv.length / 2);
      return {
        id,
        alike: quantity,
        ground: {
          patch: {
            meshTriangles: Uint32Array.from(own[i].mesh),
            triangles: packed,
            loops: openRims(packed, flatTopology).map((rim) => Uint32Array.from(rim)),
          },
          uv: Float64Array.from(own[i].uv),
        },
      };
    }),
  };
}

function sizeOf(patches: readonly ShapePatch[]): number {
  const places = [0, 0.25, 0.5, 0.75, 1];
  return patches.reduce(
    (most, { solid }) =>
      places.reduce(
        (all, u) =>
          places.reduce((one, v) => {
            const { x, y, z } = solid(u, v);
            return Math.max(one, Math.abs(x), Math.abs(y), Math.abs(z));
          }, all),
        most,
      ),
    1,
  );
}

/** Corners by their places on a grid finer than what is the same; each is looked for in the cells about it. */
class Joining {
  readonly positions: number[] = [];
  readonly #cells = new Map<string, number>();

  numberOf({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }, step: number): number {
    const cell = [x, y, z].map((value) => Math.round(value / step / 4));
    for (const [dx, dy, dz] of AROUND) {
      const known = this.#cells.get(`${cell[0] + dx} ${cell[1] + dy} ${cell[2] + dz}`);
      if (known !== undefined) return known;
    }
    const number = this.positions.length / 3;
    this.#cells.set(cell.join(' '), number);
    this.positions.push(x, y, z);
    return number;
  }
}

const STEPS = [0, -1, 1];
const AROUND = STEPS.flatMap((dx) => STEPS.flatMap((dy) => STEPS.map((dz) => [dx, dy, dz] as const)));

/**
 * A piece that stays flat and is the part by itself: its face at the height of its thickness, seen as it is drawn.
 * @returns null where its outline bounds no clean area.
 */
export function hostOfFlat(id: string, draft: PlainDraft): MeetingHost | null {
  const ring = (edges: readonly ShapeEdge[]): Float64Array =>
    chainRing(
      edges.flatMap(({ segments }) => segments),
      CHORD_MM,
    );
  const [outer, holes] = [ring(draft.outline), draft.holes.map(ring)];
  const xy = [outer, ...holes].flatMap((one) => [...one]);
  const triangles = Uint32Array.from(triangulateRings(outer, holes));
  if (triangles.length === 0) return null;
  const topology = buildTopology(triangles, xy.length / 2);
  const at = (z: number): Surface => ({
    positions: Float64Array.from({ length: (xy.length / 2) * 3 }, (_, i) =>
      i % 3 === 2 ? z : xy[2 * Math.floor(i / 3) + (i % 3)],
    ),
    triangles,
    topology,
  });
  const { thicknessMm, quantity } = draft;
  return {
    shell: { face: at(thicknessMm), neutral: at(thicknessMm / 2), back: at(0) },
    pieces: [
      {
        id,
        alike: quantity,
        ground: {
          patch: {
            meshTriangles: Uint32Array.from({ length: triangles.length / 3 }, (_, i) => i),
            triangles,
            loops: openRims(triangles, topology).map((rim) => Uint32Array.from(rim)),
          },
          uv: Float64Array.from(xy),
        },
      },
    ],
  };
}
