import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { Mesh } from '../../src/mesh/mesh.ts';
import type { Patch } from '../../src/model/patch.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { cutPatches } from '../../src/steps/cut/cut-patches.ts';
import { readModel } from '../../src/steps/read/read-model.ts';
import { meshFromModel } from '../../src/steps/read/size.ts';
import { seamSetFromMarks } from '../../src/steps/seams/seam-set.ts';
import { domeModel } from '../bench/dome-model.ts';
import { expectOk } from './expect-ok.ts';

/** A dome of about so many triangles, parted into eight panels, in mm, and its file. */
export async function domeProject(triangles: number): Promise<{ project: Project; bytes: Uint8Array }> {
  const dome = domeModel(triangles);
  const bytes = new TextEncoder().encode(dome.obj);
  const first = newProject('dome', { hash: await contentHash(bytes), fileName: 'dome.obj', format: 'obj' });
  const seams = { edges: dome.seams, paths: [] };
  const part = { ...first.parts[0], scale: { by: 'unit', unit: 'mm' }, seams } as const;
  return { project: { ...first, parts: [part] }, bytes };
}

/** The panels of such a dome, without what comes before and after. */
export async function cutDome(triangles: number): Promise<{ mesh: Mesh; patches: readonly Patch[] }> {
  const dome = domeModel(triangles);
  const model = expectOk(await readModel(new TextEncoder().encode(dome.obj), 'dome.obj', QUIET_WORK));
  const mesh = meshFromModel(model, 1);
  const seams = expectOk(seamSetFromMarks(mesh, { edges: dome.seams, paths: [] }, true));
  return { mesh, patches: cutPatches(mesh, seams, mesh.positions).patches };
}
