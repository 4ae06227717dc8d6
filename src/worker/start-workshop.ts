/// <reference lib="webworker" />
import { ThreadCrew } from '../pipeline/thread-crew.ts';
import { handsOfBrowser, startBrowserHand } from './browser-hands.ts';
import { PipelineWorkshop } from './workshop.ts';

/** DejaVu Sans from our own origin, fetched when the first PDF is made. The worker's file lies in `assets/`, the font beside it. */
async function loadFont(): Promise<Uint8Array> {
  const reply = await fetch(new URL('../fonts/DejaVuSans.ttf', self.location.href));
  if (!reply.ok) throw new Error(`font: ${reply.status}`);
  return new Uint8Array(await reply.arrayBuffer());
}

export const startWorkshop = (): PipelineWorkshop =>
  new PipelineWorkshop(loadFont, new ThreadCrew(startBrowserHand, handsOfBrowser()));
