import type { Work } from '../../base/work.ts';
import { SparseFactor } from '../../geom/sparse-factor.ts';
import type { FlatSystem } from './flat-system.ts';
import type { RestShapes } from './rest-shapes.ts';
import { addRigidSprings, addTurnedTriangles } from './rigid-springs.ts';

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
  static async of(system: FlatSystem, work: Work): Promise<LocalGlobal> {
    const factor = new SparseFactor(system.plan, 1);
    addRigidSprings(system, factor.values);
    const { entryStarts, size } = system.plan;
    for (let c = 0; c < size; c += 1) factor.values[entryStarts[c]] *= 1 + HOLD;
    const isDefinite = await factor.factorWithPauses(() => work.pause(0));
    if (!isDefinite) throw new Error('local-global: the springs of a patch are not definite');
    return new LocalGlobal(system.rest, factor);
  }

  /** One round from `flat` to `next`. A triangle may turn over: ask before using it. */
  round(flat: Float64Array, next: Float64Array): void {
    next.fill(0);
    addTurnedTriangles(this.#rest, flat, next);
    this.#factor.solve(next);
  }
}
