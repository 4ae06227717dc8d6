import { describe, expect, it } from 'vitest';
import { IS_LONG } from '../support/long.ts';
import { outcomeFaults } from './outcome-faults.ts';
import { runToPieces } from './run-to-pieces.ts';
import { SEAM_MESHES } from './seam-meshes.ts';
import { openMesh, runTrial, seamTrial } from './seam-sets.ts';

/** Every day these; all twelve in the long tests, and thousands by chance in `npm run hostile`. */
const DAILY = ['maul head', 'lantern', 'cut stone', 'plate with two holes', 'star'];
const MESHES = SEAM_MESHES.filter(({ name }) => IS_LONG || DAILY.includes(name));

/** Sets that are laid on sheets and pages too. */
const TO_PAGES: readonly (readonly [mesh: string, seed: number])[] = [
  ['room', 7],
  ...(IS_LONG ? [['star', 7] as const] : []),
];

describe('seams by chance', () => {
  it.each(MESHES)('on $name end in sound pieces or a reason', async (mesh) => {
    const opened = await openMesh(mesh);
    const { project } = seamTrial(opened, 7);
    const outcome = await runToPieces(
      project,
      new Map([[opened.hash, { fileName: 'sculpt.obj', bytes: opened.bytes }]]),
    );
    expect(outcomeFaults(outcome)).toEqual([]);
  });

  it.each(TO_PAGES)('on %s, set %i, are whole on paper', async (name, seed) => {
    const opened = await openMesh(SEAM_MESHES.find((mesh) => mesh.name === name)!);
    const outcome = await runTrial(opened, seamTrial(opened, seed).project);
    expect(outcome.paper).not.toBeNull();
    expect(outcomeFaults(outcome)).toEqual([]);
  });
});
