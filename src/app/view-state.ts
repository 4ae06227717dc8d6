import type { PartId, PieceId, SeamId } from '../base/ids.ts';
import type { GirthTape, TapeMeasures } from '../model/girth.ts';
import type { PropView, SeamsView } from '../model/bench-view.ts';
import type { BendField } from '../model/bend-field.ts';
import type { PageSet } from '../model/page.ts';
import type { PrinterProfile } from '../model/printer.ts';
import type { SeamCost } from '../model/seam-cost.ts';
import type {
  BenchFacing,
  BenchPlane,
  Colouring,
  Highlight,
  Look,
  SectionFigures,
} from '../viewport/bench-contract.ts';
import type { FlatDrawing, LaidDrawing, Spot } from '../worker/drawing-api.ts';
import type { ProposalAnswer, ProposalKind, ToldReason } from '../worker/proposing-api.ts';
import type { FilesAsk } from '../worker/files-api.ts';
import type { FileKind } from '../worker/workshop-api.ts';
import { NO_FILES, type FilesLook } from './files-look.ts';
import { NO_GLUING, type GluingLook } from './gluing-look.ts';
import { NO_HELP, type GuideWish, type HelpLook } from './help/help-look.ts';
import type { PlaceUnder } from './legend/place-under.ts';
import type { FoundLayout, LayoutFigures } from '../worker/sheet-search-api.ts';
import type { LanguageWish } from './language/language.ts';
import type { Shelf } from './shelf.ts';
import type { PictureManner } from '../viewport/picture-manner.ts';

/** What the maker has chosen. Pieces and seams are named by their ids, which survive a new computation. */
export type Choice =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'seam'; readonly seam: SeamId }
  | { readonly kind: 'piece'; readonly piece: PieceId }
  | { readonly kind: 'page'; readonly page: number }
  /** Laid over the bench, by its place in the layout. */
  | { readonly kind: 'sheet'; readonly sheet: number }
  /** Whatever it is made of: a sculpt, a shape … */
  | { readonly kind: 'part'; readonly part: PartId }
  /** Of gluing, by its number. */
  | { readonly kind: 'step'; readonly step: number }
  /** A finding that is of no one seam, piece or part: by its key, with what it lights. */
  | { readonly kind: 'finding'; readonly key: string; readonly place: Highlight };

export const NOTHING: Choice = { kind: 'nothing' };

/** Whether two choices are of the same seam, piece, part or finding. */
export function isSameChoice(one: Choice, other: Choice): boolean {
  switch (one.kind) {
    case 'seam':
      return other.kind === 'seam' && one.seam === other.seam;
    case 'piece':
      return other.kind === 'piece' && one.piece === other.piece;
    case 'part':
      return other.kind === 'part' && one.part === other.part;
    case 'finding':
      return other.kind === 'finding' && one.key === other.key;
    default:
      return false;
  }
}

/** What a click on the sculpt does. `walk` moves a mark along edges by the arrow keys. */
export type Tool = 'choose' | 'part' | 'path' | 'dart' | 'drawing' | 'measure' | 'walk' | 'move';

/** How far a click with the knife goes: the edge, the line of edges all the way round, or its ridge. */
export type Reach = 'edge' | 'round' | 'ridge';

/** How a path runs from corner to corner: along edges, straight across faces, or as one smooth curve. */
export type Lay = 'edges' | 'straight' | 'curve';

/** A piece that a path is kept to; `isAcross` runs both its ends on to the edges of the piece. */
export interface PathWithin {
  readonly piece: PieceId;
  readonly isAcross: boolean;
}

/** Where the middle of a drawing lies: in a triangle of the sculpt on show, mm, and how that was looked at. */
export interface DrawingPlace {
  readonly triangle: number;
  readonly point: readonly [number, number, number];
  readonly facing: BenchFacing;
}

/** A place of a seam that is moved by keys. */
export interface SeamGrip {
  /** Number of the path it runs along there; null where it runs along edges. */
  readonly path: number | null;
  readonly seam: SeamId;
  /** Corner of the sculpt it is at: along edges. */
  readonly corner: number;
  /** Which of its places was taken hold of, from 1. */
  readonly part: number;
  /** Where that is now, mm. */
  readonly at: readonly [number, number, number];
}

