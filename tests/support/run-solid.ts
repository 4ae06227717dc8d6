import { contentHash } from '../../src/base/hash.ts';
import { layerId } from '../../src/base/ids.ts';
import { QUIET_WORK, type Work } from '../../src/base/work.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project, SculptPart } from '../../src/project/project.ts';
import { objOf, type Solid } from '../reference/handbook/polygon-solids.ts';

/** What is asked of a part in a test; what is left out stays as a new part has it. */
export type PartChange = (part: SculptPart) => SculptPart;

/** A solid in mm with its own seams as a project, and a pipeline that holds its bytes. */
export async function solidProject(
  solid: Solid,
  change: PartChange = (part) => part,
): Promise<{ project: Project; pipeline: Pipeline }> {
  const bytes = objOf(solid);
  const hash = await contentHash(bytes);
  const fileName = 'solid.obj';
  const first = newProject('solid', { hash, fileName, format: 'obj' });
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName, bytes });
  const part: SculptPart = {
    ...first.parts[0],
    scale: { by: 'unit', unit: 'mm' },
    seams: { edges: solid.seams.map(([a, b]): [number, number] => [a, b]), paths: [] },
  };
  return { project: { ...first, parts: [change(part)] }, pipeline };
}

/** The whole chain run on a solid, as far as it goes. */
export async function outcomeOf(solid: Solid, change?: PartChange, work: Work = QUIET_WORK): Promise<Outcome> {
  const { project, pipeline } = await solidProject(solid, change);
  return pipeline.run(project, work, { date: '2026-01-01' });
}

/** The part in a wall of sheets so thick, from the back outward, mm. */
export function inSheets(part: SculptPart, ...thicknessesMm: readonly number[]): SculptPart {
  const [layer] = part.layers;
  return {
    ...part,
    layers: thicknessesMm.map((thicknessMm, i) => ({ ...layer, id: layerId(`layer-${i + 1}`), thicknessMm })),
  };
}

/** Several solids as one, with the numbers of corners counted on. */
export function together(...solids: readonly Solid[]): Solid {
  const all: { corners: [number, number, number][]; faces: number[][]; seams: [number, number][] } = {
    corners: [],
    faces: [],
    seams: [],
  };
  for (const { corners, faces, seams } of solids) {
    const base = all.corners.length;
    all.corners.push(...corners.map(([x, y, z]): [number, number, number] => [x, y, z]));
    all.faces.push(...faces.map((face) => face.map((v) => v + base)));
    all.seams.push(...seams.map(([a, b]): [number, number] => [a + base, b + base]));
  }
  return all;
}

/** A box from one corner to the one across, every edge of it a seam. Turned inside out where its foam lies outside a hollow. */
export function block(
  [x0, y0, z0]: readonly [number, number, number],
  [x1, y1, z1]: readonly [number, number, number],
  isHollow = false,
): Solid {
  const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i): [number, number, number] => [
    (i & 1) === 0 ? x0 : x1,
    (i & 2) === 0 ? y0 : y1,
    (i & 4) === 0 ? z0 : z1,
  ]);
  const faces = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  const seams = [0, 1, 2, 3, 4, 5, 6, 7].flatMap((i) =>
    [1, 2, 4].filter((bit) => (i & bit) === 0).map((bit): [number, number] => [i, i | bit]),
  );
  return { corners, faces: isHollow ? faces.map((face) => face.toReversed()) : faces, seams };
}
