import { energyOf } from './dirichlet-energy.ts';
import type { FlatSystem } from './flat-system.ts';
import type { RestShapes } from './rest-shapes.ts';

/**
 * What it costs to stretch and squash the triangles of a piece.
 *
 * The plain cost of a triangle is its symmetric Dirichlet energy, f(s1) + f(s2) with f(s) = s² + 1/s² and s1 >= s2 the singular values
 * of the map from the surface to the plane. Two settings change it:
 * - *squash is dearer*: f(s) - 2 counts `squashPrice` times where s > 1, where the flat piece is larger than the surface it must make.
 * - *even out the worst*: the excess e over 2 f(1) counts as c/p ((1 + e/c)^p - 1), c about its mean. As e grows with the square of the
 *   strain, p = 4 is like the L8 norm of the strain where it is large. A needle is no bad spot and stays plain.
 *
 * The map of a triangle is written in complex numbers, J p = z p + w conj(p): then s1 = |z| + |w|, s2 = |z| - |w|, and with corner
 * gradients g the parts are z = ½ Σ u conj(g), w = ½ Σ u g. The second derivative of an isotropic cost has four directions of its own
 * (Smith, de Goes and Kim, "Analytic eigensystems for isotropic distortion energies", 2019): along each singular value, a twist and a
 * flip. With f convex only the twist can have negative curvature.
 */
export interface TriangleCost {
  /** Share of each triangle. */
  readonly weights: Float64Array;
  /** >= 1. */
  readonly squashPrice: number;
  /** Null for the cost as it is. */
  readonly evenOut: EvenOut | null;
}

export interface EvenOut {
  /** c above: excess from which a triangle counts as bad, > 0. */
  readonly excess: number;
  /** p above, > 1. */
  readonly power: number;
}

/** Height over base below which a triangle is a needle, whose stretch says little about the foam. */
const NEEDLE_SHARE = 0.01;

/** Cost of a shape, with 4 taken from every plain triangle added again; Infinity where a triangle has no positive area. */
export function costOfTriangles(rest: RestShapes, cost: TriangleCost, flat: Float64Array): number {
  const { weights, squashPrice, evenOut } = cost;
  if (squashPrice === 1 && evenOut === null) return energyOf(rest, flat, weights);
  let sum = 0;
  for (let t = 0; t < rest.count; t += 1) {
    const excess = excessAt(rest, squashPrice, flat, t);
    if (excess === Infinity) return Infinity;
    sum += weights[t] * (4 + (evenOut === null || isNeedle(rest, t) ? excess : evenCost(evenOut, excess)));
  }
  return sum;
}

/** Priced excess of each triangle of a shape without a flip; 0 for a needle. */
export function excesses(rest: RestShapes, squashPrice: number, flat: Float64Array): Float64Array {
  const each = new Float64Array(rest.count);
  for (let t = 0; t < rest.count; t += 1) if (!isNeedle(rest, t)) each[t] = excessAt(rest, squashPrice, flat, t);
  return each;
}

const isNeedle = ({ base, height }: RestShapes, t: number): boolean => height[t] < NEEDLE_SHARE * base[t];

/** Priced excess of one triangle; Infinity where it has no positive area. */
function excessAt(
  { corners, base, foot, height }: RestShapes,
  squashPrice: number,
  flat: Float64Array,
  t: number,
): number {
  const a = 2 * corners[3 * t];
  const b = 2 * corners[3 * t + 1];
  const c = 2 * corners[3 * t + 2];
  const ux = (flat[b] - flat[a]) / base[t];
  const uy = (flat[b + 1] - flat[a + 1]) / base[t];
  const vx = (flat[c] - flat[a] - foot[t] * ux) / height[t];
  const vy = (flat[c + 1] - flat[a + 1] - foot[t] * uy) / height[t];
  const det = ux * vy - uy * vx;
  if (!(det > 0)) return Infinity;
  const p = Math.sqrt((ux + vy) * (ux + vy) + (uy - vx) * (uy - vx)) / 2;
  const q = Math.sqrt((ux - vy) * (ux - vy) + (uy + vx) * (uy + vx)) / 2;
  return pricedExcess(p + q, det / (p + q), squashPrice);
}

/** How much dearer than plain a little more of an excess is. */
export function evenSlope({ excess: c, power: p }: EvenOut, excess: number): number {
  return Math.pow(1 + excess / c, p - 1);
}

/** Priced f(s1) + f(s2) - 4; each part is (s - 1/s)², which loses no digits near 1. */
function pricedExcess(s1: number, s2: number, squashPrice: number): number {
  const e1 = s1 - 1 / s1;
  const e2 = s2 - 1 / s2;
  return (s1 > 1 ? squashPrice : 1) * e1 * e1 + (s2 > 1 ? squashPrice : 1) * e2 * e2;
}