/** A drawing from a file, to be laid on the sculpt. */
export interface DrawingInHand extends FlatDrawing {
  /** Of its file. */
  readonly name: string;
  /** What of the file is not in it; empty where all is. */
  readonly notes: string;
  /** As it is seen, along the lines of sight, or round the surface like a string. */
  readonly way: 'seen' | 'round';
  readonly sizePct: number;
  /** Counter-clockwise. */
  readonly turnDeg: number;
  readonly shiftMm: readonly [number, number];
  readonly place: DrawingPlace | null;
}

/** Seams found by search: how it stands and the answers so far. While it stops, sheets and pages are worked out. */
export interface Proposals {
  readonly state: 'looking' | 'stopping' | 'done';
  /** Whether all that was marked stays in them; `ease`: places to ease one piece. */
  readonly from: 'anew' | 'rest' | 'ease';
  /** Of one piece that is eased: limits it breaks as it is; left out until they are known. */
  readonly why?: readonly ToldReason[];
  readonly answers: Partial<Readonly<Record<ProposalKind, ProposalAnswer>>>;
}

/** A search for a better layout on sheets. */
export interface LayoutSearch {
  /** `broken`: it ended by a fault of ours. `outdated`: the job changed meanwhile, so that what was found no longer holds. */
  readonly state: 'looking' | 'stopped' | 'broken' | 'outdated';
  /** What it began with; null until that is known. */
  readonly first: LayoutFigures | null;
  readonly best: FoundLayout | null;
  readonly seconds: number;
  readonly moves: number;
}

/** What it would cost to join each of some seams, as far as it is known. Of other seams it says nothing. */
export interface Costs {
  readonly seams: SeamsView;
  readonly isRunning: boolean;
  readonly list: readonly SeamCost[];
}

/** Things to be lit on the stage while something that speaks of them is pointed at. */
export type Pointed = Highlight;

/** A plane the maker drags through the sculpt, and what for: to cut everything open there, or to lay a tape. One at a time. */
export interface PlaneInHand {
  readonly of: 'section' | 'tape';
  /** Of a tape: its id. */
  readonly id?: string;
  readonly plane: BenchPlane;
}

/** A tape where it is being dragged to, and its lengths there. */
export interface TriedTape extends TapeMeasures {
  readonly tape: GirthTape;
}

/** How both pieces meet at the seam under the pointer, mm: gap > 0, overlap < 0. */
export interface FitReading {
  readonly letter: string;
  readonly faceGapMm: number;
  readonly backGapMm: number;
}

/** How the window is looked at: not saved with the job, not undone. */
export interface ViewState {
  /** 0 whole, 1 apart, 2 flat, 3 on the sheet; anything between. */
  readonly stage: number;
  readonly colouring: Colouring;
  readonly familiar: 'none' | 'hand' | 'head' | 'door';
  /** Which sheet of the wall lies on the bench, 1 the outermost. */
  readonly sheet: number;
  readonly choice: Choice;
  /** Triangle of the sculpt that was clicked when a piece was chosen: an area of it may be meant; null where none was. */
  readonly place: number | null;
  /** How far from there the area reaches, mm; null as far as its panel. */
  readonly withinMm: number | null;
  readonly tool: Tool;
  readonly reach: Reach;
  /** How sharp a ridge must be to be followed, degrees. */
  readonly ridgeDeg: number;
  /** Corners picked for a path so far, and the edges from each to the next. */
  readonly through: readonly number[];
  readonly stretches: readonly (readonly number[])[];
  readonly within: PathWithin | null;
  readonly lay: Lay;
  /** True to mark on both sides of the mirror. */
  readonly isMirrored: boolean;
  /** Places picked for a line across faces, and lines in space that would be drawn, x y z, mm. */
  readonly spots: readonly Spot[];
  readonly previewLines: readonly Float32Array[] | null;
  /** Distance between planes at which it is parted, and how far a seam may stray when it is straightened, mm. */
  readonly spacingMm: number;
  readonly tautMm: number;
  /** The place of a seam in hand, while its tool is. */
  readonly grip: SeamGrip | null;
  /** The dart pulled last, while its tool is in hand: the corner it ends at, and how long it is. */
  readonly dart: { readonly tip: number; readonly lengthMm: number } | null;
  /** The drawing in hand, and how it lies or why it cannot; null until that is known. */
  readonly drawing: DrawingInHand | null;
  readonly laid: LaidDrawing | { readonly problem: string } | null;
  readonly proposals: Proposals | null;
  readonly costs: Costs | null;
  readonly layoutSearch: LayoutSearch | null;
  /** Greatest stretch and squash a proposal may ask of the foam, per cent; null as much as the foam can take. */
  readonly proposalPct: number | null;
  /** First corner of a measured length, in the numbering of the sculpt. */
  readonly from: number | null;
  /** Second corner of a measured length. */
  readonly to: number | null;
  /** Corner the walking mark stands on, and the edge it came along. */
  readonly cursor: number | null;
  readonly walked: number | null;
  readonly pointed: Pointed | null;
  readonly plane: PlaneInHand | null;
  /** The tape in hand while it is dragged; null when it lies as the document says. */
  readonly tried: TriedTape | null;
  /** What is looked at while nothing has come off. */
  readonly look: Look;
  /** The finished prop, there while it is looked at. */
  readonly prop: PropView | null;
  /** Size of what is cut open, and how thick the foam is in the cut where one points, mm. */
  readonly section: SectionFigures | null;
  readonly thicknessMm: number | null;
  /** Edges shown as they would part. */
  readonly preview: readonly number[] | null;
  /** What lies under the pointer, to read figures at. */
  readonly under: PlaceUnder | null;
  /** How the foam bends all over, there while colours show it. */
  readonly bends: BendField | null;
  readonly finderOpen: boolean;
  readonly gluing: GluingLook;
  readonly making: FilesLook;
  /** Findings that were shown, by their keys: they are not the next step any more. */
  readonly seen: readonly string[];
  /** The file of which it is asked whether to save it although something stops it. */
  readonly printAsked: FileKind | 'print' | null;
  /** The pages that were saved or printed last. */
  readonly paperOut: PageSet | null;
  readonly help: HelpLook;
}

