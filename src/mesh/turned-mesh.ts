import { fail, ok, type Result } from '../base/result.ts';
import type { Mesh } from './mesh.ts';

/** A corner of a turned profile, mm. */
export interface ProfilePoint {
  readonly lengthMm: number;
  readonly radiusMm: number;
}

/** How far the sides of a turned solid may stand off the circle, mm: under a tenth of a knife's width. */
export const ROUND_WITHIN_MM = 0.01;

const FEWEST_SIDES = 24;
const MOST_SIDES = 720;

/**
 * A solid turned round z from its radius against its length, straight between the corners. Each circle becomes a polygon of the same area, so
 * every section and every volume is that of the round solid, to rounding; corners stand outside the circle and sides inside by no more than
 * 0.01 mm (up to a radius of about 1 m).
 * @param profile  corners by ascending length; two at one length make a step. Closed by flat ends where it does not begin or end at radius 0.
 * @returns fails with `turned/profile`.
 */
export function turnedMesh(profile: readonly ProfilePoint[]): Result<Mesh> {
  const wrong = profileFault(profile);
  if (wrong !== null) return fail('turned/profile', wrong);
  const widest = Math.max(...profile.map(({ radiusMm }) => radiusMm));
  const wanted = Math.ceil(Math.PI * Math.sqrt(widest / (2 * ROUND_WITHIN_MM)));
  const sides = 4 * Math.ceil(Math.min(MOST_SIDES, Math.max(FEWEST_SIDES, wanted)) / 4);
  // A polygon of corner radius q r has the area of the circle r.
  const q = Math.sqrt((2 * Math.PI) / sides / Math.sin((2 * Math.PI) / sides));
  const points: number[] = [];
  const triangles: number[] = [];
  const ends = [profile[0], profile[profile.length - 1]];
  const rings = profile.map(({ lengthMm, radiusMm }) => {
    const first = points.length / 3;
    const count = radiusMm === 0 ? 1 : sides;
    for (let i = 0; i < count; i += 1) {
      const angle = (2 * Math.PI * (i + 0.5)) / sides;
      points.push(q * radiusMm * Math.cos(angle), q * radiusMm * Math.sin(angle), lengthMm);
    }
    return { first, count };
  });
  const at = ({ first, count }: { first: number; count: number }, i: number): number => first + (i % count);
  const add = (a: number, b: number, c: number): void => {
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c);
  };
  for (let j = 0; j + 1 < rings.length; j += 1) {
    for (let i = 0; i < sides; i += 1) {
      add(at(rings[j], i), at(rings[j], i + 1), at(rings[j + 1], i + 1));
      add(at(rings[j], i), at(rings[j + 1], i + 1), at(rings[j + 1], i));
    }
  }
  for (const [k, ring] of [rings[0], rings[rings.length - 1]].entries()) {
    if (ring.count === 1) continue;
    const middle = points.length / 3;
    points.push(0, 0, ends[k].lengthMm);
    for (let i = 0; i < sides; i += 1)
      if (k === 0) add(middle, at(ring, i + 1), at(ring, i));
      else add(middle, at(ring, i), at(ring, i + 1));
  }
  const numbers = Uint32Array.from({ length: points.length / 3 }, (_, i) => i);
  const faces = triangles.length / 3;
  return ok({
    positions: Float64Array.from(points),
    triangles: Uint32Array.from(triangles),
    faceOfTriangle: Uint32Array.from({ length: faces }, (_, i) => i),
    faceCount: faces,
    fileVertex: numbers,
    vertexOfFile: Int32Array.from(numbers),
    groupNames: [],
    groupOfFace: new Int32Array(faces).fill(-1),
  });
}

function profileFault(profile: readonly ProfilePoint[]): string | null {
  if (profile.length < 2) return 'A turned profile needs two corners at least, as 0:30,120:20.';
  for (const [i, { lengthMm, radiusMm }] of profile.entries()) {
    if (!Number.isFinite(lengthMm) || !(radiusMm >= 0 && radiusMm < 1e5))
      return `Corner ${i + 1} of the profile is no length and radius in mm.`;
    if (i > 0 && lengthMm < profile[i - 1].lengthMm)
      return `Corner ${i + 1} of the profile lies before the one before it: give them by ascending length.`;
    if (i > 0 && lengthMm === profile[i - 1].lengthMm && radiusMm === profile[i - 1].radiusMm)
      return `Corner ${i + 1} of the profile is the one before it again.`;
    if (radiusMm === 0 && i > 0 && i + 1 < profile.length)
      return `The radius is 0 at corner ${i + 1}, in the middle of the profile: make the two parts one by one.`;
  }
  if (profile[0].lengthMm === profile[profile.length - 1].lengthMm) return 'The profile has no length.';
  return null;
}
