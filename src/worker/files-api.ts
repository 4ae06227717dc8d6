import type { Finding } from '../base/finding.ts';
import type { Result } from '../base/result.ts';
import type { Project } from '../project/project.ts';
import type { Progress } from './workshop-api.ts';

/** Files that are made of the job whatever cuts it. */
export type PaperFile = 'templates' | 'buildSheet' | 'cutList' | 'gluing' | 'pieces' | 'report' | 'project';

/** Which files are wanted. How a cutter cuts is in the project. */
export interface FilesAsk {
  readonly paper: readonly PaperFile[];
  /** Of every sheet of foam. */
  readonly sheetSvg: boolean;
  readonly dxf: boolean;
  /** Of every sheet and page, with so many dots to the inch; null: none. */
  readonly pngDpi: number | null;
  /** Of the finished prop; where its wall has several sheets also of each. With `obj` the flat pieces too. */
  readonly stl: boolean;
  readonly obj: boolean;
  /** The prop once more, so many times smaller; null: not. */
  readonly timesSmaller: number | null;
}

/** A file that is ready to be saved. */
export interface ReadyFile {
  readonly name: string;
  readonly blob: Blob;
}

/** @param files one, or one zip that holds all of several. `notes` tell what is left to the hand. */
export interface FilesMade {
  readonly file: ReadyFile;
  /** Names of what was made. */
  readonly names: readonly string[];
  readonly notes: readonly Finding[];
}

export interface FilesMaking {
  /**
   * Makes files of a job. One list at a time: a newer one calls the older off.
   * @param date `YYYY-MM-DD`, printed and written into them.
   * @returns null where it was called off; fails as the chain and the writers do.
   */
  makeFiles(
    ask: FilesAsk,
    project: Project,
    date: string,
    onProgress: (progress: Progress) => void,
  ): Promise<Result<FilesMade> | null>;
  stopFiles(): Promise<void>;
}
