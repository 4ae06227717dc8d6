import type { FoamId, LayerId, PartId } from '../base/ids.ts';
import type { PaperLanguage } from '../base/paper-language.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { TracedSide } from '../model/foam-piece.ts';
import type { EdgeWish, FlattenWishes, Region } from '../model/flatten-settings.ts';
import type { Core } from '../model/clearance.ts';
import type { CutterWish } from '../model/cutter.ts';
import type { ClayFillet } from '../model/clay.ts';
import type { GirthTape, PassChoice } from '../model/girth.ts';
import type { HiddenSide } from '../model/hidden-side.ts';
import type { BodyJoint } from '../model/joint.ts';
import type { PrinterProfile } from '../model/printer.ts';
import type { PieceSetting } from '../model/foam-settings.ts';
import type { ScoredLine } from '../model/score.ts';
import type { SeamMarks, SeamSetting } from '../model/seams.ts';
import type { SeamOfPieces, ShopChoices } from '../model/shop-choices.ts';
import type { StockChoices } from '../model/stock.ts';
import type { BodyMeasure } from '../model/body-measures.ts';
import type { TipHole } from '../model/tip-hole.ts';
import type { ModelIs } from '../model/shell-layer.ts';
import type { PartJoin } from './joins.ts';
import type { KeptVersion } from './kept-version.ts';
import type { PlainPart } from './plain-part.ts';
import type { ModelFormat, Repair, ScaleChoice } from '../model/source-model.ts';

/**
 * Everything the maker chose and nothing that follows from it: frozen, JSON-ready, undoable (house style, section 2).
 * Bytes of source files are kept beside it, once, by hash.
 */
export interface Project {
  readonly schemaVersion: 1;
  readonly name: string;
  /** Counts the changes; printed on each page so that old paper can be told from new. Begins with 1. */
  readonly revision: number;
  /** The sculpted shells, in the order in which their pieces are numbered; none where the prop is made of other parts alone. */
  readonly parts: readonly Part[];
  /** The sculpt that is worked on, where there are several. Missing: the first. */
  readonly atWork?: PartId;
  /** Parts that no sculpt is parted for; their pieces are numbered on from those of the sculpts. Missing: none. */
  readonly plain?: readonly PlainPart[];
  /** How parts have to do with each other; ids are its own. Missing: nobody has said. */
  readonly joins?: readonly PartJoin[];
  /** What the wearer measures, each measure once; sculpts may follow one. Missing: nothing was measured. */
  readonly body?: readonly BodyMeasure[];
  /** The maker's foams; a layer names one by its id. */
  readonly foams: readonly FoamSheet[];
  readonly paper: PaperChoice;
  /** Printers as measured, each under a name of its own. Missing: none. */
  readonly printers?: readonly PrinterProfile[];
  /** The one of them that pages are corrected for. Missing: none, pages are printed as they are drawn. */
  readonly printer?: string;
  /** What was ticked off, one entry a piece. Missing: nothing. */
  readonly done?: readonly PieceDone[];
  /** What else of the work was ticked off, one entry a step. Missing: nothing. */
  readonly doneSteps?: readonly StepDone[];
  /** What was said of glue, coats and prices. Missing: nothing. */
  readonly shop?: ShopChoices;
  /** What cuts the sheets, and how. Missing: nobody has said. */
  readonly cutter?: CutterWish;
  /** The foam on the shelf, how sheets are filled and where pieces were put. Missing: whole sheets are bought and filled as usual. */
  readonly stock?: StockChoices;
  readonly lengthUnit: 'mm' | 'in';
  /** States that were kept under names; they hold no versions themselves. Missing: none. */
  readonly versions?: readonly KeptVersion[];
}

/** What was ticked off of a piece. */
export interface PieceDone {
  /** Its id (`PieceId`), or that of a strip. */
  readonly piece: string;
  /** Revision on the paper that was printed. */
  readonly printed?: string;
  /** Revision that was cut from foam. */
  readonly cut?: string;
  /** Revision whose edges were cut to their bevels. */
  readonly bevelled?: string;
  /** Revision that was grooved, scored, warmed and bent. */
  readonly formed?: string;
}

/** A step that was ticked off and is of no single piece: a test, a seam that is glued, a coat, something that was bought. */
export interface StepDone {
  /** What it is, the same as long as its meaning stays: `glue/…`, `buy/…`. */
  readonly id: string;
  /** What it was of when it was ticked, for example the revisions of its pieces: with others, the tick no longer holds. */
  readonly as: string;
}

/** A sculpted shell; the `kind` tells it from a part that is made from its own figures. */
export type Part = SculptPart;

