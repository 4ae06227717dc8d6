import { bringBackState } from '../../project/bring-back.ts';
import { renameProject } from '../../project/commands.ts';
import { placeOfSaved } from '../opening.ts';
import type { SavedJob } from '../storage.ts';
import type { Verb } from '../verb.ts';
import type { Workbench } from '../workbench.ts';
import type { StateAsk } from './keep-events.ts';
import { KEEP_WORDS } from './keep-words.ts';
import { jobKeyOf, nowIdOf } from './kept-job.ts';
import { whenSaid } from './when.ts';

/** Does what is asked of a kept state. @returns when the list of states may have changed. */
export async function askState(bench: Workbench, ask: StateAsk): Promise<void> {
  try {
    if (ask.kind === 'forget') await bench.storage.forget(ask.job);
    else await bringBack(bench, ask.id);
  } catch {
    bench.setNotice({ tone: 'problem', text: KEEP_WORDS.earlier.missing });
  }
}

/** Puts a kept state in the place of the job in hand, as a change that can be undone; that of another job opens that job first. */
async function bringBack(bench: Workbench, id: string): Promise<void> {
  await bench.autosave.flush();
  const state = await bench.storage.fetch(id);
  if (state === null) return bench.setNotice({ tone: 'problem', text: KEEP_WORDS.earlier.missing });
  await handOver(bench, state);
  if (state.stamp.job !== bench.keeping.place.job) {
    const latest = state.stamp.isNow ? state : await bench.storage.fetch(nowIdOf(state.stamp.job));
    if (latest !== null) await handOver(bench, latest);
    const opened = latest ?? state;
    bench.setReading(opened.project.name);
    bench.adopt(opened.project, [], placeOfSaved(opened));
    if (state.stamp.isNow) return;
  }
  bench.run(bringBackState(state.project));
  bench.setNotice({ tone: 'note', text: KEEP_WORDS.earlier.back(whenSaid(state.stamp.atMs)) });
}

/** Its files go to the worker, which may not have them yet. */
async function handOver(bench: Workbench, { sources }: SavedJob): Promise<void> {
  for (const { bytes, fileName } of sources) await bench.workshop.keepFile(bytes, fileName);
}

/** Works on the job in this window; the other one only looks from then on. What was changed here meanwhile becomes an earlier state. */
export async function workHere(bench: Workbench): Promise<void> {
  const { keeping, project } = bench;
  if (project === null || keeping.hold === 'mine') return;
  await keeping.lock.takeOver();
  if (bench.keeping.hold !== 'mine') return;
  const theirs = await bench.storage.fetch(nowIdOf(keeping.place.job)).catch(() => null);
  const isSame = theirs === null || JSON.stringify(theirs.project) === JSON.stringify(project);
  if (isSame) bench.keepNow();
  else if (bench.history?.canUndo === true) {
    // Both have changed: theirs is in force, and mine can be brought back from the list, or by the way back.
    bench.keepNow(true);
    await bench.autosave.flush();
  }
  if (!isSame) {
    await handOver(bench, theirs);
    bench.adopt(theirs.project, [], placeOfSaved(theirs));
  }
  bench.say(KEEP_WORDS.windows.taken);
}

/** Goes on in a job of its own: its first change is its name. */
export function openCopy(bench: Workbench): void {
  const { project } = bench;
  if (project === null) return;
  const named = renameProject(KEEP_WORDS.windows.copyName(project.name)).apply(project);
  void bench.keepSources(named).then(() => bench.adopt(named, [], { job: jobKeyOf(named), file: null, inFile: null }));
}

/** What verbs about keeping need of the window. */
export interface KeepWindow {
  saveAs(): void;
  goTo(line: string, part?: string): void;
}

/** What can be done about where the job is kept. */
export function keepVerbs(bench: Workbench, actions: KeepWindow): Verb[] {
  const words = KEEP_WORDS.verbs;
  const { before, project, keeping } = bench;
  const verb = (id: string, label: string, run: () => void): Verb => ({ id, label, run });
  return [
    ...(project === null ? [] : [verb('save-as', words.saveAs, () => actions.saveAs())]),
    ...(keeping.hold === 'mine'
      ? []
      : [
          verb('work-here', words.workHere, () => void workHere(bench)),
          verb('open-copy', words.copy, () => openCopy(bench)),
        ]),
    ...(keeping.hold === 'elsewhere' ? [verb('only-look', words.onlyLook, () => keeping.lock.look())] : []),
    ...(before === null ? [] : [verb('go-back', words.goBack(before.name), () => bench.goBack())]),
    verb('earlier-states', words.earlier, () => actions.goTo('head', 'fl-earlier-states')),
  ];
}
