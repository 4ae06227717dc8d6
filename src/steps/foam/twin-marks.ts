import type { SeamChain } from '../../model/seams.ts';
import type { Twin } from './mirror-twins.ts';
import type { ChainPlace, MarkPlace } from './seam-walk.ts';

/** How the marks of one seam come about. */
export interface SeamMarking {
  /** Along which its marks are counted, mm. */
  readonly lengthMm: number;
  /**
   * Its places where it is counted by itself, in the order of the chain.
   * @param longestMm length of the longest seam that has its marks at the same places.
   */
  readonly own: (longestMm: number) => readonly MarkPlace[];
  /** Which places of its two sides come together. */
  readonly across: (place: ChainPlace) => MarkPlace;
  /** False where places lie farther apart than marks may. */
  readonly isNear: (places: readonly MarkPlace[]) => boolean;
}

/** A seam that is the mirror image of another: for each of that one's edges its own, and whether it runs the other way there. */
interface SeamImage {
  readonly chain: number;
  readonly edgeOf: Int32Array;
  readonly isAgainst: Uint8Array;
}

/**
 * Match marks of all seams, those of twins mirrored: a seam that is the mirror image of an earlier one has its marks, with their numbers, at the
 * mirror images of that one's places. Marks are spaced unevenly and mirrored seams may run head to tail, so each counted from its own start
 * would have them elsewhere, and one template could not serve both twins.
 * @param twins    per patch.
 * @param marking  per seam.
 */
export function mirroredPlaces(
  chains: readonly SeamChain[],
  twins: readonly (Twin | null)[],
  marking: readonly SeamMarking[],
): readonly (readonly MarkPlace[])[] {
  const images = imagesOf(chains, twins);
  const places: (readonly MarkPlace[] | undefined)[] = chains.map(() => undefined);
  for (const first of chains.keys()) {
    if (places[first] !== undefined) continue;
    const group = mirroringEachOther(first, images);
    places[first] = marking[first].own(Math.max(...group.map(({ chain }) => marking[chain].lengthMm)));
    for (const { chain, from, image } of group.slice(1)) {
      const { across, isNear, own, lengthMm } = marking[chain];
      const mirrored = image === null ? [] : placesOn(image, places[from] ?? [], across);
      places[chain] = isNear(mirrored) ? mirrored : own(lengthMm);
    }
  }
  return places.map((list) => list ?? []);
}

/** A seam, and from which it is reached as whose image. */
interface Reached {
  readonly chain: number;
  readonly from: number;
  readonly image: SeamImage | null;
}

/** A seam and all that mirror it, mirror each other's images and so on, it first and each after the one it is reached from. */
function mirroringEachOther(first: number, images: readonly (readonly SeamImage[])[]): readonly Reached[] {
  const group: Reached[] = [{ chain: first, from: first, image: null }];
  const known = new Set([first]);
  for (const { chain: from } of group) {
    for (const image of images[from]) {
      if (known.has(image.chain)) continue;
      known.add(image.chain);
      group.push({ chain: image.chain, from, image });
    }
  }
  return group;
}

/** Per seam those that mirror it in the mirror of one of its pieces' twins. */
function imagesOf(chains: readonly SeamChain[], twins: readonly (Twin | null)[]): readonly (readonly SeamImage[])[] {
  const edgeAt = new Map<string, { readonly chain: number; readonly edge: number }>();
  chains.forEach(({ vertices }, chain) => {
    for (let edge = 0; edge + 1 < vertices.length; edge += 1)
      edgeAt.set(edgeKey(vertices[edge], vertices[edge + 1]), { chain, edge });
  });
  return chains.map(({ vertices, kind, sides }) =>
    sides.flatMap(({ patch }) => {
      const partners = twins[patch]?.partners;
      if (partners === undefined || kind === 'open') return [];
      const mirrored = Array.from(vertices, (v) => partners.get(v) ?? -1);
      const edges = mirrored.slice(1).map((w, i) => edgeAt.get(edgeKey(mirrored[i], w)));
      const chain = edges[0]?.chain;
      if (chain === undefined || edges.some((edge) => edge?.chain !== chain)) return [];
      const image = chains[chain];
      if (image.vertices.length !== vertices.length || image.kind !== kind) return [];
      const edgeOf = Int32Array.from(edges, (edge) => edge?.edge ?? -1);
      return [
        { chain, edgeOf, isAgainst: Uint8Array.from(edgeOf, (e, i) => (image.vertices[e] === mirrored[i] ? 0 : 1)) },
      ];
    }),
  );
}

const edgeKey = (v: number, w: number): string => (v < w ? `${v} ${w}` : `${w} ${v}`);

/**
 * The places of a seam on its mirror image, in that one's order. What lies left of a line lies right of its mirror image, so a line that runs
 * along it has its sides changed.
 */
function placesOn(
  { edgeOf, isAgainst }: SeamImage,
  places: readonly MarkPlace[],
  across: (place: ChainPlace) => MarkPlace,
): readonly MarkPlace[] {
  return places
    .map(({ edge, shares, number }, i): MarkPlace => {
      const share = isAgainst[edge] === 1 ? 1 - shares[0] : shares[1];
      return { ...across({ edge: edgeOf[edge], share }), number: number ?? i + 1 };
    })
    .sort((p, q) => p.edge - q.edge || p.shares[0] - q.shares[0]);
}