export interface SculptPart {
  readonly kind: 'sculpt';
  readonly id: PartId;
  readonly name: string;
  readonly source: SourceRef;
  /** Place in the assembly: 4 x 4, column by column, mm. */
  readonly transform: readonly number[];
  readonly copies: number;
  /** Null until the maker has said how large the model is. */
  readonly scale: ScaleChoice | null;
  readonly upAxis: 'x' | 'y' | 'z';
  readonly repairs: readonly Repair[];
  /** How far the sculpt is made simpler for paper. Missing: it is taken as it is. */
  readonly simplify?: SimplifyChoice;
  readonly seams: SeamMarks;
  readonly seamSettings: readonly SeamSetting[];
  /** Edges of the seams, file numbers, that stay whatever is proposed. Missing: none. */
  readonly heldSeams?: readonly (readonly [number, number])[];
  /** The plane the sculpt mirrors itself in. Missing: as it is found. */
  readonly mirror?: MirrorChoice;
  /** Side that is seen least: proposals make seams there cheaper. Missing: all sides are alike. */
  readonly hiddenSide?: HiddenSide;
  readonly pieceSettings: readonly PieceSetting[];
  readonly flatten: FlattenWishes;
  /** Areas that are to stretch otherwise than the rest or of which something is said of seams. Where two meet, the later one counts. */
  readonly regions: readonly Region[];
  readonly edgeWishes: readonly EdgeWish[];
  /** Slits in the face that heat opens; ids are its own. Missing: none. */
  readonly scores?: readonly ScoredLine[];
  /** Round holes at the ends of darts, one at a corner. Missing: all end in points. */
  readonly tipHoles?: readonly TipHole[];
  readonly modelIs: ModelIs;
  /** How far that surface of the foam stands off the sculpt, outward, mm; inward negative. Missing: 0, it lies on it. */
  readonly offMm?: number;
  /** Sheets of the wall, from the back outward: one or more, with ids of their own. */
  readonly layers: readonly LayerChoice[];
  readonly tracedSide: TracedSide;
  /** Girth tapes laid round the part; ids are its own. Missing: none. */
  readonly tapes?: readonly GirthTape[];
  /** Rods, pipes and models that it sits on; ids are its own. Missing: none. */
  readonly core?: readonly Core[];
  /** Joints of the body between its pieces; ids are its own. Missing: none. */
  readonly joints?: readonly BodyJoint[];
  /** The order in which the seams of its innermost sheet are glued, as it was accepted. Missing: as it is found. */
  readonly gluing?: readonly SeamOfPieces[];
  /** Seams of the sheet that is seen that are filled with clay. Missing: none. */
  readonly fillets?: readonly ClayFillet[];
  /** What must pass when it is put on; missing: it is not said to be worn. */
  readonly worn?: PassChoice;
}

/** `off`: the sculpt is taken for one without a mirror. Else a plane in the numbers of the file, so that it stays on the sculpt when that changes its size. */
export type MirrorChoice =
  | { readonly by: 'off' }
  | {
      readonly by: 'plane';
      readonly pointInFile: readonly [number, number, number];
      /** Square to the plane, any length but 0. */
      readonly normal: readonly [number, number, number];
    };

/** One of the two measures is given. */
export interface SimplifyChoice {
  /** Triangles that are enough, >= 4. */
  readonly triangles?: number;
  /** Farthest that any place of the surface may move, mm, > 0. */
  readonly deviationMm?: number;
  /** Corners of the file that stay, ascending: those that marks, areas and names stood on when it was asked for. */
  readonly keep: readonly number[];
}

export interface SourceRef {
  /** SHA-256, 64 hex digits. */
  readonly hash: string;
  readonly fileName: string;
  readonly format: ModelFormat;
}

export interface LayerChoice {
  readonly id: LayerId;
  readonly foam: FoamId;
  /** mm; usually the foam's own, but a maker may measure the sheet in hand. */
  readonly thicknessMm: number;
  /** k, 0 to 1. */
  readonly neutralFraction: number;
  /** True to cut the pieces larger by what their foam shrinks under the hot-air gun (`FoamSheet.shrinkage`). */
  readonly allowForShrinkage: boolean;
  /**
   * How far the sheet's seams lie beside those of the sheet that is seen, mm along the sculpt; negative: to the other side. Missing: the same
   * seams. What is seen keeps its seams where they are marked, whatever is said here.
   */
  readonly staggerMm?: number;
}

export interface PaperChoice {
  /** Name of a paper in shared/papers.json, or `custom` or `roll` with sizes below. */
  readonly name: string;
  /** mm; for `custom` both, for `roll` the width. */
  readonly widthMm?: number;
  readonly heightMm?: number;
  readonly orientation: 'portrait' | 'landscape';
  readonly marginMm: number;
  readonly overlapMm: number;
  /**
   * How pieces that mirror each other come on paper. once: where one template serves for both, turned over for the second, it is printed once.
   * each: each has its own. Missing: once.
   */
  readonly mirrored?: 'once' | 'each';
  /**
   * How long straight strips of one width come to the foam. tell: they are cut by the ruler, and the map tells their figures. print: they have paper as
   * all else has. Missing: tell.
   */
  readonly ruled?: 'print' | 'tell';
  /** In which language it is printed, so that one project makes the same pages wherever it is opened. Missing: English. */
  readonly language?: PaperLanguage;
}
