import type { Finding } from '../base/finding.ts';
import type { Problem } from '../base/result.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { Mirror } from '../mesh/mirror/mirror.ts';
import type { StepName } from '../model/bench-view.ts';
import type { DryFit } from '../model/dry-fit.ts';
import type { Springing } from '../model/springing.ts';
import type { FlatPiece } from '../model/flat-piece.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import type { ModelFacts } from '../model/model-facts.ts';
import type { PageSet } from '../model/page.ts';
import type { BodyFit } from '../model/body-fit.ts';
import type { CutOffer, Patch } from '../model/patch.ts';
import type { SeamChain } from '../model/seams.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import type { SourceModel } from '../model/source-model.ts';
import type { Template } from '../model/template.ts';
import type { HingeShapes } from '../steps/foam/hinge-shapes.ts';
import type { PartBends } from '../steps/foam/part-bends.ts';
import type { AssemblyOutcome } from './assembly.ts';
import type { ClayArea } from './clay-core-stage.ts';
import type { DrawnSurface } from './drawn-lines.ts';
import type { CutBeside } from '../model/plain-piece.ts';
import type { LayerPlan } from './layer-plan.ts';
import type { PlainOutcome } from './plain/plain-outcome.ts';
import type { Project, SculptPart } from '../project/project.ts';

/** The sculpt with the size it was given; before that in file units, one unit drawn as one mm. */
export interface SizedSculpt {
  readonly model: SourceModel;
  readonly facts: ModelFacts;
  readonly mesh: Mesh;
  /** Null until the maker has said how large the model is. */
  readonly mmPerUnit: number | null;
  /** The mesh before it was made simpler; left out where it was not. */
  readonly before?: Mesh;
}

/** The sculpt parted for one sheet of foam: what lies between marking seams and laying flat. */
export interface CutSculpt {
  /** What was parted: the sculpt's mesh, or one that was cut finer along seams of this sheet. */
  readonly mesh: Mesh;
  readonly shell: ShellLayer;
  /** One per patch: the sheet's own, or that of a piece of another foam. */
  readonly shells: readonly ShellLayer[];
  readonly chains: readonly SeamChain[];
  readonly patches: readonly Patch[];
  readonly patchOfTriangle: Int32Array;
  readonly offers: readonly CutOffer[];
}

/** What can be shown while patches are still being laid flat. */
export interface EarlyOutcome {
  readonly project: Project;
  readonly part: SculptPart;
  readonly sculpt: SizedSculpt;
  /** As in {@link Outcome}. */
  readonly drawn: DrawnSurface | null;
  readonly cut: CutSculpt;
  /** One per patch: its shape so far, valid and measured as it is; null where there is none yet, or can be none. */
  readonly flats: readonly (FlatPiece | null)[];
  /** Per patch whether that is the last word on it. */
  readonly isFinal: readonly boolean[];
}

/** One sheet of foam of a part, as far as it came; fields are null as in {@link Outcome}. */
export interface LayerOutcome {
  readonly plan: LayerPlan;
  readonly cut: CutSculpt | null;
  /** How its pieces bend. */
  readonly bends: PartBends | null;
  /** One per patch; null where the patch cannot be laid flat. */
  readonly flats: readonly (FlatPiece | null)[] | null;
  /** One per patch: how a grooved piece stands on its hinges, null for any other; empty before it is laid flat. */
  readonly hinges: readonly (HingeShapes | null)[];
  /** Those of this sheet; `patch` counts its own patches. */
  readonly pieces: readonly FoamPiece[] | null;
  readonly seams: readonly FoamSeam[] | null;
  readonly dryFit: DryFit | null;
  readonly springing: Springing | null;
}

