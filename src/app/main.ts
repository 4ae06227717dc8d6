import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './tokens.css';
import { trustOwnScripts } from '../base/own-scripts.ts';
import { connectWorkshop } from '../worker/client.ts';
import './app.ts';
import { onLaunch } from './files/file-handle.ts';
import { browserLocks } from './files/job-lock.ts';
import { openHandle } from './files/open-handle.ts';
import { followLanguage } from './language/follow-wish.ts';
import { keepOffline } from './offline/keep-offline.ts';
import { openSample, restoreLast } from './opening.ts';
import { SAMPLES } from './samples.ts';
import { tellSilence } from './silent-workshop.ts';
import { BrowserStorage } from './storage.ts';
import { Workbench } from './workbench.ts';

trustOwnScripts();
const workshop = connectWorkshop({
  onSilent: (isSilent) => tellSilence(workbench, isSilent, () => workshop.restart()),
});
const workbench: Workbench = new Workbench(workshop, new BrowserStorage(), browserLocks());
const app = document.createElement('fl-app');
app.workbench = workbench;
void (async () => {
  // The picture goes before the rest of the window. Where it cannot be loaded its stage says so.
  await import('../viewport/bench-scene.ts').catch(() => undefined);
  await import('./later-elements.ts');
})();
void (async () => {
  await followLanguage(workbench);
  document.body.append(app);
  // The first visit opens the first thing of the kit, ready to print; a later one goes on where the last one ended.
  if (!(await restoreLast(workbench))) await openSample(workbench, SAMPLES[0]);
  onLaunch((handle) => void openHandle(workbench, handle));
})();
// The development server changes files under a window, and none of them is kept.
if (import.meta.env.PROD) void keepOffline(workbench, import.meta.url);
