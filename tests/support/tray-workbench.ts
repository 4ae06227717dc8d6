import { Workbench } from '../../src/app/workbench.ts';
import { newProject } from '../../src/project/new-project.ts';
import { setScale } from '../../src/project/commands.ts';
import { partSharp } from '../../src/app/seam-actions.ts';
import { PipelineWorkshop } from '../../src/worker/workshop.ts';
import { TRAY_OBJ } from '../browser/open-tray.ts';
import { expectOk } from './expect-ok.ts';
import { MemoryStorage } from './memory-storage.ts';

const noFont = (): Promise<Uint8Array> => Promise.reject(new Error('no PDF is made here'));

/** A workbench with the real chain behind it, in this thread. */
export function makeWorkbench(storage = new MemoryStorage()): { workbench: Workbench; storage: MemoryStorage } {
  return { workbench: new Workbench(new PipelineWorkshop(noFont), storage), storage };
}

/** Resolves when the workbench shows the document in force. */
export async function shown(workbench: Workbench): Promise<void> {
  while (workbench.isStale || workbench.progress !== null || workbench.reading !== null) {
    await new Promise((resolve) => workbench.addEventListener('change', resolve, { once: true }));
  }
}

/** The tool tray as it comes from its file: no size, no seams. */
export const openTray = (workbench: Workbench): Promise<void> => openObj(workbench, 'tool tray', TRAY_OBJ);

/** A model as it comes from its file. */
export async function openObj(workbench: Workbench, name: string, obj: string): Promise<void> {
  const bytes = new TextEncoder().encode(obj);
  const fileName = `${name.replaceAll(' ', '_')}.obj`;
  const source = { ...expectOk(await workbench.workshop.putSource(bytes, fileName)), fileName };
  workbench.adopt(newProject(name, source), [{ hash: source.hash, fileName: source.fileName, bytes }]);
  await shown(workbench);
}

/** The tool tray in its true size, parted along all its folds: six pieces. */
export async function openPartedTray(workbench: Workbench): Promise<void> {
  await openTray(workbench);
  workbench.run(setScale({ by: 'unit', unit: 'cm' }));
  await shown(workbench);
  await partSharp(workbench, 40);
  await shown(workbench);
}
