import { add3, cross3, dot3, scale3, unit3, vec3, type Vec3 } from '../../src/geom/vec.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';

/**
 * A convex body that random planes cut out, each touching a ball round the origin or a little off it; three faces meet at every corner.
 * Every edge is a seam.
 * @param planes    how many, 6 or more.
 * @param radiusMm  of the ball.
 * @param depth     share of the radius by which a plane may stand off the ball, 0 to 1.
 */
export function randomPolyhedron(random: () => number, planes: number, radiusMm: number, depth = 0.2): Solid {
  const walls = Array.from({ length: planes }, (_, i) => {
    // Points spread evenly round a ball by the golden angle, then shaken, so that the body is closed.
    const z = 1 - (2 * i + 1) / planes;
    const turn = i * Math.PI * (3 - Math.sqrt(5));
    const r = Math.sqrt(1 - z * z);
    const shake = (): number => 0.5 * (random() - 0.5);
    const normal = unit3(vec3(r * Math.cos(turn) + shake(), r * Math.sin(turn) + shake(), z + shake()));
    return { normal, off: radiusMm * (1 + depth * random()) };
  });
  const corners: Vec3[] = [];
  const on: number[][] = walls.map(() => []);
  for (let i = 0; i < planes; i += 1) {
    for (let j = i + 1; j < planes; j += 1) {
      for (let k = j + 1; k < planes; k += 1) {
        const [a, b, c] = [walls[i], walls[j], walls[k]];
        const det = dot3(a.normal, cross3(b.normal, c.normal));
        if (Math.abs(det) < 1e-6) continue;
        const at = scale3(
          add3(
            scale3(cross3(b.normal, c.normal), a.off),
            add3(scale3(cross3(c.normal, a.normal), b.off), scale3(cross3(a.normal, b.normal), c.off)),
          ),
          1 / det,
        );
        if (walls.some(({ normal, off }, w) => w !== i && w !== j && w !== k && dot3(normal, at) > off)) continue;
        for (const w of [i, j, k]) on[w].push(corners.length);
        corners.push(at);
      }
    }
  }
  const faces = on.flatMap((own, w) => (own.length < 3 ? [] : [roundFace(own, corners, walls[w].normal)]));
  const seams = new Map<string, [number, number]>();
  for (const face of faces) {
    face.forEach((v, i) => {
      const u = face[(i + 1) % face.length];
      seams.set(`${Math.min(u, v)} ${Math.max(u, v)}`, [Math.min(u, v), Math.max(u, v)]);
    });
  }
  return { corners: corners.map(({ x, y, z }) => [x, y, z]), faces, seams: [...seams.values()] };
}

/** Corners of a face, counter-clockwise seen from outside. */
function roundFace(own: readonly number[], corners: readonly Vec3[], normal: Vec3): number[] {
  const middle = scale3(
    own.reduce((sum, v) => add3(sum, corners[v]), vec3(0, 0, 0)),
    1 / own.length,
  );
  const away = (v: number): Vec3 => add3(corners[v], scale3(middle, -1));
  const u = unit3(away(own[0]));
  const w = cross3(normal, u);
  const turn = (v: number): number => Math.atan2(dot3(away(v), w), dot3(away(v), u));
  return [...own].sort((a, b) => turn(a) - turn(b));
}
