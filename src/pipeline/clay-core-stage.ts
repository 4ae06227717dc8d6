import type { Finding } from '../base/finding.ts';
import { DisjointSets } from '../base/disjoint-sets.ts';
import { partId, type FoamId, type PartId } from '../base/ids.ts';
import { Memo } from '../base/memo.ts';
import { runAtOnce } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import { triangleCount, vertexCount, type Mesh } from '../mesh/mesh.ts';
import { nextHalfedge, topologyOf } from '../mesh/topology.ts';
import { vertexOffsetSteps } from '../mesh/vertex-offset.ts';
import { FIRST_CLAY, type Clay } from '../model/clay.ts';
import type { Region } from '../model/flatten-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { SculptPart } from '../project/project.ts';
import { simplifiedModel } from '../steps/read/simplify-model.ts';
import { meshFromModel } from '../steps/read/size.ts';
import { clayCoreOf, type ClayCoreMade } from './clay-core.ts';
import { wallSpan } from './layer-plan.ts';
import type { SizedSculpt } from './outcome.ts';
import { remembered } from './remembered.ts';
import type { SculptRun } from './sculpt-run.ts';

/** Results kept: a maker goes a few steps back and forth. */
const KEPT = 8;

/** An area of a sculpt in clay, as what is cut and done for it is told beside other parts. */
export interface ClayPart {
  readonly kind: 'clay';
  /** The id of its sculpt, then that of the area. */
  readonly id: PartId;
  readonly name: string;
  readonly on: PartId;
  readonly transform: readonly number[];
  readonly copies: number;
  readonly foams: readonly FoamId[];
}

/** What became of an area that is modelled in clay. */
export interface ClayArea {
  readonly part: ClayPart;
  readonly made: ClayCoreMade;
}

/** A sculpt without what is modelled in clay. */
interface Bared {
  readonly sculpt: SizedSculpt;
  /** The part without the areas that are gone and without marks within them. */
  readonly part: SculptPart;
  readonly areas: readonly ClayArea[];
  readonly findings: readonly Finding[];
}

/** Takes areas that are modelled in clay over a core out of the sculpt of a run, before its seams are cut. */
export class ClayCoreStage {
  readonly #cores = new Memo<unknown[], ReturnType<typeof clayCoreOf>>(2 * KEPT);
  readonly #outsides = new Memo<[Mesh, number], Mesh>(KEPT);
  readonly #areas = new Memo<unknown[], ClayArea>(2 * KEPT);
  readonly #left = new Memo<unknown[], SizedSculpt>(KEPT);
  readonly #marks = new Memo<unknown[], ReturnType<typeof marksLeft>>(KEPT);
  readonly #regions = new Memo<unknown[], SculptPart['regions']>(KEPT);

  /** Puts the sculpt without them in the place of the run's; corners and polygons that are left keep their numbers. */
  async make(run: SculptRun, work: Work): Promise<void> {
    const { part, project } = run;
    if (part.regions.every(({ clayCore }) => clayCore === undefined)) return;
    await work.pause(0, 'planning the cores of clay');
    const sculpt = run.needSculpt();
    const { clay = FIRST_CLAY } = project.shop ?? {};
    const bared = this.#bare(sculpt, part, clay, (id) => run.foam(id));
    run.findings.push(...bared.findings);
    if (bared.areas.length === 0) return;
    run.sculpt = bared.sculpt;
    run.partInFoam = bared.part;
    run.areasInClay = bared.areas;
  }

