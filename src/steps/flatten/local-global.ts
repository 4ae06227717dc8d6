import type { Work } from '../../base/work.ts';
import { SparseFactor } from '../../geom/sparse-factor.ts';
import type { FlatSystem } from './flat-system.ts';
import type { RestShapes } from './rest-shapes.ts';

/** Weight of the pull that keeps the matrix definite, next to the springs' own. */
const HOLD = 1e-10;

/**
 * The two half steps of "as rigid as possible" flattening (Liu et al., "A local/global approach to mesh parameterization", 2008): each
 * triangle takes the turn that fits its flat shape best, then all vertices are placed to fit the turned true triangles. One
 * factorisation serves every round.
 */
export class LocalGlobal {
  readonly #rest: RestShapes;
  readonly #factor: SparseFactor;

  private constructor(rest: RestShapes, factor: SparseFactor) {
    this.#rest = rest;
    this.#factor = factor;
  }

  /** Makes and factors the springs of a patch. */
  static async of({ rest, plan, slots }: FlatSystem, work: Work): Promise<LocalGlobal> {
    const factor = new SparseFactor(plan, 1);
    const { values } = factor;
    const { base, foot, height, weight } = rest;
    for (let t = 0; t < rest.count; t += 1) {
      const g1x = 1 / base[t];
      const g1y = -foot[t] / (base[t] * height[t]);
      const g2y = 1 / height[t];
      const k11 = weight[t] * (g1x * g1x + g1y * g1y);
      const k12 = weight[t] * g1y * g2y;
      const k22 = weight[t] * g2y * g2y;
      values[slots[6 * t]] += (1 + HOLD) * (k11 + 2 * k12 + k22);
      values[slots[6 * t + 1]] += (1 + HOLD) * k11;
      values[slots[6 * t + 2]] += (1 + HOLD) * k22;
      values[slots[6 * t + 3] >> 1] -= k11 + k12;
      values[slots[6 * t + 4] >> 1] -= k12 + k22;
      values[slots[6 * t + 5] >> 1] += k12;
    }
    const isDefinite = await factor.factorWithPauses(() => work.pause(0));
    if (!isDefinite) throw new Error('local-global: the springs of a patch are not definite');
    return new LocalGlobal(rest, factor);
  }

  /** One round from `flat` to `next`. A triangle may turn over: ask before using it. */
  round(flat: Float64Array, next: Float64Array): void {
    const { corners, base, foot, height, weight, count } = this.#rest;
    next.fill(0);
    for (let t = 0; t < count; t += 1) {
      const a = 2 * corners[3 * t];
      const b = 2 * corners[3 * t + 1];
      const c = 2 * corners[3 * t + 2];
      const ux = (flat[b] - flat[a]) / base[t];
      const uy = (flat[b + 1] - flat[a + 1]) / base[t];
      const vx = (flat[c] - flat[a] - foot[t] * ux) / height[t];
      const vy = (flat[c + 1] - flat[a + 1] - foot[t] * uy) / height[t];
      let zx = ux + vy;
      let zy = uy - vx;
      const length = Math.sqrt(zx * zx + zy * zy);
      if (!(length > 0)) continue;
      zx *= weight[t] / length;
      zy *= weight[t] / length;
      const g1x = 1 / base[t];
      const g1y = -foot[t] / (base[t] * height[t]);
      const g2y = 1 / height[t];
      const f1x = zx * g1x - zy * g1y;
      const f1y = zx * g1y + zy * g1x;
      const f2x = -zy * g2y;
      const f2y = zx * g2y;
      next[a] -= f1x + f2x;
      next[a + 1] -= f1y + f2y;
      next[b] += f1x;
      next[b + 1] += f1y;
      next[c] += f2x;
      next[c + 1] += f2y;
    }
    this.#factor.solve(next);
  }
}
