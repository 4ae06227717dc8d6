/** A cost that a flat shape has beside the energy of its triangles, in the same units (the weights of all triangles sum to 1). */
export interface FlatTerm {
  /** Cost of a shape; Infinity where it is not allowed. */
  costOf(flat: Float64Array): number;
  /**
   * Adds the cost's gradient and second derivative.
   * @param gradient  two numbers per local vertex.
   * @param values    2 x 2 blocks by entry of the plan, lower half: see `FactorPlan`.
   * @param exact     false where the sum must stay positive semi-definite (each part is then made so), true for the curvature as it is.
   */
  addDerivatives(flat: Float64Array, gradient: Float64Array, values: Float64Array, exact: boolean): void;
  /** The largest factor of `step`, > 0, before the cost knows no value any more; Infinity where there is no such end. */
  stepLimit?(flat: Float64Array, step: Float64Array): number;
}
