import { Memo } from '../base/memo.ts';
import type { FoamId } from '../base/ids.ts';
import type { Result } from '../base/result.ts';
import type { Work } from '../base/work.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { PageSet } from '../model/page.ts';
import { findPaper } from '../model/papers.ts';
import type { Template } from '../model/template.ts';
import { plainTemplate } from '../steps/foam/plain-template.ts';
import { templateSteps, turnedTemplateSteps } from '../steps/foam/make-template.ts';
import { twinPapers, type TwinPapers } from '../steps/foam/twin-paper.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import { foamStrips } from '../steps/foam/foam-strips.ts';
import { layOnSheets } from '../steps/nest/lay-on-sheets.ts';
import { printedPageSteps } from '../steps/tile/printed-pages.ts';
import { printerNotes, printerOf } from '../project/printer-commands.ts';
import { offerOfSplit, splitPaths } from './split-offers.ts';
import { sheetFindings } from './sheet-findings.ts';
import { sheetTaskOf } from './sheet-task.ts';
import { pageInputOf } from './pages-of.ts';
import { besideOf, type CutSculpt } from './outcome.ts';
import type { PlainGround } from './plain/plain-ground.ts';
import type { NamedStrips } from './plain/plain-outcome.ts';
import { PlainStage } from './plain/plain-stage.ts';
import { remembered, rememberedSteps } from './remembered.ts';
import type { Run } from './run.ts';
import { standingFindings } from './standing-findings.ts';

/** Results kept per step: a maker goes a few steps back and forth. */
const KEPT = 8;

/** From pieces to paper: templates, sheets of foam and pages. */
export class LayOutStage {
  readonly #strips = new Memo<unknown[], readonly FoamStrip[]>(KEPT);
  readonly #templates = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #twins = new Memo<unknown[], TwinPapers>(KEPT);
  readonly #plain: PlainStage;
  readonly #plainTemplates = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #allTemplates = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #turned = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #sheets = new Memo<unknown[], ReturnType<typeof layOnSheets>>(KEPT);
  readonly #splits = new Memo<unknown[], { readonly sheets: SheetLayout; readonly cut: CutSculpt }>(KEPT);
  readonly #pages = new Memo<unknown[], Result<PageSet>>(KEPT);

  /** @param sourceOf  the files that other parts are made from, by hash. */
  constructor(sourceOf: PlainGround['sourceOf']) {
    this.#plain = new PlainStage(sourceOf);
  }

  /** The strips beside the pieces, the pieces of all other parts, one template for each, and where twins share paper that of both. */
  async draw(run: Run, pieces: readonly FoamPiece[], seams: readonly FoamSeam[], work: Work): Promise<void> {
    const { name, foams: stock } = run.project;
    run.strips = remembered(this.#strips, [pieces, seams, stock], () => foamStrips(pieces, seams, stock));
    const foams = [...new Set([...pieces, ...run.strips].map(({ foam }) => foam))].map((id) => run.foam(id));
    const twins = remembered(this.#twins, [pieces, seams], () => twinPapers(pieces, seams));
    const context = { projectName: name, foamNames: namesOf(foams), twins };
    const key = [pieces, seams, name, ...foams.map((foam) => foam.name)];
    const steps = () => templateSteps(pieces, seams, run.strips, context);
    const drawn = await rememberedSteps(this.#templates, [run.strips, ...key], steps, work);
    await this.#plain.read(run.project, work);
    run.plain = this.#plain.make(
      run.project,
      pieces.length + run.strips.length + 1,
      run.findings,
      run.trimSculptOf,
      run.areasInClay,
    );
    const plain = this.#plain.piecesOf(run.plain);
    const plainDrawn = remembered(this.#plainTemplates, [plain, name, stock], () =>
      plain.map((piece) => plainTemplate(piece, name, run.foam(piece.foam).name)),
    );
    run.templates =
      plain.length === 0 ? drawn : remembered(this.#allTemplates, [drawn, plainDrawn], () => [...drawn, ...plainDrawn]);
    if (run.project.paper.mirrored === 'each') return;
    run.turned = await rememberedSteps(this.#turned, key, () => turnedTemplateSteps(pieces, seams, context), work);
  }

  /** Strips that lie on the sculpts, for lines under them on their pieces. */
  laidStrips = ({ project, trimSculptOf }: Run): readonly NamedStrips[] =>
    this.#plain.laidStrips(project, trimSculptOf);

  async layOut(run: Run, pieces: readonly FoamPiece[], seams: readonly FoamSeam[], work: Work): Promise<void> {
    const { project } = run;
    const templates = run.templates ?? [];
    const beside = besideOf(run);
    const cut = [...pieces, ...beside];
    const sheets = remembered(this.#sheets, [templates, project.foams, project.stock], () => {
      run.made('nest');
      return layOnSheets(sheetTaskOf(project, cut, templates));
    });
    run.sheets = this.#withSplits(run, pieces, sheets);
    run.findings.push(...sheetFindings(project, cut, run.sheets));
    const choice = project.paper;
    const paper = run.take('tile', findPaper(choice.name, choice.widthMm, choice.heightMm)).value;
    const printer = printerOf(project);
    const { turned } = run;
    const key = [templates, turned, pieces, choice, printer, project.name, project.revision, run.choices.date];
    await work.pause(0.5);
    const steps = () => {
      run.made('tile');
      return printedPageSteps(
        pageInputOf(project, { pieces, seams, beside, templates, turned }, paper, run.choices.date),
      );
    };
    const set = run.take('tile', await rememberedSteps(this.#pages, key, steps, work));
    run.paper = set.value;
    run.findings.push(
      ...set.notes,
      ...(printer === null ? [] : printerNotes(printer)),
      ...standingFindings(project.done, cut),
    );
  }

  /** The layout with offers to part what is larger than any sheet, as far as it is of the sheet of the wall that is seen; its cuts are offered too. */
  #withSplits(run: Run, pieces: readonly FoamPiece[], sheets: SheetLayout): SheetLayout {
    const { seen, project, templates, drawn } = run;
    const large = pieces.filter(({ id, layer }) => sheets.tooLarge.includes(id) && layer === seen?.plan.choice.id);
    if (seen === undefined || large.length === 0) return sheets;
    const parted = seen.needCut();
    const made = remembered(this.#splits, [sheets, parted, pieces], () => {
      const task = sheetTaskOf(project, [...pieces, ...besideOf(run)], templates ?? []);
      const splits = splitPaths(large, task, parted, run.needSculpt(), drawn);
      if (splits.length === 0) return { sheets, cut: parted };
      const offers = splits.map((split) => offerOfSplit(split, pieces));
      return { sheets: { ...sheets, splits }, cut: { ...parted, offers: [...parted.offers, ...offers] } };
    });
    seen.cut = made.cut;
    return made.sheets;
  }
}

const namesOf = (foams: readonly FoamSheet[]): ReadonlyMap<FoamId, string> =>
  new Map(foams.map(({ id, name }) => [id, name]));
