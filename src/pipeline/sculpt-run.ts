import type { Finding } from '../base/finding.ts';
import type { FoamId } from '../base/ids.ts';
import type { Ok, Result } from '../base/result.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { StepName } from '../model/bench-view.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { Template } from '../model/template.ts';
import type { Project, SculptPart } from '../project/project.ts';
import type { HingeShapes } from '../steps/foam/hinge-shapes.ts';
import type { PartBends } from '../steps/foam/part-bends.ts';
import type { ClayArea } from './clay-core-stage.ts';
import type { DrawnSurface } from './drawn-lines.ts';
import type { LayerPlan } from './layer-plan.ts';
import type { CutSculpt, LayerOutcome, SculptOutcome, SizedSculpt } from './outcome.ts';
import type { PatchWishes } from './patch-wishes.ts';
import type { Run, RunChoices } from './run.ts';

/** A sheet with seams of its own, or across faces, is made on the sculpt cut finer along them. */
export interface OwnSurface {
  /** Vertices of the sculpt keep their numbers, new ones follow. */
  readonly mesh: Mesh;
  /** Triangle of the sculpt, per triangle. */
  readonly sourceOfTriangle: Int32Array;
  /** The part with its wishes brought to that mesh. */
  readonly part: SculptPart;
}

/** What one run has gathered of one sheet of foam so far. */
export class LayerRun {
  /** The sheet's own mesh and what follows from it, where it has one; null where it is made on the sculpt. */
  own: OwnSurface | null = null;
  /** Its surfaces, the vertices of the sculpt first: the same object whatever lines are drawn on the sculpt. */
  shellOfWhole: ShellLayer | null = null;
  cut: CutSculpt | null = null;
  bends: PartBends | null = null;
  flats: LayerOutcome['flats'] = null;
  wishes: readonly PatchWishes[] = [];
  pieces: LayerOutcome['pieces'] = null;
  /** Its pieces before lines under trim came on them; null where none did. Trim changes nothing of how they fit. */
  bare: LayerOutcome['pieces'] = null;
  seams: LayerOutcome['seams'] = null;
  dryFit: LayerOutcome['dryFit'] = null;
  springing: LayerOutcome['springing'] = null;

  constructor(readonly plan: LayerPlan) {}

  /** One per patch: how a grooved piece stands on its hinges. */
  get hinges(): readonly (HingeShapes | null)[] {
    return this.wishes.map(({ hinges }) => hinges);
  }

  needCut(): CutSculpt {
    if (this.cut === null) throw new Error('run: not parted yet');
    return this.cut;
  }

  needShellOfWhole(): ShellLayer {
    if (this.shellOfWhole === null) throw new Error('run: not parted yet');
    return this.shellOfWhole;
  }

  needBends(): PartBends {
    if (this.bends === null) throw new Error('run: not parted yet');
    return this.bends;
  }

  needFlats(): NonNullable<LayerOutcome['flats']> {
    if (this.flats === null) throw new Error('run: not flat yet');
    return this.flats;
  }

  outcome(): LayerOutcome {
    const { plan, cut, bends, flats, hinges, pieces, seams, dryFit, springing } = this;
    return { plan, cut, bends, flats, hinges, pieces, seams, dryFit, springing };
  }
}

/** What one run has gathered of one sculpt so far. */
export class SculptRun {
  readonly findings: Finding[] = [];
  sculpt: SizedSculpt | null = null;
  /** The sculpt cut along the paths drawn on it; null where none is. */
  drawn: DrawnSurface | null = null;
  /** As far as each has come; the outermost sheet of the wall first. */
  layers: readonly LayerRun[] = [];
  /** Those that are laid on the wall, each over an area. */
  raised: readonly LayerRun[] = [];
  /** Of all its sheets. */
  pieces: SculptOutcome['pieces'] = null;
  seams: SculptOutcome['seams'] = null;
  /** One for each of its pieces. */
  templates: readonly Template[] = [];
  turned: readonly Template[] = [];
  /** Its areas that are modelled in clay, and the part without them where there are any. */
  areasInClay: readonly ClayArea[] = [];
  partInFoam: SculptPart | null = null;
  bodyFit: SculptOutcome['bodyFit'] = null;
  mirror: SculptOutcome['mirror'] = null;
  stopped: SculptOutcome['stopped'] = null;

  /**
   * @param whole   the run it is a part of.
   * @param wished  as the project has it.
   * @param place   its place among the sculpts of the project, from 1.
   */
  constructor(
    readonly whole: Run,
    readonly wished: SculptPart,
    readonly place: number,
    readonly choices: RunChoices,
  ) {}

  /** As far as it is of foam. */
  get part(): SculptPart {
    return this.partInFoam ?? this.wished;
  }

  get project(): Project {
    return this.whole.project;
  }

  made(...steps: readonly StepName[]): void {
    this.whole.made(...steps);
  }

  /** See {@link Run.take}. */
  take<T>(step: StepName, result: Result<T>): Ok<T> {
    return this.whole.take(step, result);
  }

  /** A sheet of the maker's stock. */
  foam(id: FoamId): FoamSheet {
    return this.whole.foam(id);
  }

  needSculpt(): SizedSculpt {
    if (this.sculpt === null) throw new Error('run: no sculpt yet');
    return this.sculpt;
  }

  /** All sheets, those of the wall first. */
  get sheetsOfFoam(): readonly LayerRun[] {
    return [...this.layers, ...this.raised];
  }

  /** The outermost sheet of the wall, which is seen. */
  get seen(): LayerRun | undefined {
    return this.layers.at(0);
  }
}
