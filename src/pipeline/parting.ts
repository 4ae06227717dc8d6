import type { Finding } from '../base/finding.ts';
import { seamId } from '../base/ids.ts';
import { Memo } from '../base/memo.ts';
import { runWithPauses } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import type { Mesh } from '../mesh/mesh.ts';
import { topologySteps } from '../mesh/topology.ts';
import type { CutOffer } from '../model/patch.ts';
import type { SeamChain, SeamMarks, SeamSetting } from '../model/seams.ts';
import { cutSteps } from '../steps/cut/cut-patches.ts';
import { offerSteps } from '../steps/cut/offer-cut.ts';
import { chainSteps } from '../steps/cut/seam-chains.ts';
import { seamSetFromMarks } from '../steps/seams/seam-set.ts';
import type { CutSculpt } from './outcome.ts';
import { PatchStore } from './patch-store.ts';
import type { SculptRun } from './sculpt-run.ts';

/** Results kept: a maker goes a few steps back and forth, and seams change more often than anything else. */
const KEPT = 32;

/** A surface parted along its seams. */
export type Parted = Pick<CutSculpt, 'chains' | 'patches' | 'patchOfTriangle' | 'offers'>;

/** What a surface is parted by. Remembered by identity: give the same objects for the same wish. */
export interface PartingWish {
  readonly mesh: Mesh;
  readonly marks: SeamMarks;
  readonly seamSettings: readonly SeamSetting[];
  /** Before the letters of the seams, and before their ids, so that seams of several sculpts are told from each other; empty for the first. */
  readonly prefix: SeamPrefix;
  /** Behind the letters and ids of the seams, so that `A2` is told from `A`; empty for what is seen. */
  readonly suffix: string;
}

/** What stands before letters and ids of a sculpt's seams. */
export interface SeamPrefix {
  readonly letter: string;
  readonly id: string;
}

/** Parts a surface along marked seams, and remembers it. One for each surface that is parted by itself. */
export class Parting {
  /** The patches, each one known again where it was met before, with the flat shapes that were made of it. */
  readonly patches = new PatchStore();
  readonly #known = new Memo<unknown[], { cut: Parted; findings: readonly Finding[] }>(KEPT);

  /** Stops the run where a seam file names what is no edge. */
  async of(run: SculptRun, wish: PartingWish, work: Work): Promise<{ cut: Parted; findings: readonly Finding[] }> {
    const { mesh, marks, seamSettings, prefix, suffix } = wish;
    const key = [mesh, marks, seamSettings, prefix.letter, prefix.id, suffix];
    const known = this.#known.get(key);
    if (known !== undefined) {
      const patches = this.patches.settle(mesh, known.cut.patches, run.needSculpt().mesh);
      // The store may have begun anew since, and know equal patches by other objects: those are the ones that results are kept for.
      return patches === known.cut.patches ? known : this.#known.set(key, { ...known, cut: { ...known.cut, patches } });
    }
    await runWithPauses(topologySteps(mesh), () => work.pause(0.5));
    const seams = run.take('seams', seamSetFromMarks(mesh, marks, run.choices.strictSeams ?? false));
    const raw = await runWithPauses(cutSteps(mesh, seams.value, mesh.positions), () => work.pause(0.6));
    await work.pause(0.7);
    const patches = this.patches.settle(mesh, raw.patches, run.needSculpt().mesh);
    const offers: CutOffer[] = [];
    for (const i of patches.keys()) {
      const offer = await runWithPauses(offerSteps(mesh, seams.value, patches, i), () => work.pause(0.7));
      if (offer !== null) offers.push(offer);
    }
    await work.pause(0.8);
    const chaining = chainSteps(mesh, seams.value, { ...raw, patches }, seamSettings);
    const chains = (await runWithPauses(chaining, () => work.pause(0.8))).map((chain) => named(chain, prefix, suffix));
    await work.pause(0.9);
    run.made('seams', 'cut');
    const cut = { chains, patches, patchOfTriangle: raw.patchOfTriangle, offers };
    return this.#known.set(key, { cut, findings: seams.notes });
  }
}

/** Seams of other sculpts than the first, and of what lies under the sheet that is seen, have ids and letters of their own. */
const named = (chain: SeamChain, prefix: SeamPrefix, suffix: string): SeamChain =>
  prefix.id + suffix === ''
    ? chain
    : {
        ...chain,
        id: seamId(`${prefix.id}${chain.id}${suffix === '' ? '' : `.${suffix}`}`),
        letter: chain.letter === '' ? '' : `${prefix.letter}${chain.letter}${suffix}`,
      };
