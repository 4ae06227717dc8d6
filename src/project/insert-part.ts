import type { PartId } from '../base/ids.ts';
import type { InsertWish } from '../model/insert.ts';
import type { Placing } from '../model/placing.ts';

/** Something that is not foam, let into a part. Its own foams are what lid, frames and plate are cut from. */
export interface InsertFields {
  readonly kind: 'insert';
  readonly wish: InsertWish;
  /** The part it is let into: a sculpt, where its own place says where, or another part. */
  readonly into: PartId;
  /** Of a part that is no sculpt: which of its pieces, and where on it; the key of the piece and mm in its frame. */
  readonly at?: { readonly piece: string; readonly x: number; readonly y: number; readonly turnDeg: number };
}

/** An insert as a parts file tells of it. */
export interface ListedInsert extends Pick<InsertFields, 'wish' | 'at'> {
  readonly name: string;
  /** Name of the part it is let into. */
  readonly into: string;
  /** Where it stands, of what is let into a sculpt. */
  readonly place?: Pick<Placing, 'at' | 'facing' | 'turnDeg'>;
  /** By thickness or name, the usual one first; left out: the foam new parts begin with. */
  readonly foam?: readonly string[];
  readonly copies?: number;
}
