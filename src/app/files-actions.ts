import { DPI, SMALLER, type FilesLook } from './files-look.ts';
import { FILES_WORDS } from './files-words.ts';
import type { FilesAsk, ReadyFile } from '../worker/files-api.ts';
import type { Progress } from '../worker/workshop-api.ts';
import type { Verb } from './verb.ts';
import type { Workbench } from './workbench.ts';

/** Progress that is worth being shown, as a share of the whole. */
const LEAST_STEP = 0.01;

/** Makes what was picked and hands it over. @param date `YYYY-MM-DD`. */
export async function saveFiles(
  bench: Workbench,
  ask: FilesAsk,
  date: string,
  save: (file: ReadyFile) => void,
): Promise<void> {
  const { project } = bench;
  if (project === null) return;
  const show = (making: FilesLook): void => bench.setView({ making });
  show({ progress: { done: 0, text: '' }, saved: null });
  bench.say(FILES_WORDS.spoken.begun);
  const onProgress = (progress: Progress): void => {
    const { progress: shown } = bench.view.making;
    // Messages may arrive after the reply they belong to; and no more is shown than can be read.
    if (shown === null || (shown.text === progress.text && progress.done - shown.done < LEAST_STEP)) return;
    show({ progress, saved: null });
  };
  try {
    const made = await bench.workshop.makeFiles(ask, project, date, onProgress);
    if (made === null) {
      show({ progress: null, saved: null });
      return bench.say(FILES_WORDS.spoken.stopped);
    }
    if (!made.ok) {
      show({ progress: null, saved: null });
      return bench.showProblem(made.problem);
    }
    const { file, names, notes } = made.value;
    save(file);
    show({ progress: null, saved: { name: file.name, names, notes } });
    bench.say(FILES_WORDS.saved(file.name, names.length));
  } catch (error) {
    show({ progress: null, saved: null });
    throw error;
  }
}

export const stopFiles = (bench: Workbench): void => void bench.workshop.stopFiles();

/** What can be done about files that are being made. */
export const filesVerbs = (bench: Workbench): Verb[] =>
  bench.view.making.progress === null
    ? []
    : [{ id: 'stop-files', label: FILES_WORDS.stopVerb, isOn: true, run: () => stopFiles(bench) }];

/** The pick with one of its parts turned on or off. */
export function withPart(ask: FilesAsk, part: 'png' | 'smaller', isOn: boolean): FilesAsk {
  return part === 'png'
    ? { ...ask, pngDpi: isOn ? DPI.usual : null }
    : { ...ask, timesSmaller: isOn ? SMALLER.usual : null };
}
