import type { Severity } from '../base/finding.ts';
import type { FoamId } from '../base/ids.ts';
import type { Result } from '../base/result.ts';
import type { Ring } from '../geom/ring.ts';
import type { Box3 } from '../mesh/measure.ts';
import type { BuildUpWish, SideLine } from '../model/build-up.ts';
import type { PlainLine } from '../model/plain-piece.ts';
import type { ShapeMeasure } from '../model/shape.ts';
import type { SizeField } from '../model/shape-size.ts';
import type { NewPlain } from '../project/plain-commands.ts';
import type { PlainSource } from '../project/plain-part.ts';

/** A shape that is offered by name and has pieces to cut. */
export interface ShapeOffer {
  readonly name: string;
  /** Other names of the trade. */
  readonly also: readonly string[];
  /** One sentence. */
  readonly says: string;
  readonly sizes: readonly SizeField[];
}

/** A shape to be tried: sizes as typed, with their units, in a foam. */
export interface ShapeAsk {
  readonly shape: string;
  readonly sizes: Readonly<Record<string, string>>;
  readonly foam: { readonly thicknessMm: number; readonly neutralFraction: number };
}

/** What a shape comes to. Nothing is kept of it. */
export interface TriedShape {
  /** Flat, mm, seen from the face, y up, each in a frame of its own; none where it cannot be made. */
  readonly pieces: readonly TriedPiece[];
  readonly figures: readonly ShapeMeasure[];
  readonly told: readonly ToldOfSize[];
  /** Round its finished form in its own frame, mm; null where it has no form. */
  readonly box: Box3 | null;
}

export interface TriedPiece {
  readonly name: string;
  readonly quantity: number;
  readonly areaMm2: number;
  /** Outer ring counter-clockwise, then holes clockwise. */
  readonly rings: readonly Ring[];
  readonly lines: readonly PlainLine[];
}

/** A part that is made from a file. */
export type FilePart = NewPlain & { readonly source: PlainSource };

/** What is wrong with a size or should be known of it. */
export interface ToldOfSize {
  readonly severity: Severity;
  readonly text: string;
  /** The size it is about; null where it is about none or about several. */
  readonly size: string | null;
}

/** A pipe or rod that is known by name. */
export interface PipeOffer {
  readonly name: string;
  /** `pvc`, `steel` … */
  readonly material: string;
  readonly outsideMm: number;
}

/** What is asked about parts that no sculpt is parted for, before they are in the project. Answered while a compute runs. */
export interface PartsAsking {
  shapes(): Promise<readonly ShapeOffer[]>;
  tryShape(ask: ShapeAsk): Promise<TriedShape>;
  /**
   * A part of a file, which is kept here, with all choices as usual: a drawing or a picture is artwork that is cut out, a model is stacked.
   * Fails where it is neither.
   */
  partFromFile(bytes: Uint8Array, fileName: string, foam: FoamId): Promise<Result<FilePart>>;
  pipes(): Promise<readonly PipeOffer[]>;
  /** A core with all that is built up on it, cut along its axis; no lines where it cannot be made. */
  coreSide(wish: BuildUpWish): Promise<readonly SideLine[]>;
  /** Keeps a file of a part, whatever it holds, for later computes. @returns its SHA-256. */
  keepFile(bytes: Uint8Array, fileName: string): Promise<string>;
}
