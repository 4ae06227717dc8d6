import type { Finding } from '../../base/finding.ts';
import { ok, type Result } from '../../base/result.ts';
import { runWithPauses } from '../../base/stepwise.ts';
import type { Work } from '../../base/work.ts';
import { boxOfPoints3 } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { BodyMeasure } from '../../model/body-measures.ts';
import type { Repair, ScaleChoice, SourceModel } from '../../model/source-model.ts';
import type { EdgePair } from '../../project/commands.ts';
import type { SculptPart, SourceRef } from '../../project/project.ts';
import { repairSteps } from '../../steps/read/repair.ts';
import { meshFromModel, mmPerUnitOf } from '../../steps/read/size.ts';
import { mmPerUnitOfPart } from '../body-size.ts';
import { CarriedPlaces } from './carried-places.ts';
import { carryPart } from './carry-part.ts';
import { lostFinding } from './lost-findings.ts';
import type { SculptSide } from './sculpt-side.ts';

/** What is nearer than this to its earlier place is taken for the same, mm, or than this share of the sculpt's diagonal: a hand smooths away less. */
const SAME_PLACE_MM = 3;
const SAME_PLACE_SHARE = 0.01;

/** A part on a new version of its sculpt, and what is to be told. */
export interface NewVersion {
  readonly part: SculptPart;
  readonly findings: readonly Finding[];
}

/**
 * Brings a part to a new version of its sculpt: a file in which one unit is as long as in the file before, and in which what stayed stands where it
 * stood.
 * @param body  the table of the body: a part that follows it goes on to do so.
 * @param read  reads a model file.
 * @returns the part with the new source. Fails as reading does. What could not be carried is told in findings, in mm of the earlier version.
 */
export async function newVersion(
  part: SculptPart,
  source: SourceRef,
  body: readonly BodyMeasure[],
  read: (source: SourceRef, work: Work) => Promise<Result<SourceModel>>,
  work: Work,
): Promise<Result<NewVersion>> {
  const rawBefore = await read(part.source, work);
  if (!rawBefore.ok) return rawBefore;
  const rawAfter = await read(source, work);
  if (!rawAfter.ok) return rawAfter;
  await work.pause(0.4, 'carrying seams over to the new version');
  const before = await repaired(rawBefore.value, part.repairs, work);
  const sized = part.scale === null ? null : mmPerUnitOfPart(before, { ...part, scale: part.scale }, body);
  const mmPerUnit = sized?.ok === true ? sized.value : 1;
  const sideOf = (model: SourceModel): SculptSide => ({ model, mesh: meshFromModel(model, mmPerUnit) });
  const mostMm = reachOf(meshFromModel(rawBefore.value, mmPerUnit));
  const raw = new CarriedPlaces(sideOf(rawBefore.value), sideOf(rawAfter.value), mostMm);
  const { model: after, repairs, lost } = await carryRepairs(rawAfter.value, part.repairs, raw, work);
  await work.pause(0.6);
  const carrying = carryPart(part, sideOf(before), sideOf(after), source, mostMm);
  const carried = await runWithPauses(carrying, () => work.pause(0.6));
  await work.pause(0.9);
  const scale = part.scale === null ? null : carryScale(part.scale, after, mmPerUnit, raw);
  const notCarried = [
    ...lost.map(() => ({ what: 'repair', at: null }) as const),
    ...(part.scale !== null && scale === null ? [{ what: 'size', at: null } as const] : []),
  ];
  return ok({
    part: { ...carried.part, repairs, scale },
    findings: [...told(carried.keptEdges, carried.newPaths), ...carried.findings, ...lostFinding(notCarried, mostMm)],
  });
}

function told(keptEdges: number, newPaths: number): Finding[] {
  if (keptEdges + newPaths === 0) return [];
  const edges = `${keptEdges} ${keptEdges === 1 ? 'edge' : 'edges'} of seams`;
  const lines =
    newPaths === 0 ? '' : `, and ${newPaths} ${newPaths === 1 ? 'line' : 'lines'} across faces that others have become`;
  return [
    {
      code: 'carry/seams',
      severity: 'note',
      text: `The new version of the sculpt has ${edges}${lines}.`,
      value: keptEdges,
      where: {},
    },
  ];
}

function reachOf({ positions }: Mesh): number {
  const { min, max } = boxOfPoints3(positions);
  return Math.max(SAME_PLACE_MM, SAME_PLACE_SHARE * Math.hypot(max.x - min.x, max.y - min.y, max.z - min.z));
}

/** With those of the repairs that can be made. */
async function repaired(model: SourceModel, repairs: readonly Repair[], work: Work): Promise<SourceModel> {
  let made = model;
  for (const repair of repairs) {
    const result = await runWithPauses(repairSteps(made, [repair]), () => work.pause(0.5));
    if (result.ok) made = result.value;
  }
  return made;
}

/** Repairs name corners of the file as it is read, or such as other repairs have added. */
async function carryRepairs(
  model: SourceModel,
  repairs: readonly Repair[],
  places: CarriedPlaces,
  work: Work,
): Promise<{ readonly model: SourceModel; readonly repairs: readonly Repair[]; readonly lost: readonly Repair[] }> {
  let made = model;
  const kept: Repair[] = [];
  const lost: Repair[] = [];
  for (const repair of repairs) {
    const own = carriedRepair(repair, places);
    const result = own && (await runWithPauses(repairSteps(made, [own]), () => work.pause(0.5)));
    if (own === null || result?.ok !== true) {
      lost.push(repair);
      continue;
    }
    made = result.value;
    kept.push(own);
  }
  return { model: made, repairs: kept, lost };
}

function carriedRepair(repair: Repair, places: CarriedPlaces): Repair | null {
  const cornerOf = (n: number): number => fileCornerOf(places, n);
  if (repair.kind === 'keep-shell') {
    const vertex = cornerOf(repair.vertex);
    return vertex < 0 ? null : { ...repair, vertex };
  }
  if (repair.kind !== 'close-hole') return repair;
  const edge: EdgePair = [cornerOf(repair.edge[0]), cornerOf(repair.edge[1])];
  return edge[0] < 0 || edge[1] < 0 || edge[0] === edge[1] ? null : { ...repair, edge };
}

/** The corner of the new file nearest to one of the earlier, or -1. */
function fileCornerOf(places: CarriedPlaces, corner: number): number {
  const vertex = places.nearVertexOf(places.before.mesh.vertexOfFile[corner] ?? -1);
  return vertex < 0 ? -1 : places.after.mesh.fileVertex[vertex];
}

/** The same length of a unit of the file, said as it was said before; null where the corners it was said of are gone. */
function carryScale(
  scale: ScaleChoice,
  model: SourceModel,
  mmPerUnit: number,
  places: CarriedPlaces,
): ScaleChoice | null {
  if (scale.by === 'unit' || scale.by === 'body') return scale;
  const own =
    scale.by === 'size'
      ? scale
      : { ...scale, from: fileCornerOf(places, scale.from), to: fileCornerOf(places, scale.to) };
  // By how much it would be as long as it is said to be, if that were 1 mm.
  const perMm = mmPerUnitOf(model, { ...own, mm: 1 });
  return perMm.ok ? { ...own, mm: mmPerUnit / perMm.value } : null;
}
