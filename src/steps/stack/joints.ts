import { DisjointSets } from '../../base/disjoint-sets.ts';
import type { Region } from '../../geom/polygon-boolean.ts';
import { isInRings } from '../../geom/in-rings.ts';
import type { StackHole, StackLayer, StackPiece } from '../../model/stack.ts';
import { areaOf, meeting, ringsOf, type FineGrid } from './regions.ts';

/** Less than this is no joint, mm²: pieces that touch along an edge alone have none. */
export const LEAST_JOINT_MM2 = 1;

/** A piece as the layer over it needs it. */
export type GluedPiece = Pick<StackPiece, 'name' | 'outer' | 'openings' | 'holes'>;

/** What pieces of the layer before a piece lies on, and on how much of each, mm². */
export function restsOn(piece: GluedPiece, before: readonly GluedPiece[], grid: FineGrid): StackPiece['restsOn'] {
  return before.flatMap((under) => {
    const common = meeting([regionOf(piece)], [regionOf(under)], grid);
    const areaMm2 = areaOf(common) - holesIn(common, [...piece.holes, ...under.holes]);
    return areaMm2 > LEAST_JOINT_MM2 ? [{ name: under.name, areaMm2 }] : [];
  });
}

const regionOf = ({ outer, openings }: GluedPiece): Region => ({ outer, holes: openings });

/** Area of holes that lie in regions, each place once. */
function holesIn(regions: readonly Region[], holes: readonly StackHole[]): number {
  const rings = ringsOf(regions);
  const seen = new Set<string>();
  let area = 0;
  for (const { x, y, radiusMm } of holes) {
    const key = `${x} ${y}`;
    if (seen.has(key) || !isInRings(rings, x, y)) continue;
    seen.add(key);
    area += Math.PI * radiusMm ** 2;
  }
  return area;
}

/** Pieces that hang together by glued joints, the group with most foam first. */
export function gluedGroups(
  layers: readonly Pick<StackLayer, 'pieces' | 'thicknessMm'>[],
): readonly (readonly string[])[] {
  const all = layers.flatMap(({ pieces, thicknessMm }) =>
    pieces.map(({ name, areaMm2, restsOn: under }) => ({ name, under, volume: areaMm2 * thicknessMm })),
  );
  const numbers = new Map(all.map(({ name }, i) => [name, i]));
  const sets = new DisjointSets(all.length);
  for (const [i, { under }] of all.entries()) for (const { name } of under) sets.join(i, numbers.get(name) ?? i);
  const groups = new Map<number, { names: string[]; volume: number }>();
  for (const [i, { name, volume }] of all.entries()) {
    const root = sets.find(i);
    const group = groups.get(root) ?? { names: [], volume: 0 };
    group.names.push(name);
    group.volume += volume;
    groups.set(root, group);
  }
  return [...groups.values()].sort((a, b) => b.volume - a.volume).map(({ names }) => names);
}

/** Pieces over the first layer that lie on nothing, but have a piece over them: they are glued under that one. */
export function hangingPieces(layers: readonly Pick<StackLayer, 'pieces'>[]): readonly string[] {
  return layers.flatMap(({ pieces }, i) => {
    if (i === 0) return [];
    const carried = new Set((layers.at(i + 1)?.pieces ?? []).flatMap((over) => over.restsOn.map(({ name }) => name)));
    return pieces.filter(({ name, restsOn: under }) => under.length === 0 && carried.has(name)).map(({ name }) => name);
  });
}
