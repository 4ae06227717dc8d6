import { length3, rad, sub3, vec3, type Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import { STIFFNESS, type EdgeWish, type Give, type Region } from '../model/flatten-settings.ts';
import type { TracedSide } from '../model/foam-piece.ts';
import type { Patch } from '../model/patch.ts';
import type { SeamChain } from '../model/seams.ts';
import type { SculptPart } from '../project/project.ts';
import type { FlattenOptions, StraightRun } from '../steps/flatten/flatten-options.ts';
import { allowanceOf } from '../steps/foam/edge-offsets.ts';
import { borderEnds, type HingeShapes } from '../steps/foam/hinge-shapes.ts';
import type { PatchBend } from '../steps/foam/part-bends.ts';
import { settingsOfPatches } from '../steps/foam/piece-names.ts';
import type { SeamCut } from '../steps/foam/seam-cuts.ts';
import type { CutSculpt } from './outcome.ts';

/** How one patch is to be laid flat. */
export interface PatchWishes {
  readonly options: FlattenOptions;
  /** Equal for equal wishes of the same patch: its flat results are remembered under it. Names nothing that other patches alone wish. */
  readonly key: string;
  /** Chain of each of the straight runs, in their order. */
  readonly straightChains: readonly number[];
  /** How a grooved piece lies on its hinges; null for any other. */
  readonly hinges: HingeShapes | null;
}

/** How a grooved piece lies on its hinges. */
export interface PatchHinges {
  readonly bend: PatchBend;
  readonly shapes: HingeShapes;
  /** Equal for equal panels and grooves over the same surface. */
  readonly key: string;
}

const UP: Readonly<Record<'x' | 'y' | 'z', Vec3>> = { x: vec3(1, 0, 0), y: vec3(0, 1, 0), z: vec3(0, 0, 1) };

/** Brings the maker's wishes, which name polygons and vertices of the file, to the local numbers of each patch. */
export function wishesOfPatches(
  mesh: Mesh,
  { patches, chains }: Pick<CutSculpt, 'patches' | 'chains'>,
  cuts: readonly SeamCut[],
  part: Pick<SculptPart, 'flatten' | 'regions' | 'edgeWishes' | 'pieceSettings' | 'upAxis' | 'tracedSide'>,
  hinges: readonly (PatchHinges | null)[] = [],
): readonly PatchWishes[] {
  const wishOfChain = wishesOfChains(mesh, chains, part.edgeWishes);
  const settings = settingsOfPatches(mesh, patches, part.pieceSettings);
  const giveOfFace = givesOfFaces(part.regions);
  const { seamPrice, squashPrice, evenOut, keepApart } = part.flatten;
  const heldOpen = new Set(
    chains.flatMap(({ kind, vertices }, i) =>
      kind === 'open' && wishOfChain[i]?.holdLength === true ? edgesAlong(mesh, vertices) : [],
    ),
  );
  return patches.map((patch, i) => {
    const held = heldEdgesOf(mesh, patch, heldOpen);
    const hinged = hinges[i] ?? null;
    const traced = settings[i].tracedSide ?? part.tracedSide;
    const straight = straightRunsOf(chains, wishOfChain, i, (chain, side) =>
      outwardAlong(chains[chain], cuts[chain], side, traced),
    );
    const straightRuns = straight.map(({ run }) => run);
    const gives = givesOfTriangles(mesh, patch, giveOfFace);
    const { grain } = settings[i];
    // A grain that asks nothing of the stretch only turns the piece on its sheet.
    const asked = grain === undefined || grain.stretch === 'any' ? null : grain;
    return {
      straightChains: straight.map(({ chain }) => chain),
      hinges: hinged?.shapes ?? null,
      options: {
        seamPrice,
        squashPrice,
        evenOut,
        keepApart,
        heldEdges: held.edges,
        ...(hinged === null ? {} : { corners: hinged.shapes.corners, heldLengths: hingedLengths(held.edges, hinged) }),
        ...(straightRuns.length === 0 ? {} : { straightRuns }),
        ...(gives === null ? {} : { stiffness: gives.stiffness }),
        ...(asked === null
          ? {}
          : { grain: { axis: UP[part.upAxis], turnRad: rad(asked.angleDeg), stretch: asked.stretch } }),
      },
      key: JSON.stringify([
        [seamPrice, squashPrice, evenOut, keepApart],
        held.openOnes,
        straightRuns.map(({ vertices, outwardMm }) => [Array.from(vertices), Array.from(outwardMm)]),
        gives?.runs ?? [],
        hinged?.key ?? '',
        asked === null ? null : [part.upAxis, asked.angleDeg, asked.stretch],
      ]),
    };
  });
}

/** The wishes for each chain: of all wishes tied to one of its edges, the last word on each question counts. */
function wishesOfChains(
  mesh: Mesh,
  chains: readonly SeamChain[],
  wishes: readonly EdgeWish[],
): readonly (Partial<EdgeWish> | undefined)[] {
  if (wishes.length === 0) return [];
  const topology = topologyOf(mesh);
  const chainOfEdge = new Map<number, number>();
  chains.forEach(({ vertices }, i) => {
    for (const edge of edgesAlong(mesh, vertices)) chainOfEdge.set(edge, i);
  });
  const found: Partial<EdgeWish>[] = chains.map(() => ({}));
  for (const wish of wishes) {
    const [v, w] = wish.edge.map((n) => mesh.vertexOfFile[n] ?? -1);
    const chain = chainOfEdge.get(topology.edgeBetween(v, w));
    if (chain !== undefined) found[chain] = { ...found[chain], ...wish };
  }
  return found;
}

/** Edges of the topology along a row of vertices. */
function edgesAlong(mesh: Mesh, vertices: Uint32Array): number[] {
  const topology = topologyOf(mesh);
  return Array.from(vertices.subarray(1), (v, i) => topology.edgeBetween(vertices[i], v));
}

/**
 * Border edges that are to keep their length, as pairs of local vertices along the loops: seams, where foam meets foam, and of the open
 * edges those the maker wants held. The latter are also told alone, because seams follow from the patch.
 */
function heldEdgesOf(
  mesh: Mesh,
  patch: Patch,
  heldOpen: ReadonlySet<number>,
): { readonly edges: Uint32Array; readonly openOnes: readonly number[] } {
  const topology = topologyOf(mesh);
  const pairs: number[] = [];
  const openOnes: number[] = [];
  for (const loop of patch.loops) {
    for (let i = 0; i < loop.length; i += 1) {
      const [v, w] = [loop[i], loop[(i + 1) % loop.length]];
      const edge = topology.edgeBetween(patch.meshVertices[v], patch.meshVertices[w]);
      const isSeam = edge >= 0 && topology.twin[topology.halfedgeOfEdge[edge]] >= 0;
      if (isSeam || heldOpen.has(edge)) pairs.push(v, w);
      if (!isSeam && heldOpen.has(edge)) openOnes.push(v, w);
    }
  }
  return { edges: Uint32Array.from(pairs), openOnes };
}

/** Lengths of held edges as the panels beside them have them, mm. */
export const hingedLengths = (edges: Uint32Array, { bend, shapes }: Omit<PatchHinges, 'key'>): Float64Array =>
  Float64Array.from({ length: edges.length / 2 }, (_, i) => {
    const [from, to] = borderEnds(bend, shapes, edges[2 * i], edges[2 * i + 1]);
    return length3(sub3(to, from));
  });

/** Stretches of the border that are to be cut straight. What closes in a ring round its piece cannot be; a run of two points is. */
function straightRunsOf(
  chains: readonly SeamChain[],
  wishOfChain: readonly (Partial<EdgeWish> | undefined)[],
  patch: number,
  outward: (chain: number, side: 0 | 1) => Float64Array,
): readonly { readonly chain: number; readonly run: StraightRun }[] {
  return chains.flatMap(({ closed, sides }, i) => {
    if (closed || wishOfChain[i]?.straight !== true) return [];
    return sides.flatMap(({ patch: own, localVertices }, side) => {
      const isRing = localVertices[0] === localVertices[localVertices.length - 1];
      if (own !== patch || isRing || localVertices.length < 3) return [];
      if (side === 0) return [{ chain: i, run: { vertices: localVertices, outwardMm: outward(i, 0) } }];
      // The loop of the right side runs against the chain.
      const run = { vertices: localVertices.slice().reverse(), outwardMm: outward(i, 1).reverse() };
      return [{ chain: i, run }];
    });
  });
}

/** How far outside the neutral line a side's traced edge runs at each vertex of its chain, mm. */
function outwardAlong(chain: SeamChain, { sides }: SeamCut, side: 0 | 1, traced: TracedSide): Float64Array {
  const last = chain.vertices.length - 1;
  const { atStart, atEnd } = sides[side][traced];
  const allowance = allowanceOf(chain, side);
  return Float64Array.from(chain.vertices, (_, i) => {
    if (i === 0) return allowance + atStart[0];
    if (i === last) return allowance + atEnd[last - 1];
    return allowance + (atEnd[i - 1] + atStart[i]) / 2;
  });
}

function givesOfFaces(regions: readonly Region[]): ReadonlyMap<number, Give> {
  const gives = new Map<number, Give>();
  for (const { faces, give } of regions) {
    for (const face of faces) {
      if (give === 'normal') gives.delete(face);
      else gives.set(face, give);
    }
  }
  return gives;
}

/** Stiffness per triangle of a patch, and the same told as runs of triangles that begin with each change; null where all is plain foam. */
function givesOfTriangles(
  mesh: Mesh,
  patch: Patch,
  giveOfFace: ReadonlyMap<number, Give>,
): { readonly stiffness: Float64Array; readonly runs: readonly (readonly [number, string])[] } | null {
  if (giveOfFace.size === 0) return null;
  const stiffness = new Float64Array(patch.meshTriangles.length).fill(1);
  const runs: [number, string][] = [];
  let last: Give | undefined;
  patch.meshTriangles.forEach((t, i) => {
    const give = giveOfFace.get(mesh.faceOfTriangle[t]);
    if (give !== undefined) stiffness[i] = STIFFNESS[give];
    if (give !== last) runs.push([i, give ?? '']);
    last = give;
  });
  return runs.length === 0 ? null : { stiffness, runs };
}
