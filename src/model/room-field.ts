/** Room round all cores of a part as colours show it. */
export interface RoomField {
  /** Distance from the back of the foam to the nearest core at each vertex, mm; negative within it, NaN where no core is beside it. */
  readonly atVertices: Float32Array;
  /** Room at the ends of the scale, mm, > 0. */
  readonly limitMm: number;
  /** Room wanted, the most of all cores, mm; 0 where none was asked for. */
  readonly wantedMm: number;
}
