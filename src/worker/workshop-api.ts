import type { Finding } from '../base/finding.ts';
import type { Problem, Result } from '../base/result.ts';
import type { BenchUpdate, EarlyUpdate, PropView } from '../model/bench-view.ts';
import type { BendField } from '../model/bend-field.ts';
import type { GirthTape, TapeMeasures } from '../model/girth.ts';
import type { ModelFormat } from '../model/source-model.ts';
import type { MockUp } from '../project/mock-up.ts';
import type { Project, SculptPart, SourceRef } from '../project/project.ts';
import type { Comparing } from './compare-api.ts';
import type { Drawing } from './drawing-api.ts';
import type { Marking } from './marking-api.ts';
import type { PartsAsking } from './parts-api.ts';
import type { Proposing } from './proposing-api.ts';
import type { SheetAsking } from './sheet-api.ts';
import type { Shop } from './shop-api.ts';
import type { FilesMaking } from './files-api.ts';

/** How far a job is: 0 to 1 and what is being done. */
export interface Progress {
  readonly done: number;
  readonly text: string;
}

/** Files that can be saved. `strip`: the page from which a foam's neutral fraction is found; it needs no pieces. */
/** `changed`: the pages of pieces whose paper is not printed or out of date. */
export type FileKind = 'pdf' | 'svg' | 'report' | 'project' | 'strip' | 'changed';

/** A file to save: what it is called and its bytes. */
export interface MadeFile {
  readonly name: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

/** Takes shapes that are sent ahead of a result. @returns whether they are shown, so that they need not be sent again. */
export type OnEarly = (early: EarlyUpdate) => Promise<boolean>;

/**
 * What the window asks of the worker. Every call may be superseded: a new `compute` calls off the one before, whose promise then
 * resolves to `{ cancelled: true }`. Source bytes cross once and are then known by their hash.
 */
export interface Workshop extends Comparing, Marking, Drawing, Proposing, Shop, FilesMaking, SheetAsking, PartsAsking {
  /** Keeps a source file's bytes for later computes. */
  putSource(bytes: Uint8Array, fileName: string): Promise<Result<{ hash: string; format: ModelFormat }>>;
  /** The bytes kept under a hash, or undefined. */
  getSource(hash: string): Promise<Uint8Array | undefined>;
  /**
   * Runs what changed since the last compute and tells what is new.
   * @param have number of the last update the screen took, 0 when it shows nothing: parts it has are left out of the reply.
   * @param sheet which sheet of the wall lies on the bench, 1 the outermost.
   * @param onEarly called with the flat pieces as they come, before they are done and before all else that follows from them.
   */
  compute(
    project: Project,
    have: number,
    onProgress: (progress: Progress) => void,
    onEarly?: OnEarly,
    sheet?: number,
  ): Promise<ComputeReply>;
  /** Calls off the running compute, if any. */
  cancel(): Promise<void>;
  /** The finished prop of the last compute; null before there are pieces. Made when it is asked for, and not again until something changed. */
  prop(): Promise<PropView | null>;
  /** What bending does all over one sheet of the wall, 1 the outermost, of the last compute; null before there are pieces. Made when it is asked for. */
  bendField(sheet: number): Promise<BendField | null>;
  /** Lengths of a tape laid here, on the wall of the last compute; null before there is one. Answered while a compute runs. */
  tapeAt(tape: GirthTape): Promise<TapeMeasures | null>;
  /** Edges of the sculpt (mesh vertex pairs) whose fold is sharper than `angleDeg`. */
  sharpEdges(angleDeg: number): Promise<readonly (readonly [number, number])[]>;
  /** Shortest path along edges between two mesh vertices, as mesh vertices; a Problem when they lie on separate shells. */
  edgePath(from: number, to: number): Promise<Result<readonly number[]>>;
  /** Files of the last complete compute. `date` is ISO 8601 and goes into the PDF's information. */
  makeFile(kind: FileKind, project: Project, date: string): Promise<Result<MadeFile>>;
  /** The pages of the job's mock-up in card. Fails as the chain does. */
  makeMockUp(mockUp: MockUp, project: Project, date: string): Promise<Result<MadeFile>>;
  /** The sculpt's part of a project brought to a new version of the sculpt, whose file was put here, and what is to be told of that. */
  newVersion(
    project: Project,
    source: SourceRef,
  ): Promise<Result<{ readonly part: SculptPart; readonly findings: readonly Finding[] }>>;
  /** Reads a project file: the document and its sources (kept here as by `putSource`). */
  openProject(bytes: Uint8Array, fileName: string): Promise<Result<Project>>;
}

export type ComputeReply =
  | { readonly cancelled: true }
  | { readonly cancelled: false; readonly update: BenchUpdate; readonly problem?: Problem };
