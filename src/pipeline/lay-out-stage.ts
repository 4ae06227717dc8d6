import { Memo } from '../base/memo.ts';
import type { Result } from '../base/result.ts';
import type { Work } from '../base/work.ts';
import type { SheetLayout } from '../model/sheet.ts';
import type { PageSet } from '../model/page.ts';
import { findPaper } from '../model/papers.ts';
import type { Template } from '../model/template.ts';
import { plainTemplate } from '../steps/foam/plain-template.ts';
import { stripTemplate } from '../steps/foam/strip-template.ts';
import type { FoamStrip } from '../model/foam-strip.ts';
import { foamStrips } from '../steps/foam/foam-strips.ts';
import { layOnSheetsSteps } from '../steps/nest/lay-on-sheets.ts';
import { printedPageSteps } from '../steps/tile/printed-pages.ts';
import { printerNotes, printerOf } from '../project/printer-commands.ts';
import { sheetFindings } from './sheet-findings.ts';
import { sheetTaskOf } from './sheet-task.ts';
import { pageInputOf } from './pages-of.ts';
import { besideOf, type Outcome } from './outcome.ts';
import { Assembly } from './assembly.ts';
import { AssemblyOnPieces } from './assembly-on-pieces.ts';
import { assemblySculpts } from './assembly-sculpts.ts';
import { sayOf } from './paper-say.ts';
import type { PlainGround } from './plain/plain-ground.ts';
import type { NamedStrips } from './plain/plain-outcome.ts';
import { PlainStage } from './plain/plain-stage.ts';
import { joined, remembered, rememberedSteps } from './remembered.ts';
import type { Run } from './run.ts';
import type { SplitStage } from './split-stage.ts';
import { standingFindings } from './standing-findings.ts';

/** Results kept per step: a maker goes a few steps back and forth. */
const KEPT = 8;

/** No pieces and no seams, always the same objects. */
const NO_PIECES: NonNullable<Outcome['pieces']> = [];
const NO_SEAMS: NonNullable<Outcome['seams']> = [];

/** From pieces to paper: templates, sheets of foam and pages, all sculpts and all other parts together. */
export class LayOutStage {
  readonly #strips = new Memo<unknown[], readonly FoamStrip[]>(KEPT);
  readonly #stripTemplates = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #plain: PlainStage;
  readonly #assembly = new Assembly();
  readonly #letIns = new AssemblyOnPieces();
  readonly #plainTemplates = new Memo<unknown[], readonly Template[]>(KEPT);
  readonly #allTemplates = new Memo<(readonly Template[])[], readonly Template[]>(KEPT);
  readonly #allTurned = new Memo<(readonly Template[])[], readonly Template[]>(KEPT);
  readonly #sheets = new Memo<unknown[], SheetLayout>(KEPT);
  readonly #splits = new Memo<unknown[], SheetLayout>(KEPT);
  readonly #pages = new Memo<unknown[], Result<PageSet>>(KEPT);

  /** @param sourceOf  the files that other parts are made from, by hash. */
  constructor(sourceOf: PlainGround['sourceOf']) {
    this.#plain = new PlainStage(sourceOf);
  }

  /** Strips that lie on the sculpts, for lines under them on their pieces. */
  laidStrips = ({ project, trimSculptOf }: Run): readonly NamedStrips[] =>
    this.#plain.laidStrips(project, trimSculptOf);

  /** What all parts have to do with each other where they stand; the sculpts came as far as pieces, or did not. */
  async assemble(run: Run, work: Work): Promise<void> {
    const { project } = run;
    await this.#plain.read(project, work);
    run.assembly = this.#assembly.of(project, assemblySculpts(run), this.#plain.works(project, run.trimSculptOf));
    run.findings.push(...run.assembly.findings);
  }

  /** The strips beside the pieces, the pieces of all other parts, and the templates of all; the sculpts have been drawn. */
  async draw(run: Run, work: Work): Promise<void> {
    const { name, foams: stock } = run.project;
    const say = sayOf(run.project);
    const [pieces, seams] = [run.pieces ?? NO_PIECES, run.seams ?? NO_SEAMS];
    run.strips = remembered(this.#strips, [pieces, seams, stock], () => foamStrips(pieces, seams, stock));
    const stripsDrawn = remembered(this.#stripTemplates, [run.strips, name, stock, say], () =>
      run.strips.map((strip) => stripTemplate(strip, name, run.foam(strip.foam).name, say)),
    );
    await this.#plain.read(run.project, work);
    const made = this.#plain.make(
      run.project,
      pieces.length + run.strips.length + 1,
      run.findings,
      run.trimSculptOf,
      run.sculpts.flatMap(({ areasInClay }) => areasInClay),
    );
    run.plain = this.#letIns.ofPlain(made, run.assembly.lines);
    const plain = this.#plain.piecesOf(run.plain);
    const plainDrawn = remembered(this.#plainTemplates, [plain, name, stock, say], () =>
      plain.map((piece) => plainTemplate(piece, name, run.foam(piece.foam).name, say)),
    );
    run.templates = joined(this.#allTemplates, [
      ...run.sculpts.map(({ templates }) => templates),
      stripsDrawn,
      plainDrawn,
    ]);
    run.turned = joined(
      this.#allTurned,
      run.sculpts.map(({ turned }) => turned),
    );
  }

  /** @param splitsOf  what offers to part large pieces of each sculpt, in the order of the project. */
  async layOut(run: Run, splitsOf: readonly SplitStage[], work: Work): Promise<void> {
    const { project } = run;
    const templates = run.templates ?? [];
    const [pieces, seams] = [run.pieces ?? NO_PIECES, run.seams ?? NO_SEAMS];
    const beside = besideOf(run);
    const cut = [...pieces, ...beside];
    await work.pause(0.1);
    const lay = () => {
      run.made('nest');
      return layOnSheetsSteps(sheetTaskOf(project, cut, templates));
    };
    const sheets = await rememberedSteps(this.#sheets, [templates, project.foams, project.stock], lay, work);
    const taskOf = () => sheetTaskOf(project, cut, templates);
    run.sheets = this.#withSplits(
      sheets,
      run.sculpts.map((own, i) => splitsOf[i].offer(own, sheets, taskOf)),
    );
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

  /** The layout with offers to part what is larger than any sheet. */
  #withSplits(sheets: SheetLayout, splits: readonly NonNullable<SheetLayout['splits']>[]): SheetLayout {
    const some = splits.filter(({ length }) => length > 0);
    return some.length === 0
      ? sheets
      : remembered(this.#splits, [sheets, ...some], () => ({ ...sheets, splits: some.flat() }));
  }
}
