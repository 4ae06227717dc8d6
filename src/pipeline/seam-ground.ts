import { needSculptAtWork } from '../project/at-work.ts';
import type { Finding } from '../base/finding.ts';
import { ok, type Result } from '../base/result.ts';
import { runWithPauses } from '../base/stepwise.ts';
import { shareOfWork, type Work } from '../base/work.ts';
import type { Patch } from '../model/patch.ts';
import type { SeamSet } from '../model/seams.ts';
import type { Project } from '../project/project.ts';
import { shellLayerSteps } from '../steps/shell/make-shell-layer.ts';
import { seamSetFromMarks } from '../steps/seams/seam-set.ts';
import { DrawnLines } from './drawn-lines.ts';
import { foamGround } from './foam-ground.ts';
import { layerPlans } from './layer-plan.ts';
import { mirrorOfSculpt } from './mirror-of-sculpt.ts';
import type { SizedSculpt } from './outcome.ts';
import { REFERENCE_LIMITS, type PieceGround, type ProposalLimits } from './propose/proposal.ts';
import { Run, Stopped } from './run.ts';
import { SculptStage, type Source } from './sculpt-stage.ts';
import { searchSurface, type SearchSurface } from './search-surface.ts';
import { seamWishesOf, type SeamWishes } from './seam-wishes.ts';
import { shellOnLines } from './shell-on-lines.ts';
import { shellChoice } from './shells.ts';
import { SimplifyStage } from './simplify-stage.ts';

/** `foam`: what the project's foam allows. `reference`: as research programs measure, without thickness, sheet or narrowest place. */
export type LimitsKind = 'foam' | 'reference';

/** What seams are proposed on. */
export interface SeamGround {
  readonly sculpt: SizedSculpt;
  /** The sculpt, or that cut finer along paths: what all below is counted on. */
  readonly surface: SearchSurface;
  /** Surface that is laid flat, x y z per vertex of that mesh, mm: where the outermost sheet keeps its length, or the sculpt itself. */
  readonly positions: Float64Array;
  /** Where a piece keeps its length once it is made, where that may be elsewhere. */
  readonly surfaceOf?: (patch: Patch) => PieceGround;
  /** Of the outermost sheet, mm; 0 where foam does not count. */
  readonly thicknessMm: number;
  readonly limits: ProposalLimits;
  /** Seams the project has now. */
  readonly seams: SeamSet;
  /** What was said of seams and what they cost where, for a search; nothing where only their length counts. */
  readonly wishes: Partial<SeamWishes>;
  readonly findings: readonly Finding[];
}

/** What a proposal is to keep. */
export interface GroundWish {
  readonly kind: LimitsKind;
  /** 99th percentile of stretch and squash, per cent; left out, the foam's own limit, or 5 % as research programs use. */
  readonly limitPct?: number;
  /** True for seams alike on both sides of a sculpt that is. */
  readonly isMirrored?: boolean;
}

/**
 * Reads and sizes the sculpt of a project and finds the surface and the limits of its foam.
 * @returns fails as reading, sizing and marking seams do; seams that are no edges of the sculpt are the file's fault, and so are lost paths.
 */
export async function seamGround(
  project: Project,
  sources: ReadonlyMap<string, Source>,
  { kind, limitPct, isMirrored = false }: GroundWish,
  work: Work,
): Promise<Result<SeamGround>> {
  const part = needSculptAtWork(project);
  const run = new Run(project, { strictSeams: true }).needAtWork();
  const stage = new SculptStage(sources);
  try {
    await stage.make(run, shareOfWork(work, 0, 0.6));
    await new SimplifyStage().make(run, shareOfWork(work, 0.6, 0.8));
    run.drawn = (await new DrawnLines().of(run, shareOfWork(work, 0.8, 0.85))).surface;
  } catch (error) {
    if (error instanceof Stopped) return { ok: false, problem: error.problem };
    throw error;
  }
  const sculpt = run.needSculpt();
  const surface = searchSurface(sculpt, part, run.drawn, () => true);
  const { mesh } = surface;
  const seams = seamSetFromMarks(mesh, surface.part.seams, true);
  if (!seams.ok) return seams;
  const found = { sculpt, surface, seams: seams.value, findings: [...run.findings, ...seams.notes] };
  if (kind === 'reference') {
    const { stretchPct, squashPct } = REFERENCE_LIMITS;
    const limits = { ...REFERENCE_LIMITS, stretchPct: limitPct ?? stretchPct, squashPct: limitPct ?? squashPct };
    return ok({ ...found, positions: mesh.positions, thicknessMm: 0, limits, wishes: surface.withPaths({}) });
  }
  const [plan] = layerPlans(part);
  const foam = run.foam(plan.choice.foam);
  const whole = await runWithPauses(shellLayerSteps(sculpt.mesh, shellChoice(run, plan)), () => work.pause(0.9));
  const shell = run.drawn === null ? whole : shellOnLines(whole, sculpt.mesh, run.drawn.cut);
  const { choice } = plan;
  const onFoam = foamGround(mesh, shell, { part: surface.part, choice, foam }, limitPct);
  const mirror = isMirrored
    ? await mirrorOfSculpt(sculpt.mesh, part, sculpt.mmPerUnit ?? 1, shareOfWork(work, 0.95, 1))
    : null;
  const opposite = mirror === null ? null : surface.edgesOnMesh(mirror.partners.ofEdge);
  const wishes = surface.withPaths(seamWishesOf(mesh, surface.part, seams.value, opposite));
  return ok({ ...found, ...onFoam, thicknessMm: choice.thicknessMm, wishes });
}
