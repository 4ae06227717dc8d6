import { Memo } from '../base/memo.ts';
import type { Result } from '../base/result.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import { scale3, type Vec3 } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologyOf } from '../mesh/topology.ts';
import type { BodyFit } from '../model/body-fit.ts';
import { isCoreModel, type Core, type CoreFit, type CoreModel, type CoreRod } from '../model/clearance.ts';
import type { GirthTape, OpeningUse, PassChoice, PuttingOn, TapeFit, TapeMeasures, Triple } from '../model/girth.ts';
import type { BodyJoint, JointFit } from '../model/joint.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { SourceModel } from '../model/source-model.ts';
import type { SculptPart } from '../project/project.ts';
import { seamsThatOpen } from '../steps/wear/opening-seams.ts';
import { bendJoint } from '../steps/wear/joint.ts';
import { findOpenings } from '../steps/wear/openings.ts';
import type { Plane } from '../mesh/surface.ts';
import { rodClearance, type Rod } from '../steps/wear/rod-clearance.ts';
import { moveForGirth, moveForRoom, sizeForGirth, sizeForRoom, type BackOfShell } from '../steps/wear/size-to-body.ts';
import { measureTape } from '../steps/wear/tape.ts';
import { rodOutline } from '../steps/wear/core-outline.ts';
import { coreFindings, jointFindings, puttingOnFindings, tapeFindings } from '../steps/wear/wear-findings.ts';
import { coreModelFit } from './core-model.ts';
import type { CutSculpt } from './outcome.ts';

/** Results remembered: of one tape a maker tries many places, and goes back to few. */
const KEPT = 24;

/** Gives the model a core is made from. */
export type ReadCore = (core: CoreModel, work: Work) => Promise<Result<SourceModel>>;

/** The foam against body and core. Each tape and each core is measured anew only when it or the shell changed. */
export class Wear {
  readonly #tapes = new Memo<[unknown, unknown, GirthTape], TapeFit>(KEPT);
  readonly #cores = new Memo<[unknown, unknown, Core], CoreFit>(KEPT);
  readonly #joints = new Memo<[unknown, unknown, BodyJoint], JointFit>(KEPT);
  readonly #ways = new Memo<unknown[], PuttingOn>(KEPT);
  readonly #fits = new Memo<unknown[], BodyFit>(KEPT);

