import type { SourceModel } from '../../model/source-model.ts';
import { OPEN, type SideLinks } from './side-links.ts';

/** One rim of a surface: open edges in a row. */
export interface Rim {
  /** Vertices in the order in which the faces run along the rim; the last is joined to the first where it is closed. */
  readonly vertices: readonly number[];
  /** False where the rim runs into an edge of more than two faces, or into a face that is turned over. */
  readonly isClosed: boolean;
}

/** All rims of a model, in the order of their first side. Rims that touch in a vertex are kept apart, as far as faces tell them apart. */
export function findRims(model: SourceModel, links: SideLinks): Rim[] {
  const isTaken = new Uint8Array(links.across.length);
  const rims: Rim[] = [];
  for (let side = 0; side < links.across.length; side += 1) {
    if (links.across[side] === OPEN && isTaken[side] === 0) rims.push(walkRim(model, links, side, isTaken));
  }
  return rims;
}

function walkRim({ faceVertices }: SourceModel, links: SideLinks, start: number, isTaken: Uint8Array): Rim {
  const vertices: number[] = [];
  for (let side = start; ;) {
    isTaken[side] = 1;
    vertices.push(faceVertices[side]);
    const following = nextOpenSide(faceVertices, links, side);
    if (following === start) return { vertices, isClosed: true };
    if (following < 0 || isTaken[following] === 1) {
      vertices.push(faceVertices[links.next[side]]);
      return { vertices, isClosed: false };
    }
    side = following;
  }
}

/** The open side that begins where an open side ends, found by going round that vertex from face to face; -1 where the way is barred. */
export function nextOpenSide(faceVertices: Uint32Array, { across, next }: SideLinks, side: number): number {
  let turn = next[side];
  while (across[turn] !== OPEN) {
    const other = across[turn];
    if (other < 0 || faceVertices[other] === faceVertices[turn]) return -1;
    turn = next[other];
  }
  return turn;
}
