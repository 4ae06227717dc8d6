import { Memo } from '../base/memo.ts';
import { runWithPauses } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import type { CutMesh } from '../mesh/lines/cut-along.ts';
import type { Mesh } from '../mesh/mesh.ts';
import type { FoamRules } from '../model/foam-settings.ts';
import type { Patch } from '../model/patch.ts';
import type { SeamChain } from '../model/seams.ts';
import type { ShellLayer } from '../model/shell-layer.ts';
import { hingeSurface } from '../steps/foam/hinge-surface.ts';
import type { PartBends } from '../steps/foam/part-bends.ts';
import { settingsOfPatches } from '../steps/foam/piece-names.ts';
import { shellLayerSteps, type ShellChoice } from '../steps/shell/make-shell-layer.ts';
import { flatBesideHinges } from './flat-beside-hinges.ts';
import type { LayerPlan } from './layer-plan.ts';
import { remembered } from './remembered.ts';
import type { SculptRun } from './sculpt-run.ts';
import { shellOnLines } from './shell-on-lines.ts';

/** Results kept per step: a maker goes a few steps back and forth. */
const KEPT = 8;

/** What a sheet is made on. */
export interface SheetSurface {
  /** What is parted. */
  readonly mesh: Mesh;
  /** What is moved to the foam: the mesh, or the sculpt whose vertices are the first ones of the mesh. */
  readonly whole: Mesh;
  /** Where the mesh is of the whole cut along lines: that cut. */
  readonly cut: CutMesh | null;
}

/** The surfaces of one sheet of foam and of the pieces in it, and what is remembered of them. */
export class Shells {
  readonly #shells = new Memo<unknown[], ShellLayer>(2 * KEPT);
  readonly #onLines = new Memo<unknown[], ShellLayer>(2 * KEPT);
  readonly #shellsOfPatches = new Memo<unknown[], readonly ShellLayer[]>(KEPT);

  /** The surfaces of a sheet. */
  async of(run: SculptRun, mesh: Mesh, choice: ShellChoice, work: Work): Promise<ShellLayer> {
    // By what it is made of: whether pieces are cut larger for shrinkage is a matter of the same layer, but not of its shell.
    const { layer, foam, thicknessMm, neutralFraction, modelIs, backMm, offMm } = choice;
    const key = [mesh, layer, foam, thicknessMm, neutralFraction, modelIs, backMm, offMm];
    let shell = this.#shells.get(key);
    if (shell === undefined) {
      shell = this.#shells.set(key, await runWithPauses(shellLayerSteps(mesh, choice), () => work.pause(0.2)));
      run.made('shell');
    }
    return shell;
  }

  /** Those of the whole brought to what the sheet is made on. */
  onSurface(shell: ShellLayer, { whole, cut }: SheetSurface): ShellLayer {
    return cut === null ? shell : remembered(this.#onLines, [shell, cut], () => shellOnLines(shell, whole, cut));
  }

  /** The sheet each patch is cut from: the plan's, or in the outermost one of another foam where the maker wants that of the piece. */
  async ofPatches(
    run: SculptRun,
    surface: SheetSurface,
    plan: LayerPlan,
    patches: readonly Patch[],
    shell: ShellLayer,
    work: Work,
  ): Promise<readonly ShellLayer[]> {
    const wishes = plan.sheet === 1 ? settingsOfPatches(surface.mesh, patches, run.part.pieceSettings) : [];
    const shells = patches.map(() => shell);
    for (const [i, { foam }] of wishes.entries()) {
      if (foam === undefined || foam === plan.choice.foam) continue;
      const { thicknessMm, neutralFraction } = run.foam(foam);
      const choice = { ...shellChoice(run, plan), foam, thicknessMm, neutralFraction };
      shells[i] = this.onSurface(await this.of(run, surface.whole, choice, work), surface);
    }
    return shells;
  }

  /** The surfaces each patch lies on: its sheet's, with what the piece keeps its length on. */
  onHinges(
    bends: PartBends,
    chains: readonly SeamChain[],
    own: readonly ShellLayer[],
    { hingeMm }: FoamRules,
  ): readonly ShellLayer[] {
    return remembered(this.#shellsOfPatches, [bends, chains, hingeMm, ...own], () => {
      const hinged = bends.patches.map((bend, i) => hingeSurface(bend, own[i], hingeMm));
      return flatBesideHinges(bends, chains, own, hinged);
    });
  }
}

/** Surfaces of the plan's sheet. */
export function shellChoice(run: SculptRun, { choice, backMm }: LayerPlan): ShellChoice {
  const { id, foam, thicknessMm, neutralFraction } = choice;
  const { modelIs, offMm = 0 } = run.part;
  const place = backMm === undefined ? { offMm } : { backMm };
  return { layer: id, foam, thicknessMm, neutralFraction, modelIs, ...place };
}