  /**
   * @param mmPerUnit  of the model file: places are kept in its numbers.
   * @returns null where the maker asked for nothing.
   * @throws Cancelled when the work was called off.
   */
  async of(
    mesh: Mesh,
    mmPerUnit: number,
    { shell, chains }: Pick<CutSculpt, 'shell' | 'chains'>,
    part: SculptPart,
    work: Work,
    readCore: ReadCore,
  ): Promise<BodyFit | null> {
    const { tapes = [], core: cores = [], joints = [], worn = null } = part;
    if (tapes.length === 0 && cores.length === 0 && joints.length === 0 && worn === null) return null;
    const key = [mesh, shell, chains, part.tapes, part.core, part.joints, part.worn];
    const known = this.#fits.get(key);
    if (known !== undefined) return known;
    const back = backOf(mesh, shell);
    const tapeFits: TapeFit[] = [];
    for (const [i, tape] of tapes.entries()) {
      await work.pause((0.5 * i) / tapes.length, 'measuring girths');
      const plane = planeOf(tape, mmPerUnit);
      tapeFits.push(remembered(this.#tapes, [mesh, shell, tape], () => tapeFit(back, tape, plane)));
    }
    const coreFits: CoreFit[] = [];
    for (const core of cores) {
      await work.pause(0.5, 'measuring the room round the core');
      coreFits.push(
        isCoreModel(core)
          ? await this.#modelFit(mesh, shell, core, mmPerUnit, readCore, shareOfWork(work, 0.5, 0.5))
          : remembered(this.#cores, [mesh, shell, core], () => coreFit(back, core, mmPerUnit)),
      );
    }
    const jointFits: JointFit[] = [];
    for (const [i, joint] of joints.entries()) {
      const share = shareOfWork(work, 0.5 + (0.1 * i) / joints.length, 0.6);
      await share.pause(0, 'bending the joints');
      jointFits.push(await this.#bent(back, shell, joint, mmPerUnit, share));
    }
    let puttingOn: PuttingOn | null = null;
    if (worn !== null) {
      const tape = tapes.find(({ id }) => id === worn.tape) ?? tapes.at(0);
      const wayKey = [mesh, shell, chains, tape, worn, part.upAxis];
      const place = tape === undefined ? null : planeOf(tape, mmPerUnit);
      puttingOn =
        this.#ways.get(wayKey) ??
        this.#ways.set(
          wayKey,
          await wayOn(back, place, { worn, upAxis: part.upAxis, mesh, chains }, shareOfWork(work, 0.6, 1)),
        );
    }
    const findings = [
      ...tapeFits.flatMap((fit) => tapeFindings(fit, planeOf(fit.tape, mmPerUnit).point, part.id)),
      ...coreFits.flatMap((fit) => coreFindings(fit, part.id)),
      ...jointFits.flatMap((fit) => jointFindings(fit, inMm(fit.joint.pointInFile, mmPerUnit), part.id)),
      ...(puttingOn === null ? [] : puttingOnFindings(puttingOn, part.id)),
    ];
    const fit = { tapes: tapeFits, cores: coreFits, joints: jointFits, puttingOn, findings };
    // A file that is missing now may be there at the next run.
    return coreFits.some(({ problem }) => problem !== undefined) ? fit : this.#fits.set(key, fit);
  }

  async #modelFit(
    mesh: Mesh,
    shell: ShellLayer,
    core: CoreModel,
    mmPerUnit: number,
    readCore: ReadCore,
    work: Work,
  ): Promise<CoreFit> {
    const known = this.#cores.get([mesh, shell, core]);
    if (known !== undefined) return known;
    const read = await readCore(core, work);
    if (!read.ok) {
      const atVertices = new Float32Array(shell.backPositions.length / 3).fill(NaN);
      return {
        core,
        tightest: null,
        atVertices,
        outline: [],
        pierced: 0,
        sizeFactor: null,
        moveMm: null,
        problem: read.problem,
      };
    }
    const fit = await coreModelFit(backOf(mesh, shell), core, read.value, mmPerUnit, work);
    return this.#cores.set([mesh, shell, core], fit);
  }

  async #bent(
    { back, facePositions }: BackOfShell,
    shell: unknown,
    joint: BodyJoint,
    mmPerUnit: number,
    work: Work,
  ): Promise<JointFit> {
    const key: [unknown, unknown, BodyJoint] = [back.triangles, shell, joint];
    const known = this.#joints.get(key);
    if (known !== undefined) return known;
    const { axis, towards, bendDeg, pointInFile } = joint;
    const hinge = { point: inMm(pointInFile, mmPerUnit), axis: vec(axis), towards: vec(towards), bendDeg };
    const bent = await bendJoint([facePositions, back.positions], back.triangles, hinge, work);
    return this.#joints.set(key, { joint, bent });
  }
}

const backOf = (mesh: Mesh, shell: ShellLayer): BackOfShell => ({
  back: { positions: shell.backPositions, triangles: mesh.triangles, topology: topologyOf(mesh) },
  sculptPositions: mesh.positions,
  facePositions: shell.facePositions,
  thicknessMm: shell.thicknessMm,
});

/** Lengths of a tape alone, for a place that is only tried. */
export const measuresAt = (mesh: Mesh, shell: ShellLayer, tape: GirthTape, mmPerUnit: number): TapeMeasures =>
  tapeMeasures(backOf(mesh, shell), planeOf(tape, mmPerUnit));

const tapeMeasures = (shell: BackOfShell, plane: Plane): TapeMeasures => ({
  back: measureTape(shell.back, plane),
  face: measureTape({ ...shell.back, positions: shell.facePositions }, plane),
});

function tapeFit(shell: BackOfShell, tape: GirthTape, plane: Plane): TapeFit {
  const { back, face } = tapeMeasures(shell, plane);
  const { bodyGirthMm, easeMm = 0 } = tape;
  if (back === null || bodyGirthMm === undefined)
    return { tape, back, face, clearanceMm: null, missingMm: 0, sizeFactor: null, moveMm: null, paddingMm: null };
  const wanted = bodyGirthMm + easeMm;
  const moveMm = moveForGirth(shell, plane, wanted);
  return {
    tape,
    back,
    face,
    clearanceMm: (back.girthMm - bodyGirthMm) / (2 * Math.PI),
    missingMm: Math.max(0, wanted - back.girthMm),
    sizeFactor: sizeForGirth(shell, plane, wanted),
    moveMm,
    // Padding all over the inside takes up what the back would have to come in.
    paddingMm: moveMm !== null && moveMm < 0 ? -moveMm : null,
  };
}

function coreFit(shell: BackOfShell, core: CoreRod, mmPerUnit: number): CoreFit {
  const rod: Rod = {
    point: inMm(core.pointInFile, mmPerUnit),
    direction: vec(core.direction),
    radiusMm: core.diameterMm / 2,
    lengthMm: core.lengthMm ?? Infinity,
  };
  const clearance = rodClearance(shell.back.positions, shell.back.triangles, rod);
  return {
    core,
    ...clearance,
    outline: rodOutline(shell.back.positions, rod),
    // Where the axis runs through foam, no size makes room.
    sizeFactor: clearance.pierced > 0 ? null : sizeForRoom(shell, rod, core.roomMm ?? 0),
    moveMm: clearance.pierced > 0 ? null : moveForRoom(shell, rod, core.roomMm ?? 0),
  };
}

interface WayIn extends Pick<SculptPart, 'upAxis'>, Pick<CutSculpt, 'chains'> {
  readonly worn: PassChoice;
  readonly mesh: Mesh;
}

async function wayOn(
  { back }: BackOfShell,
  place: Plane | null,
  { worn: pass, upAxis, mesh, chains }: WayIn,
  work: Work,
): Promise<PuttingOn> {
  const uses = new Map(pass.openings?.map(({ vertex, use }) => [vertex, use]));
  const useAt = (v: number): OpeningUse | undefined => uses.get(mesh.fileVertex[v]);
  const openings = await findOpenings(back, place, pass, UPS[upAxis], useAt, work);
  const isAsked = pass.girthMm !== undefined || pass.breadthMm !== undefined;
  const goesOn = isAsked ? openings.some(({ passes }) => passes === true) : null;
  const rims = openings.map(({ vertices }) => vertices);
  const needs: readonly OpeningUse[] = pass.coversFace === true ? ['sight', 'air'] : [];
  const lacks = needs.filter((need) => !openings.some(({ use }) => use === need));
  return { openings, lacks, goesOn, splitAt: goesOn === false ? seamsThatOpen(back.positions, chains, rims) : null };
}

const UPS = { x: { x: 1, y: 0, z: 0 }, y: { x: 0, y: 1, z: 0 }, z: { x: 0, y: 0, z: 1 } } as const;

const vec = ([x, y, z]: Triple): Vec3 => ({ x, y, z });
const inMm = (point: Triple, mmPerUnit: number): Vec3 => scale3(vec(point), mmPerUnit);
const planeOf = ({ pointInFile, normal }: GirthTape, mmPerUnit: number): Plane => ({
  point: inMm(pointInFile, mmPerUnit),
  normal: vec(normal),
});

function remembered<K extends unknown[], V>(memo: Memo<K, V>, key: K, make: () => V): V {
  return memo.get(key) ?? memo.set(key, make());
}
