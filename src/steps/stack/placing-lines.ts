import type { Region } from '../../geom/polygon-boolean.ts';
import type { Ring } from '../../geom/ring.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import { ringsOf } from './regions.ts';

/** A placing line nearer to the edge of the piece than this is the edge, mm: nobody can draw it apart. */
const EDGE_MM = 0.2;

/**
 * What of the outline of the next layer runs on a piece: the lines along which that layer is set down. Stretches outside the piece, and along its
 * edge, are left out.
 * @param piece  the piece with its openings.
 * @returns open lines, x y per corner, mm; a closed line repeats its first corner.
 */
export function placingLines(piece: Region, next: readonly Region[]): readonly Float64Array[] {
  const own = ringsOf([piece]);
  const lines: Float64Array[] = [];
  for (const ring of ringsOf(next)) {
    let line: number[] = [];
    const end = (): void => {
      if (line.length >= 4) lines.push(Float64Array.from(line));
      line = [];
    };
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i], ring[i + 1], ring[j], ring[j + 1]];
      const cuts = [0, ...crossings(own, ax, ay, bx, by), 1];
      for (let k = 0; k + 1 < cuts.length; k += 1) {
        const [s, e] = [cuts[k], cuts[k + 1]];
        const m = (s + e) / 2;
        if (depthInside(own, ax + m * (bx - ax), ay + m * (by - ay)) <= EDGE_MM) {
          end();
          continue;
        }
        if (line.length === 0) line.push(ax + s * (bx - ax), ay + s * (by - ay));
        line.push(ax + e * (bx - ax), ay + e * (by - ay));
      }
    }
    end();
  }
  return lines;
}

/** Shares of the way from a to b at which it crosses the rings, ascending. */
function crossings(rings: readonly Ring[], ax: number, ay: number, bx: number, by: number): number[] {
  const found: number[] = [];
  const [dx, dy] = [bx - ax, by - ay];
  const [minX, maxX, minY, maxY] = [Math.min(ax, bx), Math.max(ax, bx), Math.min(ay, by), Math.max(ay, by)];
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
      const [px, py, qx, qy] = [ring[j], ring[j + 1], ring[i], ring[i + 1]];
      if (Math.max(px, qx) < minX || Math.min(px, qx) > maxX || Math.max(py, qy) < minY || Math.min(py, qy) > maxY)
        continue;
      const sideP = dx * (py - ay) - dy * (px - ax);
      const sideQ = dx * (qy - ay) - dy * (qx - ax);
      if (sideP > 0 === sideQ > 0) continue;
      const f = sideP / (sideP - sideQ);
      const along = ((px + f * (qx - px) - ax) * dx + (py + f * (qy - py) - ay) * dy) / (dx * dx + dy * dy);
      if (along > 0 && along < 1) found.push(along);
    }
  }
  return found.sort((a, b) => a - b);
}
