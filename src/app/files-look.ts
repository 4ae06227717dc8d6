import type { Finding } from '../base/finding.ts';
import type { FilesAsk } from '../worker/files-api.ts';
import type { Progress } from '../worker/workshop-api.ts';

/** Files that are being made, and what was made last. */
export interface FilesLook {
  /** How far it is; null where none are being made. */
  readonly progress: Progress | null;
  /** Name of what was saved last, names of the files in it, and what is left to the hand. */
  readonly saved: {
    readonly name: string;
    readonly names: readonly string[];
    readonly notes: readonly Finding[];
  } | null;
}

export const NO_FILES: FilesLook = { progress: null, saved: null };

/** What is picked until the maker picks otherwise: all the paper. */
export const FIRST_PICK: FilesAsk = {
  paper: ['templates', 'buildSheet', 'cutList'],
  sheetSvg: false,
  dxf: false,
  pngDpi: null,
  stl: false,
  obj: false,
  timesSmaller: null,
};

/** Everything there is: all that can be made of the job, the job itself among it. */
export const EVERYTHING: FilesAsk = {
  paper: ['templates', 'buildSheet', 'cutList', 'gluing', 'pieces', 'report', 'project'],
  sheetSvg: true,
  dxf: true,
  pngDpi: 300,
  stl: true,
  obj: true,
  timesSmaller: null,
};

/** Dots to the inch, and how many times smaller a model may be: as the command line takes them. */
export const DPI = { least: 10, usual: 300, most: 2400 } as const;
export const SMALLER = { over: 1, usual: 5, most: 1000 } as const;

/** True where a file is for a cutter. */
export const isForCutter = ({ sheetSvg, dxf }: FilesAsk): boolean => sheetSvg || dxf;

/** True where nothing is picked. */
export const isNothing = ({ paper, sheetSvg, dxf, pngDpi, stl, obj }: FilesAsk): boolean =>
  paper.length === 0 && !sheetSvg && !dxf && pngDpi === null && !stl && !obj;
