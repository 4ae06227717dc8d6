import { Memo } from '../base/memo.ts';
import { fail, type Result } from '../base/result.ts';
import { rad } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Region } from '../model/flatten-settings.ts';
import type { CutSculpt, Outcome } from '../pipeline/outcome.ts';
import { keepsOf } from '../pipeline/simplify-keeps.ts';
import type { SculptPart } from '../project/project.ts';
import { areaBorder, facesOfGroup } from '../steps/seams/area-border.ts';
import { clearEdges } from '../steps/seams/edge-weights.ts';
import { followRidge, followRound } from '../steps/seams/follow-line.ts';
import { handLine, type LineBounds } from '../steps/seams/hand-line.ts';
import type { BorderOf, LineFence, LineWay, Marking, WithinPiece } from './marking-api.ts';

/** The sculpt as the sheet that is seen is numbered: cut finer where lines are drawn across its faces. */
const meshOnBench = (outcome: Outcome | null): Mesh | undefined => outcome?.cut?.mesh ?? outcome?.sculpt?.mesh;

const boundsOf = ({ patchOfTriangle, chains }: CutSculpt, within: WithinPiece | LineFence): LineBounds | LineFence =>
  'closed' in within ? within : { ...within, patchOfTriangle, seams: chains };

/** Answers what marking by hand asks, from the last outcome. */
export class MarkingDesk implements Marking {
  readonly #outcome: () => Outcome | null;
  /** A way is sought at every move of the pointer. */
  readonly #clear = new Memo<[Mesh, readonly Region[]], Uint8Array>(1);

  constructor(outcome: () => Outcome | null) {
    this.#outcome = outcome;
  }

  handLine(
    corners: readonly number[],
    within: WithinPiece | LineFence | null,
    trail: readonly number[] = [],
  ): Promise<Result<readonly number[]>> {
    const outcome = this.#outcome();
    const mesh = meshOnBench(outcome);
    if (mesh === undefined) return Promise.resolve(fail('seams/no-sculpt', 'Open a sculpt first.'));
    const cut = outcome?.cut ?? null;
    const bounds = within === null || cut === null ? null : boundsOf(cut, within);
    return Promise.resolve(handLine(mesh, corners, bounds, trail, this.#clearOf(mesh, outcome?.part?.regions ?? [])));
  }

  #clearOf(mesh: Mesh, regions: readonly Region[]): Uint8Array | undefined {
    if (!regions.some(({ seams }) => seams === 'clear')) return undefined;
    const known = this.#clear.get([mesh, regions]);
    if (known !== undefined) return known;
    const clear = clearEdges(mesh, regions);
    this.#clear.set([mesh, regions], clear);
    return clear;
  }

  simplifyKeeps(part: SculptPart): Promise<readonly number[] | null> {
    const sculpt = this.#outcome()?.sculpt;
    return Promise.resolve(sculpt == null ? null : keepsOf(sculpt.before ?? sculpt.mesh, part));
  }

  followLine(edge: number, way: LineWay): Promise<readonly number[]> {
    const mesh = meshOnBench(this.#outcome());
    if (mesh === undefined) return Promise.resolve([]);
    return Promise.resolve(way.by === 'round' ? followRound(mesh, edge) : followRidge(mesh, edge, rad(way.leastDeg)));
  }

  border(of: BorderOf): Promise<readonly number[]> {
    const mesh = meshOnBench(this.#outcome());
    if (mesh === undefined) return Promise.resolve([]);
    return Promise.resolve(areaBorder(mesh, 'faces' in of ? of.faces : facesOfGroup(mesh, of.group)));
  }
}
