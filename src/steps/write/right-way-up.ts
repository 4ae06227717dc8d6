import { placeOfWords } from '../../geom/words-place.ts';
import type { Words } from '../../model/template.ts';

/** Words that run straight up or down count as upright so near to it, radians. */
const NEARLY_RAD = 1e-6;

/**
 * Words of which none stand on their heads: blocks that do are turned half round about their middle, so that they take the same room. A 6 that is
 * turned is a 9.
 * @param blocks how many lines belong together, one after the other; what comes after the last block stays.
 */
export function rightWayUp(words: readonly Words[], blocks: readonly number[]): readonly Words[] {
  let from = 0;
  const upright = blocks.flatMap((count) => {
    const block = words.slice(from, (from += count));
    return block.length > 0 && isOnItsHead(block[0].angleRad) ? turnedRound(block) : block;
  });
  return [...upright, ...words.slice(from)];
}

/** Reads from the right rather than from the left where it runs straight up or down. */
function isOnItsHead(angleRad: number): boolean {
  const turn = Math.atan2(Math.sin(angleRad), Math.cos(angleRad));
  return turn > Math.PI / 2 + NEARLY_RAD || turn <= -Math.PI / 2 + NEARLY_RAD;
}

function turnedRound(block: readonly Words[]): readonly Words[] {
  const [c, s] = [Math.cos(block[0].angleRad), Math.sin(block[0].angleRad)];
  let [minU, maxU, minV, maxV] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y, halfWidth, halfHeight } of block.map((line) => placeOfWords(line))) {
    const [u, v] = [c * x + s * y, c * y - s * x];
    [minU, maxU] = [Math.min(minU, u - halfWidth), Math.max(maxU, u + halfWidth)];
    [minV, maxV] = [Math.min(minV, v - halfHeight), Math.max(maxV, v + halfHeight)];
  }
  const [u, v] = [minU + maxU, minV + maxV];
  return block.map((line) => ({
    ...line,
    at: { x: c * u - s * v - line.at.x, y: s * u + c * v - line.at.y },
    angleRad: line.angleRad + Math.PI,
  }));
}
