import { saveJob } from '../files/save-job.ts';
import type { Workbench } from '../workbench.ts';
import { Keeper } from './keeper.ts';
import { NewVersion } from './new-version.ts';
import { OFFLINE } from './offline-state.ts';
import { lastingNotice } from './lasting-notice.ts';
import { QuietNotice } from './quiet-notice.ts';

/** A first picture that does not come is not waited for any longer, ms. */
const LONGEST_WAIT_MS = 60_000;

/**
 * Has the browser keep the whole app once the first job is shown, tells of new versions and, where it matters, of a missing network.
 * @param entry  address of the first script of this window
 */
export async function keepOffline(workbench: Workbench, entry: string): Promise<void> {
  window.addEventListener('beforeinstallprompt', (event) => {
    // It may be asked once; after a no the browser offers it again in its own time.
    const ask = (): void => {
      OFFLINE.set({ install: null });
      void (event as Event & { prompt(): Promise<void> }).prompt();
    };
    OFFLINE.set({ install: ask });
  });
  window.addEventListener('appinstalled', () => OFFLINE.set({ install: null }));
  // One line for all of it: a new version matters more than that all is kept.
  const notice = new QuietNotice(workbench);
  window.addEventListener('offline', () => {
    if (OFFLINE.keeping !== 'kept') notice.say(lastingNotice('notYet'));
  });
  if (!('serviceWorker' in navigator)) return;
  OFFLINE.set({ keeping: 'keeping' });
  const version = new NewVersion(workbench, notice, {
    save: () => saveJob(workbench, new Date().toISOString().slice(0, 10)),
    reload: () => location.reload(),
  });
  const keeper = new Keeper(navigator.serviceWorker, entry, {
    onKept: (isFirst) => {
      OFFLINE.set({ keeping: 'kept' });
      if (isFirst) notice.say(lastingNotice('ready'));
      else notice.drop();
    },
    onNewer: (takeOver, isElsewhere) => version.offer(takeOver, isElsewhere),
  });
  // What cannot be had now is asked for again when the network is back or the window is looked at.
  const again = (): void => void keeper.lookAgain().catch(() => undefined);
  await firstShown(workbench);
  await keeper.begin().catch(() => undefined);
  window.addEventListener('online', again);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') again();
  });
}

/** Until a job is worked out and drawn: what is kept for later must not slow what is waited for now. */
async function firstShown(workbench: Workbench): Promise<void> {
  await new Promise<void>((resolve) => {
    const timer = setTimeout(resolve, LONGEST_WAIT_MS);
    const look = (): void => {
      if (workbench.bench.paper === null && workbench.notice?.tone !== 'problem') return;
      workbench.removeEventListener('change', look);
      clearTimeout(timer);
      resolve();
    };
    workbench.addEventListener('change', look);
    look();
  });
  await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
}
