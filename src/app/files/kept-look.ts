import type { Project } from '../../project/project.ts';
import type { Hold } from './job-lock.ts';
import type { Keeping } from './keeping.ts';

/** Where the job in hand is kept, as the window shows it. */
export interface KeptLook {
  /** Its key in the browser. */
  readonly job: string;
  /** Empty where it is in no file. */
  readonly fileName: string;
  /** True where the file holds it as it stands. */
  readonly isInFile: boolean;
  readonly hold: Hold;
  /** How often something was to be changed although another window works on it. */
  readonly refusals: number;
}

export const NOT_KEPT: KeptLook = { job: '', fileName: '', isInFile: false, hold: 'mine', refusals: 0 };

export const keptLook = ({ place, hold }: Keeping, project: Project | null, refusals: number): KeptLook => ({
  job: place.job,
  fileName: place.file?.name ?? '',
  isInFile: project !== null && place.inFile === project,
  hold,
  refusals,
});
