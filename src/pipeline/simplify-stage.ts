import { Memo } from '../base/memo.ts';
import { clipPlaces, type Finding } from '../base/finding.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import { pointAt3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { triangleCount } from '../mesh/mesh.ts';
import { findMirrorSteps } from '../mesh/mirror/mirror.ts';
import { simplifySteps } from '../mesh/simplify/simplify.ts';
import { deviationSteps, type Deviation } from '../mesh/surface-deviation.ts';
import { surfaceTreeOf } from '../mesh/surface-tree.ts';
import type { SourceModel } from '../model/source-model.ts';
import type { SimplifyChoice } from '../project/project.ts';
import { crossingSteps } from '../steps/read/self-crossing.ts';
import { simplifiedModel } from '../steps/read/simplify-model.ts';
import { meshFromModel } from '../steps/read/size.ts';
import type { SizedSculpt } from './outcome.ts';
import type { SculptRun } from './sculpt-run.ts';
import { borderVertices } from './simplify-keeps.ts';

/** Results kept: a maker tries out a few. */
const KEPT = 4;

/** So much of the surface must be paired, triangle by triangle, for both sides to be kept alike. */
const PAIRED = 0.9;

/** Most tries at a deviation: each but the first goes less far, by what the one before was too far. */
const MOST_TRIES = 6;

/** Most tries at leaving more where two sheets that lie close together ran through each other. */
const MOST_PARTINGS = 4;

/** Aims so much under what is allowed. */
const UNDER = 0.9;

/** A sculpt made simpler, and by how much its surface moved. */
interface Simplified {
  readonly sculpt: SizedSculpt;
  /** Of the new surface's points from the old, and of the old's from the new. */
  readonly newFromOld: Deviation;
  readonly oldFromNew: Deviation;
  /** Triangles of the new surface that run through each other, where none did before. */
  readonly crossing: readonly number[];
}

/** Makes the sculpt of a run simpler for paper, where that is asked for. */
export class SimplifyStage {
  readonly #made = new Memo<[Mesh, SimplifyChoice], Simplified | null>(KEPT);

  /** Puts the simpler sculpt in the place of the run's. Corners and polygons that are left keep their numbers. */
  async make(run: SculptRun, work: Work): Promise<void> {
    const { simplify: choice, id } = run.part;
    const sculpt = run.needSculpt();
    if (choice === undefined) return;
    let made = this.#made.get([sculpt.mesh, choice]);
    if (made === undefined) {
      await work.pause(0, 'making the sculpt simpler');
      made = await simplified(sculpt, choice, work);
      this.#made.set([sculpt.mesh, choice], made);
      run.made('size');
    }
    if (made === null) {
      run.findings.push({
        code: 'simplify/nothing',
        severity: 'note',
        text: 'The sculpt cannot be made simpler as asked, and is taken as it is.',
        where: { part: id },
      });
      return;
    }
    run.sculpt = made.sculpt;
    run.findings.push(simplifyFinding(sculpt.mesh, made, choice, id), ...crossingFindings(made, id));
  }
}

async function simplified(sculpt: SizedSculpt, choice: SimplifyChoice, work: Work): Promise<Simplified | null> {
  const { mesh } = sculpt;
  const isKept = keptVertices(mesh, choice);
  const mirror = await runWithPauses(findMirrorSteps(mesh), () => work.pause(0.1));
  const partner = mirror !== null && mirror.pairedShare >= PAIRED ? mirror.partners.ofVertex : null;
  const { triangles = 0, deviationMm = Infinity } = choice;
  let offMm = deviationMm;
  for (let [i, partings] = [0, 0]; i < MOST_TRIES;) {
    const share = shareOfWork(work, 0.1 + (0.9 * i) / MOST_TRIES, 0.1 + (0.9 * (i + 1)) / MOST_TRIES);
    const pause = (): Promise<void> | undefined => share.pause(0.5);
    const found = await runWithPauses(simplifySteps(mesh, { triangles, offMm, isKept, partner }), pause);
    if (found.kept.length === triangleCount(mesh)) return null;
    const made = sizedAs(sculpt, simplifiedModel(sculpt.model, found.kept, found.corners));
    const crossing = await newCrossings(mesh, made.mesh, pause);
    if (crossing.length > 0 && partings < MOST_PARTINGS) {
      partings += 1;
      await runWithPauses(keepNearSteps(mesh, made.mesh, crossing, isKept), pause);
      continue;
    }
    const newFromOld = await runWithPauses(deviationSteps(made.mesh, mesh), pause);
    const oldFromNew = await runWithPauses(deviationSteps(mesh, made.mesh), pause);
    const worst = Math.max(newFromOld.atMost, oldFromNew.atMost);
    if (worst <= deviationMm) return { sculpt: made, newFromOld, oldFromNew, crossing };
    offMm *= UNDER * Math.max(0.3, deviationMm / worst);
    i += 1;
  }
  return null;
}

