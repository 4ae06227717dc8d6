/** A group, object or material of the file that is not the whole sculpt. */
export interface FileGroup {
  /** Its number among the names of the mesh. */
  readonly group: number;
  readonly name: string;
}
