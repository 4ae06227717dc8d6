import { fail, type Result } from '../base/result.ts';
import { rad } from '../geom/vec.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { CutSculpt, Outcome } from '../pipeline/outcome.ts';
import { areaBorder, facesOfGroup } from '../steps/seams/area-border.ts';
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
    return Promise.resolve(handLine(mesh, corners, bounds, trail));
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
