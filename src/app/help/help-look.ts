import type { FileKind } from '../../worker/workshop-api.ts';

/** What lies over the bench: all keys, or the words of the trade. */
export type HelpSheetName = 'keys' | 'words';

/** How the help is looked at. */
export interface HelpLook {
  /** Laid over the bench; null: none. */
  readonly sheet: HelpSheetName | null;
  /** The word of the trade that was asked for, by its name in the glossary; empty: none. */
  readonly term: string;
  /** Where the next step of the guided job is done: a line of the job sheet, `stage` for the slider, empty for none. */
  readonly next: string;
  /** Kinds of files that were saved since the window was opened: the guided job ticks by it. */
  readonly saved: readonly FileKind[];
}

export const NO_HELP: HelpLook = { sheet: null, term: '', next: '', saved: [] };

/** How far the guided job is, kept for the next visit. */
export interface GuideWish {
  readonly isOpen: boolean;
  /** Steps that were really done, by their names. */
  readonly done: readonly string[];
}
