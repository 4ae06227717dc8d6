import type { BenchFacing, FrameTarget, LookMove } from '../viewport/bench-contract.ts';
import type { FileKind } from '../worker/workshop-api.ts';
import type { LayoutSearchHand } from './layout-search.ts';
import type { DrawingPlace } from './view-state.ts';

/** Something the maker can do, wherever it is offered: beside the chosen thing, on the job sheet, in the finder, by its key. */
export interface Verb {
  readonly id: string;
  readonly label: string;
  /** A single lower-case letter or digit, a comma or a point. */
  readonly key?: string;
  /** True when it belongs beside what is chosen now. */
  readonly isNear?: boolean;
  /** True while what it turned on goes on. */
  readonly isOn?: boolean;
  run(): void;
}

/** What verbs need of the window around the workbench. */
export interface WindowActions {
  look(move: LookMove): void;
  frame(what: FrameTarget): void;
  rollTo(stage: number): void;
  beginWalk(): void;
  /** Takes the chosen seam in hand, or the one in hand farther along. */
  holdSeam(isNext: boolean): void;
  openFile(): void;
  beginWithShape(): void;
  openNewVersion(): void;
  openDrawing(): void;
  /** How a place of the sculpt is looked at now; null without 3D. */
  facing(point: readonly [number, number, number]): BenchFacing | null;
  /** The place of the sculpt in the middle of the picture; null where it is not there. */
  middle(): DrawingPlace | null;
  save(kind: FileKind): void;
  /** Saves the job as another file. */
  saveAs(): void;
  /** Opens the browser's dialogue with the templates. */
  print(): void;
  layoutSearch(): LayoutSearchHand;
  /** Goes to a line of the job sheet, or to the part of it with a tag. */
  goTo(line: string, part?: string): void;
  /** Goes to a button of a line and presses it. */
  press(line: string, part: string): void;
}
