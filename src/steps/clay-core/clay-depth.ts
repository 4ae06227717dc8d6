import { MinHeap } from '../../base/min-heap.ts';
import { buildTree } from '../../geom/bvh.ts';
import { isInRings } from '../../geom/in-rings.ts';
import { boxOfPoints, joinBoxes, type Box2, type Ring } from '../../geom/ring.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import { dot3, pointAt3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';
import { signedSurface } from '../../mesh/signed-distance.ts';
import { buildTopology } from '../../mesh/topology.ts';
import type { AreaSolid } from '../../model/clay-core.ts';
import type { Stack } from '../../model/stack.ts';

/** The greatest depth is found to this, mm: under what a hand models by. */
export const DEPTH_WITHIN_MM = 0.5;

/** Cells along the longest side of the box to begin with. */
const FIRST_CELLS = 12;

/** A bound on the work: cells looked at. What is left then widens the bound that is told. */
const MOST_CELLS = 40_000;

/** A sheet of the core in the frame of the stack, its hollow counted in: no clay goes there. */
interface Sheet {
  readonly rings: readonly Ring[];
  readonly box: Box2;
  readonly from: number;
  readonly to: number;
}

/**
 * The deepest clay: the greatest distance to the modelled face from any place that is in the solid and not in the core, by halving cubes. The distance
 * changes by no more than one walks, so a cube is dropped when its middle's distance and its own reach say that it holds nothing deeper; the cube
 * that may hold the deepest is halved first.
 * @returns no place lies deeper than `depthMm + boundMm`.
 */
export function deepestClay(
  { solid, areaTriangles }: Pick<AreaSolid, 'solid' | 'areaTriangles'>,
  stack: Pick<Stack, 'frame' | 'layers'>,
): { readonly depthMm: number; readonly boundMm: number } {
  const positions = inFrame(solid.positions, stack);
  const face = buildTree(positions, solid.triangles.slice(0, 3 * areaTriangles));
  const whole = signedSurface(positions, solid.triangles, buildTopology(solid.triangles, positions.length / 3));
  const sheets = sheetsOf(stack);
  const cells: { x: number; y: number; z: number; half: number }[] = [];
  const heap = new MinHeap();
  let deepest = 0;
  let left = 0;
  const consider = (x: number, y: number, z: number, half: number): void => {
    const reach = half * Math.sqrt(3);
    const depth = face.nearest({ x, y, z })?.distance ?? 0;
    if (depth + reach <= deepest + DEPTH_WITHIN_MM) return;
    const inCore = placeInCore(sheets, x, y, z, half);
    if (inCore === 'deep') return;
    const place = whole.nearest({ x, y, z });
    if (place === null || (place.side > 0 && place.distance > reach)) return;
    if (inCore === 'out' && place.side < 0) deepest = Math.max(deepest, depth);
    cells.push({ x, y, z, half });
    heap.push(-(depth + reach), cells.length - 1);
  };
  const { min, max } = boxOfPoints3(positions);
  const first = Math.max(max.x - min.x, max.y - min.y, max.z - min.z) / FIRST_CELLS / 2;
  for (let z = min.z + first; z - first < max.z; z += 2 * first)
    for (let y = min.y + first; y - first < max.y; y += 2 * first)
      for (let x = min.x + first; x - first < max.x; x += 2 * first) consider(x, y, z, first);
  while (heap.size > 0) {
    const { key, item } = heap.pop();
    left = -key;
    if (left <= deepest + DEPTH_WITHIN_MM || cells.length > MOST_CELLS) break;
    const { x, y, z, half } = cells[item];
    // So small a cube is no place that foam or clay could be told apart in: what it may hold is left to the bound.
    if (half * Math.sqrt(3) <= DEPTH_WITHIN_MM / 2) break;
    const h = half / 2;
    for (const dz of [-h, h]) for (const dy of [-h, h]) for (const dx of [-h, h]) consider(x + dx, y + dy, z + dz, h);
  }
  return { depthMm: deepest, boundMm: Math.max(DEPTH_WITHIN_MM, left - deepest) };
}

/** Least distance from the corners of the core's outlines, at both faces of each sheet, to the modelled face; Infinity where there is no core. */
export function leastClay(
  { solid, areaTriangles }: Pick<AreaSolid, 'solid' | 'areaTriangles'>,
  stack: Pick<Stack, 'frame' | 'layers'>,
): number {
  const positions = inFrame(solid.positions, stack);
  const face = buildTree(positions, solid.triangles.slice(0, 3 * areaTriangles));
  let least = Infinity;
  for (const { outline, fromMm, toMm } of stack.layers)
    for (const outer of outline)
      for (let i = 0; i < outer.length; i += 2)
        for (const z of [fromMm, toMm])
          least = Math.min(least, face.nearest({ x: outer[i], y: outer[i + 1], z }, least)?.distance ?? Infinity);
  return least;
}

/** Points as the stack's frame has them. */
function inFrame(positions: Float64Array, { frame: { x, y, z } }: Pick<Stack, 'frame'>): Float64Array {
  const turned = new Float64Array(positions.length);
  for (let v = 0; v < positions.length / 3; v += 1) {
    const p: Vec3 = pointAt3(positions, v);
    turned.set([dot3(p, x), dot3(p, y), dot3(p, z)], 3 * v);
  }
  return turned;
}

const sheetsOf = ({ layers }: Pick<Stack, 'layers'>): readonly Sheet[] =>
  layers.flatMap(({ outline, fromMm, toMm }): readonly Sheet[] =>
    outline.length === 0
      ? []
      : [{ rings: outline, box: outline.map(boxOfPoints).reduce(joinBoxes), from: fromMm, to: toMm }],
  );

/** Whether a place is clay, or lies in the core; `deep` where the whole cube round it does, be it in one sheet or through several. */
function placeInCore(sheets: readonly Sheet[], x: number, y: number, z: number, half: number): 'out' | 'in' | 'deep' {
  let isIn = false;
  let isDeep = true;
  let covered = 0;
  for (const { rings, box, from, to } of sheets) {
    const share = Math.min(to, z + half) - Math.max(from, z - half);
    if (share <= 0) continue;
    covered += share;
    const isHere = z >= from && z <= to;
    if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) {
      isDeep = false;
      continue;
    }
    if (isHere && isInRings(rings, x, y)) isIn = true;
    if (isDeep) isDeep = depthInside(rings, x, y) >= half * Math.SQRT2;
  }
  if (!isIn) return 'out';
  return isDeep && covered >= 2 * half * (1 - 1e-9) ? 'deep' : 'in';
}