function evenCost({ excess: c, power: p }: EvenOut, excess: number): number {
  return (c / p) * (Math.pow(1 + excess / c, p) - 1);
}

/**
 * Adds up the gradient and the second derivative of the cost.
 * @param gradient  two numbers per vertex; overwritten.
 * @param values    2 x 2 blocks by entry of the plan; overwritten.
 * @param twistFloor  least curvature allowed to a twist: 0 makes the matrix positive semi-definite, -Infinity leaves it as it is.
 */
export function addUpDerivatives(
  { rest, slots }: FlatSystem,
  cost: TriangleCost,
  flat: Float64Array,
  gradient: Float64Array,
  values: Float64Array,
  twistFloor: number,
): void {
  const { corners, base, foot, height } = rest;
  const { weights, squashPrice, evenOut } = cost;
  gradient.fill(0);
  values.fill(0);
  for (let t = 0; t < rest.count; t += 1) {
    const a = 2 * corners[3 * t];
    const b = 2 * corners[3 * t + 1];
    const c = 2 * corners[3 * t + 2];
    const overBase = 1 / base[t];
    const overHeight = 1 / height[t];
    const ux = (flat[b] - flat[a]) * overBase;
    const uy = (flat[b + 1] - flat[a + 1]) * overBase;
    const vx = (flat[c] - flat[a] - foot[t] * ux) * overHeight;
    const vy = (flat[c + 1] - flat[a + 1] - foot[t] * uy) * overHeight;
    // z = ((ux + vy) + i (uy - vx)) / 2, w = ((ux - vy) + i (uy + vx)) / 2
    let zx = (ux + vy) / 2;
    let zy = (uy - vx) / 2;
    let wx = (ux - vy) / 2;
    let wy = (uy + vx) / 2;
    const p = Math.sqrt(zx * zx + zy * zy);
    const q = Math.sqrt(wx * wx + wy * wy);
    const det = ux * vy - uy * vx;
    const s1 = p + q;
    const s2 = det / s1;
    zx /= p;
    zy /= p;
    if (q > 1e-150) {
      wx /= q;
      wy /= q;
    } else {
      wx = 1;
      wy = 0;
    }
    const r1 = 1 / (s1 * s1);
    const r2 = 1 / (s2 * s2);
    let d1 = 2 * s1 - (2 * r1) / s1;
    let d2 = 2 * s2 - (2 * r2) / s2;
    const cube = 1 / (det * det * det);
    let share = weights[t];
    let k1 = 2 + 6 * r1 * r1;
    let k2 = 2 + 6 * r2 * r2;
    let k12 = 0;
    const both = s1 * s1 + s2 * s2;
    let twist = 4 - 4 * (both - det) * cube;
    let flip = 4 + 4 * (both + det) * cube;
    if (squashPrice !== 1 && s1 > 1) {
      d1 *= squashPrice;
      k1 *= squashPrice;
      if (s2 > 1) {
        d2 *= squashPrice;
        k2 *= squashPrice;
        twist *= squashPrice;
        flip *= squashPrice;
      } else {
        // Between s2 <= 1 < s1 the slope has a bend, and its mean lies between the two.
        twist = (2 * (d1 + d2)) / (s1 + s2);
        flip = Math.min(squashPrice * flip, Math.max(flip, (2 * (d1 - d2)) / (s1 - s2)));
      }
    }
    twist = Math.max(twistFloor, twist);
    if (evenOut !== null && !isNeedle(rest, t)) {
      const rise = 1 + pricedExcess(s1, s2, squashPrice) / evenOut.excess;
      const slope = Math.pow(rise, evenOut.power - 1);
      const bend = (evenOut.power - 1) / evenOut.excess / rise;
      k1 += bend * d1 * d1;
      k2 += bend * d2 * d2;
      k12 = share * slope * bend * d1 * d2;
      share *= slope;
    }
    k1 *= share;
    k2 *= share;
    twist *= share;
    flip *= share;
    const alongZ = share * (d1 + d2);
    const alongW = share * (d1 - d2);

    // Half the gradients of corners 1 and 2; corner 0 has minus their sum.
    const g1x = overBase / 2;
    const g1y = (-foot[t] * overBase * overHeight) / 2;
    const g2y = overHeight / 2;
    const a1x = zx * g1x - zy * g1y;
    const a1y = zx * g1y + zy * g1x;
    const a2x = -zy * g2y;
    const a2y = zx * g2y;
    const b1x = wx * g1x + wy * g1y;
    const b1y = wy * g1x - wx * g1y;
    const b2x = wy * g2y;
    const b2y = -wx * g2y;

    const f1x = alongZ * a1x + alongW * b1x;
    const f1y = alongZ * a1y + alongW * b1y;
    const f2x = alongZ * a2x + alongW * b2x;
    const f2y = alongZ * a2y + alongW * b2y;
    gradient[a] -= f1x + f2x;
    gradient[a + 1] -= f1y + f2y;
    gradient[b] += f1x;
    gradient[b + 1] += f1y;
    gradient[c] += f2x;
    gradient[c + 1] += f2y;

    const p1x = a1x + b1x,
      p1y = a1y + b1y,
      p2x = a2x + b2x,
      p2y = a2y + b2y;
    const m1x = a1x - b1x,
      m1y = a1y - b1y,
      m2x = a2x - b2x,
      m2y = a2y - b2y;
    // Blocks of corner pairs 11, 12 and 22; a twist moves along i a, a flip along i b.
    let h11xx = k1 * p1x * p1x + k2 * m1x * m1x + twist * a1y * a1y + flip * b1y * b1y;
    let h11xy = k1 * p1x * p1y + k2 * m1x * m1y - twist * a1y * a1x - flip * b1y * b1x;
    let h11yy = k1 * p1y * p1y + k2 * m1y * m1y + twist * a1x * a1x + flip * b1x * b1x;
    let h22xx = k1 * p2x * p2x + k2 * m2x * m2x + twist * a2y * a2y + flip * b2y * b2y;
    let h22xy = k1 * p2x * p2y + k2 * m2x * m2y - twist * a2y * a2x - flip * b2y * b2x;
    let h22yy = k1 * p2y * p2y + k2 * m2y * m2y + twist * a2x * a2x + flip * b2x * b2x;
    let h12xx = k1 * p1x * p2x + k2 * m1x * m2x + twist * a1y * a2y + flip * b1y * b2y;
    let h12xy = k1 * p1x * p2y + k2 * m1x * m2y - twist * a1y * a2x - flip * b1y * b2x;
    let h12yx = k1 * p1y * p2x + k2 * m1y * m2x - twist * a1x * a2y - flip * b1x * b2y;
    let h12yy = k1 * p1y * p2y + k2 * m1y * m2y + twist * a1x * a2x + flip * b1x * b2x;
    if (k12 !== 0) {
      h11xx += 2 * k12 * p1x * m1x;
      h11xy += k12 * (p1x * m1y + m1x * p1y);
      h11yy += 2 * k12 * p1y * m1y;
      h22xx += 2 * k12 * p2x * m2x;
      h22xy += k12 * (p2x * m2y + m2x * p2y);
      h22yy += 2 * k12 * p2y * m2y;
      h12xx += k12 * (p1x * m2x + m1x * p2x);
      h12xy += k12 * (p1x * m2y + m1x * p2y);
      h12yx += k12 * (p1y * m2x + m1y * p2x);
      h12yy += k12 * (p1y * m2y + m1y * p2y);
    }
    // Rows and columns of corner 0 are minus the sums of the others.
    const h10xx = -h11xx - h12xx,
      h10xy = -h11xy - h12xy,
      h10yx = -h11xy - h12yx,
      h10yy = -h11yy - h12yy;
    const h20xx = -h12xx - h22xx,
      h20xy = -h12yx - h22xy,
      h20yx = -h12xy - h22xy,
      h20yy = -h12yy - h22yy;

    const slot = 6 * t;
    let at = 4 * slots[slot];
    values[at] -= h10xx + h20xx;
    values[at + 2] -= h10xy + h20xy;
    values[at + 3] -= h10yy + h20yy;
    at = 4 * slots[slot + 1];
    values[at] += h11xx;
    values[at + 2] += h11xy;
    values[at + 3] += h11yy;
    at = 4 * slots[slot + 2];
    values[at] += h22xx;
    values[at + 2] += h22xy;
    values[at + 3] += h22yy;
    at = slots[slot + 3];
    let turned = at & 1;
    at = (at - turned) * 2;
    values[at] += h10xx;
    values[at + 1 + turned] += h10xy;
    values[at + 2 - turned] += h10yx;
    values[at + 3] += h10yy;
    at = slots[slot + 4];
    turned = at & 1;
    at = (at - turned) * 2;
    values[at] += h20xx;
    values[at + 1 + turned] += h20xy;
    values[at + 2 - turned] += h20yx;
    values[at + 3] += h20yy;
    // Block of row c2, column c1 is the transpose of h12.
    at = slots[slot + 5];
    turned = at & 1;
    at = (at - turned) * 2;
    values[at] += h12xx;
    values[at + 1 + turned] += h12yx;
    values[at + 2 - turned] += h12xy;
    values[at + 3] += h12yy;
  }
}