/** Triangles that run through each other now; none where some did before, which was told of the sculpt. */
async function newCrossings(
  before: Mesh,
  mesh: Mesh,
  pause: () => Promise<void> | undefined,
): Promise<readonly number[]> {
  const { triangles } = await runWithPauses(crossingSteps(mesh), pause);
  if (triangles.length === 0) return triangles;
  const { pairs, isWhole } = await runWithPauses(crossingSteps(before), pause);
  return pairs > 0 || !isWhole ? [] : triangles;
}

/** Vertices looked at in one stretch. */
const STRETCH = 2048;

/** Keeps all vertices of the sculpt that triangles of a simpler surface stand for. */
function* keepNearSteps(sculpt: Mesh, simpler: Mesh, triangles: readonly number[], isKept: Uint8Array): Stepwise<void> {
  const tree = surfaceTreeOf(simpler);
  yield;
  const standIn = new Set(triangles);
  for (let v = 0; v < isKept.length; v += 1) {
    if (v % STRETCH === STRETCH - 1) yield;
    const hit = isKept[v] === 1 ? null : tree.nearest(pointAt3(sculpt.positions, v));
    if (hit !== null && standIn.has(hit.triangle)) isKept[v] = 1;
  }
}

function keptVertices(mesh: Mesh, { keep }: SimplifyChoice): Uint8Array {
  const isKept = new Uint8Array(mesh.positions.length / 3);
  for (const number of keep) {
    const v = mesh.vertexOfFile[number] ?? -1;
    if (v >= 0) isKept[v] = 1;
  }
  for (const v of borderVertices(mesh, [])) isKept[v] = 1;
  return isKept;
}

/** What was told of the file stays: the model is as it was read, only its surface is simpler. */
const sizedAs = ({ facts, mmPerUnit, mesh }: SizedSculpt, model: SourceModel): SizedSculpt => ({
  model,
  facts,
  mesh: meshFromModel(model, mmPerUnit ?? 1),
  mmPerUnit,
  before: mesh,
});

function simplifyFinding(
  before: Mesh,
  { sculpt, newFromOld, oldFromNew }: Simplified,
  { deviationMm }: SimplifyChoice,
  part: string,
): Finding {
  const worst = Math.max(newFromOld.atMost, oldFromNew.atMost);
  const place = (oldFromNew.atLeast > newFromOld.atLeast ? oldFromNew : newFromOld).place;
  return {
    code: 'simplify/done',
    severity: 'note',
    text: `The sculpt was made simpler for paper, from ${triangleCount(before)} to ${triangleCount(sculpt.mesh)} triangles: no place of it lies farther than ${mm(worst)} mm from the sculpt (new from old ${range(newFromOld)}, old from new ${range(oldFromNew)}).`,
    value: worst,
    ...(deviationMm === undefined ? {} : { limit: deviationMm }),
    unit: 'mm',
    where: { part, point: [place.x, place.y, place.z] },
  };
}

function crossingFindings({ crossing }: Simplified, part: string): readonly Finding[] {
  if (crossing.length === 0) return [];
  return [
    {
      code: 'simplify/crossing',
      severity: 'warning',
      text: `Made so simple, the sculpt runs through itself in ${crossing.length} triangles, where two of its walls lie close together: leave it more triangles, or allow it to move less.`,
      value: crossing.length,
      where: { part, triangles: clipPlaces(crossing) },
    },
  ];
}

const mm = (value: number): string => String(Number(value.toPrecision(3)));

const range = ({ atLeast, atMost }: Deviation): string => `${mm(atLeast)} to ${mm(atMost)} mm`;

/** Areas lose faces inside where the sculpt is made simpler, and are the same areas: nothing to tell. */
export function forgetGoneFaces({ sculpt, findings }: SculptRun): void {
  if (sculpt?.before === undefined) return;
  const were = new Set(sculpt.before.faceOfTriangle);
  const told = findings.filter(
    ({ code, wish }) =>
      code !== 'wish/area-in-part' || wish?.about !== 'faces' || !wish.faces.every((f) => were.has(f)),
  );
  findings.splice(0, findings.length, ...told);
}
