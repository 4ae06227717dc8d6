import type { Finding } from '../base/finding.ts';
import type { Ring } from '../geom/ring.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { ShapeEdge } from './shape.ts';

/** What is let into foam and is none. pane: clear sheet before a window; anchor: slots that a strap is led through, on a plate. */
export const INSERT_KINDS = ['pane', 'lamp', 'battery', 'switch', 'magnet', 'anchor'] as const;
export type InsertKind = (typeof INSERT_KINDS)[number];

/** An outline as it is seen square to the wall, mm, its middle at the zero of the insert. `outline`: counter-clockwise, no point twice. JSON-ready. */
export type InsertForm =
  | { readonly shape: 'round'; readonly diameterMm: number }
  | {
      readonly shape: 'rectangle';
      /** Along x, and along y. */
      readonly lengthMm: number;
      readonly widthMm: number;
      /** Missing: square corners. */
      readonly cornerMm?: number;
    }
  | { readonly shape: 'outline'; readonly points: readonly (readonly [number, number])[] };

/** What its cells are, as far as cautions differ by it. */
export type CellKind = 'round' | 'block' | 'button' | 'lithium' | 'lithium-button';

/** How it is got at again. lid: laid on the mouth of the pocket; flush-lid: let in level with it; open: the mouth stays open; closed: foam is glued over it. */
export type WayIn = 'lid' | 'flush-lid' | 'open' | 'closed';

/** A way for wires from the pocket. */
export interface WireChannel {
  readonly widthMm: number;
  readonly depthMm: number;
  /** From within the pocket on, mm, in the frame of the insert; two points or more. */
  readonly path: readonly (readonly [number, number])[];
}

/** A thing that is not foam, as the maker wishes it let in. All JSON-ready; what is missing is as usual for its kind. */
export interface InsertWish {
  readonly kind: InsertKind;
  /** A name of `shared/inserts.json`, in any case and spacing. Missing: as its own measures say. */
  readonly size?: string;
  /** Its own outline, over the listed one; of a pane the window that is seen, of an anchor one slot. */
  readonly form?: InsertForm;
  /** Of what is sold by the length, mm. */
  readonly lengthMm?: number;
  /** How deep it is, mm, over the listed one; of a pane its thickness. */
  readonly depthMm?: number;
  /** So many beside each other: cells, slots. Missing: 1, of an anchor 2. */
  readonly count?: number;
  /** From which side of the wall it is let in. Missing: the back. */
  readonly side?: 'back' | 'face';
  /** Room all round, mm. */
  readonly clearanceMm?: number;
  /** How far under the mouth of its pocket it lies, mm. Missing: 0. */
  readonly coverMm?: number;
  /** A hole through what of the wall the pocket leaves: a lamp's window. */
  readonly opening?: InsertForm;
  readonly wayIn?: WayIn;
  /** How far a lid, a plate or the sheet of a pane reaches past the opening it covers, mm. */
  readonly lapMm?: number;
  readonly channel?: WireChannel;
  /** A plate that spreads the load round it. Missing: an anchor and a switch have one. */
  readonly hasPlate?: boolean;
  /** Frames of foam on the back where the wall is too thin for the pocket. Missing: from the back, yes. */
  readonly hasFrames?: boolean;
  /** Of a magnet: the pole that looks out of the mouth of its pocket. */
  readonly pole?: 'north' | 'south';
  /** Of a magnet: a word that it shares with the one it holds. */
  readonly pair?: string;
}

/** The wall something is let into, and what its own pieces are cut from. */
export interface InsertGround {
  /** Sheets of the wall from the face inward, mm each; one or more. */
  readonly wallMm: readonly number[];
  /** Sheets that lid, frames and plate may be cut from, mm; the usual one first. One or more. */
  readonly sheetsMm: readonly number[];
}

/** What is cut into one sheet of the wall. */
export interface InsertCut {
  /** 1 is at the face. */
  readonly sheet: number;
  /** `pocket` and `channel`: let in from one side; where the sheet is thinner than that, right through. */
  readonly what: 'pocket' | 'rebate' | 'opening' | 'channel';
  readonly side: 'back' | 'face';
  readonly depthMm: number;
  readonly isThrough: boolean;
  /** Counter-clockwise, in the frame of the insert seen from the face, mm. */
  readonly ring: Ring;
}

/** A flat piece that belongs to it. */
export interface InsertPiece {
  readonly key: 'frame' | 'lid' | 'plate' | 'pane';
  readonly name: string;
  readonly quantity: number;
  /** mm; null where it is no foam and none of the sheets is of its kind: then it has an outline alone. */
  readonly thicknessMm: number | null;
  readonly outline: readonly ShapeEdge[];
  /** Clockwise, each. */
  readonly holes: readonly (readonly ShapeEdge[])[];
  /** Where it lies on the wall, or null where it lies in a pocket. */
  readonly liesOn: 'back' | 'face' | null;
}

/** Everything that follows from a wish. In the frame of the insert: z = 0 is the face of the wall, z out of it, mm. */
export interface InsertPlan {
  readonly wish: InsertWish;
  /** As it is named in sentences: `R6 battery`. */
  readonly name: string;
  readonly side: 'back' | 'face';
  /** How deep the pocket is from its mouth, mm; 0 where there is none. */
  readonly pocketMm: number;
  /** What of the wall stays behind the pocket, mm; 0 where it goes right through. */
  readonly leftMm: number;
  /** Frames on the side it is let in from, and what they add, mm. */
  readonly frames: number;
  readonly framesMm: number;
  readonly cuts: readonly InsertCut[];
  readonly pieces: readonly InsertPiece[];
  readonly cell: CellKind | null;
  readonly wayIn: WayIn;
  /** The thing itself, or null where it is no body of its own. */
  readonly body: Mesh | null;
  readonly findings: readonly Finding[];
}
