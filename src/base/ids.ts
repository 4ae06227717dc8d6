/** A string that cannot be mistaken for the id of another kind of thing. */
type Id<Kind extends string> = string & { readonly __kind: Kind };

export type PartId = Id<'part'>;
export type PieceId = Id<'piece'>;
export type SeamId = Id<'seam'>;
export type LayerId = Id<'layer'>;
export type FoamId = Id<'foam'>;

/** Brands a string once, at the place where the id is made. */
export const partId = (text: string): PartId => text as PartId;
export const pieceId = (text: string): PieceId => text as PieceId;
export const seamId = (text: string): SeamId => text as SeamId;
export const layerId = (text: string): LayerId => text as LayerId;
export const foamId = (text: string): FoamId => text as FoamId;

/** Letters for people: 0 → A, 25 → Z, 26 → AA. Without end, like the columns of a table. */
export function letters(index: number): string {
  if (!(Number.isInteger(index) && index >= 0)) throw new RangeError(`letter index ${index}`);
  let text = '';
  for (let rest = index + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    text = String.fromCharCode(65 + ((rest - 1) % 26)) + text;
  }
  return text;
}