  #bare(sculpt: SizedSculpt, part: SculptPart, clay: Clay, foamOf: (id: FoamId) => FoamSheet): Bared {
    const { mesh } = sculpt;
    const wall = wallSpan(part);
    const outside = remembered(this.#outsides, [mesh, wall.faceMm], () => movedOut(mesh, wall.faceMm));
    const areas: ClayArea[] = [];
    const findings: Finding[] = [];
    const gone = new Set<number>();
    const isLeft = (face: number): boolean => !gone.has(face);
    for (const region of part.regions) {
      const { clayCore, name } = region;
      if (clayCore === undefined) continue;
      const faces = region.faces.filter(isLeft);
      const after = new Set([...gone, ...faces]);
      if (mesh.faceOfTriangle.every((face) => after.has(face))) {
        findings.push(
          stays(
            part.id,
            'clay/all',
            `With ${name} in clay nothing of the sculpt is left to lay flat, so it stays in foam: mark a smaller area.`,
          ),
        );
        continue;
      }
      const own = clayCore.foams.map(foamOf);
      const sheetsMm = own.map(({ thicknessMm }) => thicknessMm);
      const coreKey = [outside, clay, wall.faceMm - wall.backMm, JSON.stringify([faces, clayCore, sheetsMm])];
      const made = remembered(this.#cores, coreKey, () =>
        clayCoreOf(outside, faces, { ...clayCore, sheetsMm }, clay, wall.faceMm - wall.backMm),
      );
      if (!made.ok) {
        findings.push(
          stays(
            part.id,
            made.problem.code,
            `${name} cannot be modelled in clay and stays in foam: ${made.problem.text}`,
          ),
        );
        continue;
      }
      const [before, parts] = [partsOf(mesh, gone), partsOf(mesh, after)];
      if (parts > before) findings.push(partedFinding(part.id, name, parts));
      for (const face of faces) gone.add(face);
      findings.push(
        ...[...made.value.figures.findings, ...made.notes].map((finding) => ({
          ...finding,
          text: `${name}: ${finding.text}`,
          where: { part: part.id },
        })),
        figuresFinding(part.id, name, made.value),
      );
      const { id: area } = region;
      const areaKey = [made.value, part.id, area, name, part.transform, part.copies, clayCore.foams];
      areas.push(
        remembered(this.#areas, areaKey, () => ({ part: clayPart(part, region, clayCore.foams), made: made.value })),
      );
    }
    // By what is gone, so that all that follows is remembered when something else of the part changes.
    const key = [...gone].sort((a, b) => a - b).join();
    const left = remembered(this.#left, [sculpt.mesh, sculpt.model, key], () => without(sculpt, gone));
    const marks = remembered(this.#marks, [left.mesh, mesh, part.seams], () => marksLeft(left.mesh, mesh, part));
    if (marks.lost > 0) findings.push(marksFinding(part.id, marks.lost));
    const inClay = new Set<string>(areas.map(({ part: { id } }) => id));
    const regions = remembered(this.#regions, [part.regions, [...inClay].join()], () =>
      part.regions.filter((region) => !inClay.has(clayId(part, region))),
    );
    return { sculpt: left, part: { ...part, seams: marks.seams, regions }, areas, findings };
  }
}

const clayId = ({ id }: SculptPart, region: Region): PartId => partId(`${id}/${region.id}`);

const clayPart = (part: SculptPart, region: Region, foams: readonly FoamId[]): ClayPart => ({
  kind: 'clay',
  id: clayId(part, region),
  name: region.name,
  on: part.id,
  transform: part.transform,
  copies: part.copies,
  foams,
});

/** The surface that the clay goes on with: the outside of the wall. @param mm  how far it stands off the sculpt. */
function movedOut(mesh: Mesh, mm: number): Mesh {
  if (mm === 0) return mesh;
  const { directions } = runAtOnce(vertexOffsetSteps(mesh.positions, mesh.triangles));
  return { ...mesh, positions: mesh.positions.map((x, i) => x + mm * directions[i]) };
}

/** The sculpt without some polygons of the file. */
function without(sculpt: SizedSculpt, gone: ReadonlySet<number>): SizedSculpt {
  const { model, mesh, mmPerUnit } = sculpt;
  if (gone.size === 0) return sculpt;
  const kept = Uint32Array.from(model.faceOfTriangle.keys()).filter(
    (t) => !gone.has(model.faceNumber[model.faceOfTriangle[t]]),
  );
  const corners = Uint32Array.from([...kept].flatMap((t) => [...model.triangles.subarray(3 * t, 3 * t + 3)]));
  const left = simplifiedModel(model, kept, corners);
  return { ...sculpt, model: left, mesh: meshFromModel(left, mmPerUnit ?? 1), before: sculpt.before ?? mesh };
}

/** Marks of seams whose edges are still there, and how many are gone. */
function marksLeft(
  left: Mesh,
  mesh: Mesh,
  { seams }: SculptPart,
): { readonly seams: SculptPart['seams']; readonly lost: number } {
  const [after, before] = [topologyOf(left), topologyOf(mesh)];
  const isIn = (on: Mesh, topology: typeof after, [a, b]: readonly [number, number]): boolean => {
    const [v, w] = [on.vertexOfFile[a] ?? -1, on.vertexOfFile[b] ?? -1];
    return v >= 0 && w >= 0 && topology.edgeBetween(v, w) >= 0;
  };
  const edges = seams.edges.filter((edge) => isIn(left, after, edge) || !isIn(mesh, before, edge));
  const lost = seams.edges.length - edges.length;
  return { seams: lost === 0 ? seams : { ...seams, edges }, lost };
}

/** How many parts a sculpt falls into without some polygons. */
function partsOf(mesh: Mesh, gone: ReadonlySet<number>): number {
  const sets = new DisjointSets(vertexCount(mesh));
  const used = new Set<number>();
  for (let t = 0; t < triangleCount(mesh); t += 1) {
    if (gone.has(mesh.faceOfTriangle[t])) continue;
    for (let h = 3 * t; h < 3 * t + 3; h += 1) {
      sets.join(mesh.triangles[h], mesh.triangles[nextHalfedge(h)]);
      used.add(mesh.triangles[h]);
    }
  }
  return new Set([...used].map((v) => sets.find(v))).size;
}

const stays = (part: PartId, code: string, text: string): Finding => ({
  code,
  severity: 'error',
  text,
  where: { part },
});

const partedFinding = (part: PartId, name: string, parts: number): Finding => ({
  code: 'clay/parts-sculpt',
  severity: 'warning',
  text: `Without ${name}, which is of clay, the foam falls into ${parts} parts that only its core holds together: mark a smaller area, or fix the core well to each.`,
  value: parts,
  where: { part },
});

const marksFinding = (part: PartId, lost: number): Finding => ({
  code: 'clay/seams-inside',
  severity: 'note',
  text: `${lost} marked ${lost === 1 ? 'edge lies' : 'edges lie'} within what is modelled in clay and ${lost === 1 ? 'is' : 'are'} left out: no foam is parted there.`,
  value: lost,
  where: { part },
});

const figuresFinding = (part: PartId, name: string, { figures }: ClayCoreMade): Finding => ({
  code: 'clay/core',
  severity: 'note',
  text: `${name} is of clay over ${figures.layers} ${figures.layers === 1 ? 'sheet' : 'sheets'} of core: ${(figures.clayMm3 / 1000).toFixed(0)} cm³ of ${figures.clay.name}, at most ${(figures.depthMm + figures.depthBoundMm).toFixed(1)} mm deep, ${figures.clay.dryH[1]} h to dry there.`,
  value: figures.clayMm3 / 1000,
  unit: 'cm³',
  where: { part },
});