/** Without a path begun. */
export const NO_PATH = {
  through: [],
  stretches: [],
  within: null,
  preview: null,
  spots: [],
  previewLines: null,
  dart: null,
  drawing: null,
  laid: null,
} as const;

export const FIRST_VIEW: ViewState = {
  stage: 0,
  colouring: 'plain',
  familiar: 'none',
  sheet: 1,
  choice: NOTHING,
  place: null,
  withinMm: null,
  tool: 'choose',
  reach: 'edge',
  ridgeDeg: 30,
  through: [],
  stretches: [],
  within: null,
  lay: 'edges',
  isMirrored: false,
  spots: [],
  previewLines: null,
  spacingMm: 50,
  tautMm: 3,
  dart: null,
  grip: null,
  drawing: null,
  laid: null,
  proposals: null,
  costs: null,
  layoutSearch: null,
  proposalPct: null,
  from: null,
  to: null,
  cursor: null,
  walked: null,
  pointed: null,
  plane: null,
  tried: null,
  look: 'foam',
  prop: null,
  section: null,
  thicknessMm: null,
  preview: null,
  under: null,
  bends: null,
  finderOpen: false,
  gluing: NO_GLUING,
  making: NO_FILES,
  seen: [],
  printAsked: null,
  paperOut: null,
  help: NO_HELP,
};

/** What the window keeps in mind for its next visit, beside the job. */
export interface Wishes {
  readonly theme: 'auto' | 'light' | 'dark';
  readonly contrast: 'auto' | 'more';
  /** Single letters as keys; WCAG 2.1.4 wants a way to turn them off. */
  readonly letterKeys: boolean;
  /** How finely the bench is drawn. */
  readonly picture: PictureManner;
  /** Printers that were measured, for the next job too. Missing: none. */
  readonly printers?: readonly PrinterProfile[];
  /** Foam that earlier jobs left, for the next job. Missing: none. */
  readonly shelf?: Shelf;
  /** Files that were picked to be saved. Missing: as usual. */
  readonly files?: FilesAsk;
  /** The guided job. Missing: it was neither begun nor put away. */
  readonly guide?: GuideWish;
  /** The work order at the bench, line by line: whether it is on, and the key of the line that was looked at last. Missing: it never was. */
  readonly atBench?: { readonly isOpen: boolean; readonly line: string | null };
  /** What the window speaks. Missing: as the system. */
  readonly language?: LanguageWish;
}

export const FIRST_WISHES: Wishes = { theme: 'auto', contrast: 'auto', letterKeys: true, picture: 'auto' };
