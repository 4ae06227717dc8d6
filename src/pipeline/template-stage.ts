import { Memo } from '../base/memo.ts';
import type { Work } from '../base/work.ts';
import type { FoamId } from '../base/ids.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { Template } from '../model/template.ts';
import { templateSteps, turnedTemplateSteps } from '../steps/foam/make-template.ts';
import { twinPapers, type TwinPapers } from '../steps/foam/twin-paper.ts';
import { sayOf } from './paper-say.ts';
import { remembered, rememberedSteps } from './remembered.ts';
import type { SculptRun } from './sculpt-run.ts';

/** Results kept per step: a maker goes a few steps back and forth. */
const KEPT = 8;

/** Draws the pieces of one sculpt. */
export class TemplateStage {
  readonly #twins = new Memo<unknown[], TwinPapers>(KEPT);
  readonly #templates = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #turned = new Memo<unknown[], readonly Template[]>(KEPT);

  /** One template for each piece, and where twins share paper that of both. */
  async draw(run: SculptRun, work: Work): Promise<void> {
    const { pieces, seams } = run;
    if (pieces === null || seams === null) return;
    const { name: projectName, paper } = run.project;
    const foams = [...new Set(pieces.map(({ foam }) => foam))].map((id) => run.foam(id));
    const twins = remembered(this.#twins, [pieces, seams], () => twinPapers(pieces, seams));
    const say = sayOf(run.project);
    const context = { projectName, foamNames: namesOf(foams), twins, say };
    const key = [pieces, seams, projectName, say, ...foams.map(({ name }) => name)];
    const steps = () => templateSteps(pieces, seams, [], context);
    run.templates = await rememberedSteps(this.#templates, key, steps, work);
    if (paper.mirrored === 'each') return;
    run.turned = await rememberedSteps(this.#turned, key, () => turnedTemplateSteps(pieces, seams, context), work);
  }
}

/** Foams by what they are called. */
export const namesOf = (foams: readonly FoamSheet[]): ReadonlyMap<FoamId, string> =>
  new Map(foams.map(({ id, name }) => [id, name]));
