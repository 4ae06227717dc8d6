import type { Finding } from '../base/finding.ts';
import type { PieceId, SeamId } from '../base/ids.ts';
import type { BodyFit } from '../model/body-fit.ts';
import type {
  BenchUpdate,
  EarlyUpdate,
  PiecesView,
  PlainPartView,
  SculptBesideView,
  SculptView,
  SeamsView,
  ShellView,
  MirrorView,
} from '../model/bench-view.ts';
import type { DryFit } from '../model/dry-fit.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { PageSet } from '../model/page.ts';
import type { CutBeside } from '../model/plain-piece.ts';
import type { RoomField } from '../model/room-field.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { Springing } from '../model/springing.ts';
import { roomField } from '../viewport/room-field.ts';

/** All that the worker last told, put together from its updates. Replaced, never changed: elements compare by identity. */
export interface Bench {
  /** Number of the last update taken; 0 when nothing is shown. */
  readonly update: number;
  readonly sculpt: SculptView | null;
  readonly shell: ShellView | null;
  readonly seams: SeamsView | null;
  readonly pieces: PiecesView | null;
  readonly sheets: SheetLayout | null;
  readonly paper: PageSet | null;
  /** Parts that no sculpt is parted for, in the order of the project. */
  readonly plain: readonly PlainPartView[];
  readonly sculptsBeside: readonly SculptBesideView[];
  readonly bodyFit: BodyFit | null;
  /** Room round the cores of `bodyFit`, as colours show it. */
  readonly room: RoomField | null;
  readonly dryFit: DryFit | null;
  readonly springing: Springing | null;
  readonly mirror: MirrorView | null;
  readonly findings: readonly Finding[];
  readonly stopped: BenchUpdate['stopped'];
}

export const EMPTY_BENCH: Bench = {
  update: 0,
  sculpt: null,
  shell: null,
  seams: null,
  pieces: null,
  sheets: null,
  paper: null,
  plain: [],
  sculptsBeside: [],
  bodyFit: null,
  room: null,
  dryFit: null,
  springing: null,
  mirror: null,
  findings: [],
  stopped: null,
};

/** A part the update leaves out stays as it was; null takes it away. */
export function mergeUpdate(bench: Bench, update: BenchUpdate): Bench {
  const keep = <T>(next: T | undefined, before: T): T => (next === undefined ? before : next);
  return {
    update: update.number,
    sculpt: keep(update.sculpt, withTree(bench.sculpt, update.tree)),
    shell: keep(update.shell, bench.shell),
    seams: keep(update.seams, bench.seams),
    pieces: keep(update.pieces, bench.pieces),
    sheets: keep(update.sheets, bench.sheets),
    paper: keep(update.paper, bench.paper),
    plain: keep(update.plain, bench.plain),
    sculptsBeside: keep(update.sculptsBeside, bench.sculptsBeside),
    bodyFit: keep(update.bodyFit, bench.bodyFit),
    room: update.bodyFit === undefined ? bench.room : roomField(update.bodyFit),
    dryFit: keep(update.dryFit, bench.dryFit),
    springing: keep(update.springing, bench.springing),
    mirror: keep(update.mirror, bench.mirror),
    findings: update.findings,
    stopped: update.stopped,
  };
}

const withTree = (sculpt: SculptView | null, tree: BenchUpdate['tree']): SculptView | null =>
  tree === undefined || sculpt === null ? sculpt : { ...sculpt, bvh: tree };

/** Shapes sent ahead: what follows from the pieces stays as it was, or goes with their sculpt. */
export function mergeEarly(bench: Bench, early: EarlyUpdate): Bench {
  const { sculpt, tree, shell, seams, pieces, number: update } = early;
  const isSame = sculpt === undefined;
  return mergeUpdate(isSame ? bench : EMPTY_BENCH, {
    number: update,
    ...(isSame ? {} : { sculpt }),
    ...(tree === undefined ? {} : { tree }),
    ...(shell === undefined ? {} : { shell }),
    ...(seams === undefined ? {} : { seams }),
    ...(pieces === undefined ? {} : { pieces }),
    findings: isSame ? bench.findings : [],
    stopped: null,
    madeNew: [],
  });
}

/** What is cut beside the pieces of the sculpt on the bench: strips have no part of their own. */
export const besideOf = ({ pieces }: Bench): readonly (CutBeside | FoamPiece)[] => [
  ...(pieces?.others ?? []),
  ...(pieces?.strips ?? []),
  ...(pieces?.plain ?? []),
];

/** All that is cut from foam. */
export const allCut = (bench: Bench): readonly (FoamPiece | CutBeside)[] => [
  ...(bench.pieces?.pieces ?? []),
  ...besideOf(bench),
];

/** Place of a piece in `pieces.pieces`, or -1. */
export const pieceIndex = (bench: Bench, id: PieceId | string): number =>
  bench.pieces?.pieces.findIndex((piece) => piece.id === id) ?? -1;

/** Place of a seam in `seams.chains`, or -1. */
export const chainIndex = (bench: Bench, id: SeamId | string): number =>
  bench.seams?.chains.findIndex((chain) => chain.id === id) ?? -1;
