import { openFile } from '../opening.ts';
import type { Workbench } from '../workbench.ts';
import { chooseToOpen, type FileHandle } from './file-handle.ts';
import { KEEP_WORDS } from './keep-words.ts';

/** Opens a file that can be written again later. One that is gone is told as one that cannot be read. */
export async function openHandle(bench: Workbench, handle: FileHandle): Promise<void> {
  const file = await handle.getFile().catch(() => new File([], handle.name));
  await openFile(bench, file, handle);
}

/** Asks for a file and opens it. @returns false where the browser does not let it ask. */
export async function chooseFile(bench: Workbench): Promise<boolean> {
  const asked = chooseToOpen({
    description: KEEP_WORDS.kindsToOpen,
    accept: {
      'application/json': ['.json'],
      'application/zip': ['.zip'],
      'model/obj': ['.obj'],
      'model/stl': ['.stl'],
      'image/svg+xml': ['.svg'],
    },
  });
  const handle = await asked.catch(() => undefined);
  if (handle != null) await openHandle(bench, handle);
  return handle !== undefined;
}