/** One sculpt of a project as far as it came; fields are null as in {@link Outcome}. */
export interface SculptOutcome {
  readonly part: SculptPart;
  readonly sculpt: SizedSculpt | null;
  /** The sculpt cut along the paths that are drawn on it, on which the sheets are made; null where none is. */
  readonly drawn: DrawnSurface | null;
  /** The outermost sheet of the wall first; one of each sheet. Empty before the sculpt has its size. */
  readonly layers: readonly LayerOutcome[];
  /** Sheets that are laid on the wall, each over an area; one that cannot be made is left out, and told. */
  readonly raised: readonly LayerOutcome[];
  /** Of all its sheets, in the order of `layers` and then of `raised`; a piece's `patch` counts the patches of its own sheet. */
  readonly pieces: readonly FoamPiece[] | null;
  readonly seams: readonly FoamSeam[] | null;
  /** Areas of it that are modelled in clay; their cores stand in `Outcome.plain`, after the parts of the project. */
  readonly areasInClay: readonly ClayArea[];
  /** The foam against body and core; null where the maker asked for nothing. */
  readonly bodyFit: BodyFit | null;
  /** The mirror of the sculpt's mesh; null where it has none, or none is wanted. */
  readonly mirror: Mirror | null;
  /** The finished pieces put together again. */
  readonly dryFit: DryFit | null;
  /** What the joints of the pieces carry when they are held together. */
  readonly springing: Springing | null;
  readonly stopped: StoppedAt | null;
}

/** The step that could not go on, and why. */
export interface StoppedAt {
  readonly step: StepName;
  readonly problem: Problem;
}

/**
 * Everything the chain made of a project. Later fields are null where an earlier step could not go on; `stopped` says which and why.
 * Never saved, never edited.
 */
export interface Outcome extends Omit<SculptOutcome, 'part'> {
  readonly project: Project;
  /** Each sculpt by itself, in the order of the project. */
  readonly sculpts: readonly SculptOutcome[];
  /** The sculpt that is worked on; null where the project has none. `sculpt` to `raised`, and all that is measured, is of this one. */
  readonly part: SculptPart | null;
  /** Its outermost sheet of the wall parted, and laid flat. */
  readonly cut: CutSculpt | null;
  readonly flats: readonly (FlatPiece | null)[] | null;
  /** Of all sculpts that came so far, in the order of the project; null where there are sculpts and none did. */
  readonly pieces: readonly FoamPiece[] | null;
  readonly seams: readonly FoamSeam[] | null;
  /** Strips that are cut beside the pieces. */
  readonly strips: readonly FoamStrip[];
  /** What became of each part that no sculpt is parted for, in the order of the project. */
  readonly plain: readonly PlainOutcome[];
  /** How all parts have to do with each other; what they leave on pieces stands on these. */
  readonly assembly: AssemblyOutcome;
  /** Of all pieces, then of all strips, then of the pieces of plain parts. */
  readonly templates: readonly Template[] | null;
  /** For twins that share paper the template that serves for both, for paper alone. */
  readonly turned: readonly Template[];
  readonly sheets: SheetLayout | null;
  readonly paper: PageSet | null;
  /** All that the steps found, in the order of the job. */
  readonly findings: readonly Finding[];
  /** Where the sculpt that is worked on, or what is made of all together, could not go on. */
  readonly stopped: StoppedAt | null;
  readonly madeNew: readonly StepName[];
}

/** What is cut beside the pieces of sculpts, in the order of their templates. */
export const besideOf = ({ strips, plain }: Pick<Outcome, 'strips' | 'plain'>): readonly CutBeside[] => [
  ...strips,
  ...plain.flatMap(({ pieces }) => pieces),
];

/** What keeps a project from being whole: where the sculpt that is worked on could not go on, else another one, named. */
export function stoppedIn({ stopped, sculpts, part }: Pick<Outcome, 'stopped' | 'sculpts' | 'part'>): StoppedAt | null {
  if (stopped !== null) return stopped;
  const other = sculpts.find((own) => own.part !== part && own.stopped !== null);
  if (other?.stopped == null) return null;
  const { step, problem } = other.stopped;
  return { step, problem: { ...problem, text: `${other.part.name}: ${problem.text}` } };
}

/** What the sculpt that is worked on came to; null where the project has none. */
export const atWorkIn = ({ sculpts, part }: Pick<Outcome, 'sculpts' | 'part'>): SculptOutcome | null =>
  sculpts.find((own) => own.part === part) ?? null;
