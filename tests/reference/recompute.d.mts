/** What a recomputation found: sentences that say what does not agree, the largest differences of what does, and how much was checked. */
export interface Recomputed {
  readonly faults: readonly string[];
  readonly worst: Readonly<Record<string, number>>;
  readonly checks: number;
  readonly triangles: number;
  /** Vertices of the neutral surface that were held against the planes round them. */
  readonly heldPlanes: number;
}

export function recompute(modelBytes: Uint8Array, report: unknown): Recomputed;
