import { buildTree } from '../../geom/bvh.ts';
import { add3, cross3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { PaintSkin } from './paint-skin.ts';

/** Room in front of the foam that a brush and the hand behind it take, mm [J]. */
export const BRUSH_MM = 120;

/** How far a brush is held from square to the foam, radians [J]. */
const LEAN_RAD = Math.PI / 4;
const LEANS = 8;

/** Off the foam, so that a place does not meet itself, mm. */
const OFF_MM = 0.5;

/** Less than this of a piece shut in is dabbed with the tip of the brush, mm² [J]. */
const LEAST_MM2 = 400;

/** Places looked at on one piece at most. */
const MOST_PLACES = 400;

/**
 * Pieces with a place on their face that no brush reaches when all is glued but does while the piece is loose: straight on or leaning 45 degrees to any
 * of eight sides, foam stands nearer than a brush is long.
 * @returns per piece of the skin whether it is.
 */
export function shutInPieces(skin: PaintSkin, pieceCount: number): readonly boolean[] {
  const whole = surfaceOf(skin, () => true);
  return Array.from({ length: pieceCount }, (_, p) => {
    const own = [...skin.pieceOf.keys()].filter((t) => skin.pieceOf[t] === p);
    const every = Math.max(1, Math.ceil(own.length / MOST_PLACES));
    const shut = own.filter((t, i) => i % every === 0 && !isReached(skin, whole, t));
    const areaOf = (list: readonly number[]): number => list.reduce((sum, t) => sum + skin.areaMm2[t], 0) * every;
    if (areaOf(shut) < LEAST_MM2) return false;
    const alone = surfaceOf(skin, (t) => skin.pieceOf[t] === p);
    return areaOf(shut.filter((t) => isReached(skin, alone, t))) >= LEAST_MM2;
  });
}

function surfaceOf({ corners, pieceOf }: PaintSkin, isIn: (t: number) => boolean): ReturnType<typeof buildTree> {
  const kept = [...pieceOf.keys()].filter(isIn);
  const positions = new Float64Array(9 * kept.length);
  kept.forEach((t, i) => positions.set(corners.subarray(9 * t, 9 * t + 9), 9 * i));
  return buildTree(
    positions,
    Uint32Array.from({ length: 3 * kept.length }, (_, i) => i),
  );
}

function isReached({ corners }: PaintSkin, tree: ReturnType<typeof buildTree>, t: number): boolean {
  const [a, b, c] = [0, 1, 2].map((k): Vec3 => {
    const [x, y, z] = corners.subarray(9 * t + 3 * k, 9 * t + 3 * k + 3);
    return { x, y, z };
  });
  const normal = cross3(sub3(b, a), sub3(c, a));
  if (!(Math.hypot(normal.x, normal.y, normal.z) > 0)) return true;
  const up = unit3(normal);
  const from = add3(scale3(add3(add3(a, b), c), 1 / 3), scale3(up, OFF_MM));
  const side = unit3(sub3(b, a));
  const across = cross3(up, side);
  const ways = [up];
  for (let i = 0; i < LEANS; i += 1) {
    const turn = (2 * Math.PI * i) / LEANS;
    const level = add3(scale3(side, Math.cos(turn)), scale3(across, Math.sin(turn)));
    ways.push(add3(scale3(up, Math.cos(LEAN_RAD)), scale3(level, Math.sin(LEAN_RAD))));
  }
  return ways.some((way) => (tree.raycast(from, way)?.distance ?? Infinity) >= BRUSH_MM);
}
