/** What bending alone does to the skins of the foam, place by place, on the patches that lie on the bench, in their order. */
export interface BendField {
  /** Null where a piece bends in grooves or kerfs, or could not be laid flat: its skins are not strained. */
  readonly patches: readonly (PatchBendField | null)[];
}

/** Per triangle of a patch. */
export interface PatchBendField {
  /**
   * Strain of the skin that has more of it where the triangle bends most, per cent (foam model 3): > 0 where the foam bends outward as on a ridge, < 0 as in a
   * valley.
   */
  readonly strainPct: Float32Array;
  /** Line about which it bends, in the piece's frame, radians from +x. */
  readonly axisRad: Float32Array;
}
