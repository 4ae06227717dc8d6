import { ringArea, ringLength, type Ring } from '../../geom/ring.ts';

/** What stays of a ring however it is moved and turned about: enough to know it by, and to tell it from its mirror image. */
export interface RingFigures {
  /** Inside it, mm², whichever way it runs. */
  readonly areaMm2: number;
  readonly lengthMm: number;
  /** True where it is narrower than a line all along, such as a cut without width there and back: then it has no moments. */
  readonly isSlit: boolean;
  /** Moments of its area about its middle, as shares of the area's own powers: no unit. See {@link ringFigures}. */
  readonly spread: number;
  readonly slender: number;
  readonly lopsided: number;
  /** Changes its sign in the mirror; about 0 for what is its own mirror image. */
  readonly hand: number;
}

/** Places and weights of Gauss and Legendre's rule of two points on 0 to 1: exact for cubics. */
const GAUSS = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)];

/** What is narrower than this on the mean is a slit: how wide rounding to the file's digits leaves it is chance, mm. */
const SLIT_MM = 0.01;

/**
 * With c(p, q) the integral of z^p times the conjugate of z to the q over the area A, z = x + iy from its middle: spread is c(1, 1) / A²,
 * slender |c(2, 0)| / A², lopsided |c(2, 1)| / A^2.5, hand Im(c(2, 0) c(1, 2)²) / A^7. None changes when the ring is turned.
 * J. Flusser, On the independence of rotation moment invariants, Pattern Recognition 33 (2000), 1405-1410.
 * @returns null for a ring without a length.
 */
export function ringFigures(ring: Ring): RingFigures | null {
  const signed = ringArea(ring);
  const areaMm2 = Math.abs(signed);
  const lengthMm = ringLength(ring);
  if (!(lengthMm > 0)) return null;
  if (!(areaMm2 > (SLIT_MM / 2) * lengthMm))
    return { areaMm2, lengthMm, isSlit: true, spread: 0, slender: 0, lopsided: 0, hand: 0 };
  // From the first point on, so that a ring far from the origin keeps its digits.
  const near = ring.map((mm, i) => mm - ring[i % 2]);
  const middle = integral(near, 1, (x, y) => [x, y]);
  const [mx, my] = [middle[0] / signed, middle[1] / signed];
  const own = near.map((mm, i) => mm - (i % 2 === 0 ? mx : my));
  const side = Math.sign(signed);
  const [c11] = integral(own, 2, (x, y) => [x * x + y * y, 0]);
  const [c20x, c20y] = integral(own, 2, (x, y) => [x * x - y * y, 2 * x * y]).map((each) => side * each);
  const [c21x, c21y] = integral(own, 3, (x, y) => [x * (x * x + y * y), y * (x * x + y * y)]).map(
    (each) => side * each,
  );
  // c(1, 2) is the conjugate of c(2, 1).
  const [sx, sy] = [c21x * c21x - c21y * c21y, -2 * c21x * c21y];
  return {
    areaMm2,
    lengthMm,
    isSlit: false,
    spread: (side * c11) / areaMm2 ** 2,
    slender: Math.hypot(c20x, c20y) / areaMm2 ** 2,
    lopsided: Math.hypot(c21x, c21y) / areaMm2 ** 2.5,
    hand: (c20x * sy + c20y * sx) / areaMm2 ** 7,
  };
}

/** The integral of a homogeneous polynomial over what a ring goes round, in triangles from the origin; negative where it runs clockwise. */
function integral(
  ring: Float64Array,
  degree: number,
  at: (x: number, y: number) => readonly [number, number],
): [number, number] {
  let [sumX, sumY] = [0, 0];
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const [ax, ay, bx, by] = [ring[i], ring[i + 1], ring[j], ring[j + 1]];
    const share = (ax * by - ay * bx) / (degree + 2) / GAUSS.length;
    for (const t of GAUSS) {
      const [x, y] = at(ax + t * (bx - ax), ay + t * (by - ay));
      sumX += share * x;
      sumY += share * y;
    }
  }
  return [sumX, sumY];
}
