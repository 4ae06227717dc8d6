import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './tokens.css';
import { connectWorkshop } from '../worker/client.ts';
import './app.ts';
import { openSample, restoreLast } from './opening.ts';
import { SAMPLES } from './samples.ts';
import { BrowserStorage } from './storage.ts';
import { Workbench } from './workbench.ts';

const workbench = new Workbench(connectWorkshop(), new BrowserStorage());
const app = document.createElement('fl-app');
app.workbench = workbench;
document.body.append(app);
void (async () => {
  // The first visit opens the first thing of the kit, ready to print; a later one goes on where the last one ended.
  if (!(await restoreLast(workbench))) await openSample(workbench, SAMPLES[0]);
})();
