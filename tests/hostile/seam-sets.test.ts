import { describe, expect, it } from 'vitest';
import { outcomeFaults } from './outcome-faults.ts';
import { runToPieces } from './run-to-pieces.ts';
import { SEAM_MESHES } from './seam-meshes.ts';
import { openMesh, runTrial, seamTrial } from './seam-sets.ts';

/** Sets that are laid on sheets and pages too; all others come by `npm run hostile`. */
const TO_PAGES: readonly (readonly [mesh: string, seed: number])[] = [
  ['star', 7],
  ['room', 7],
];

describe('seams by chance', () => {
  it.each(SEAM_MESHES)('on $name end in sound pieces or a reason', async (mesh) => {
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
