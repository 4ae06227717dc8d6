import type { Finding } from '../base/finding.ts';
import { ok, type Result } from '../base/result.ts';
import { runAtOnce } from '../base/stepwise.ts';
import { verdictSentence } from '../base/verdict.ts';
import { QUIET_WORK, type Work } from '../base/work.ts';
import { cautionTexts } from '../model/cautions.ts';
import { rulesOf } from '../model/foam-settings.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import type { Page } from '../model/page.ts';
import { findPaper } from '../model/papers.ts';
import type { SurfacePoint } from '../model/seams.ts';
import { piecesToPrint } from '../project/piece-standing.ts';
import { printerOf } from '../project/printer-commands.ts';
import type { LayerChoice, Project } from '../project/project.ts';
import { facePolygons, surfacePointOf } from '../steps/seams/surface-points.ts';
import { printedStripPages } from '../steps/tile/printed-pages.ts';
import { writeProjectFile } from '../project/project-file.ts';
import { sourcesOfProject } from '../project/sources.ts';
import { makePlainReport, plainPartsReport } from '../steps/write/report-plain.ts';
import { makeReport, type ReportLayer, type ReportSculpt } from '../steps/write/report.ts';
import { writePiecesSvg } from '../steps/write/svg.ts';
import { dryFitOfAll, springingOfAll } from './all-layers.ts';
import { bookmarksOf, type Bookmark } from './bookmarks.ts';
import type { DrawnSurface } from './drawn-lines.ts';
import { finishSums } from './finish.ts';
import { besideOf, type LayerOutcome, type Outcome, type SculptOutcome, type SizedSculpt } from './outcome.ts';
import { changedPages } from './pages-of.ts';
import { sayOf } from './paper-say.ts';
import { onlyPages, provenPdf } from './proven-pdf.ts';
import type { Source } from './sculpt-stage.ts';
import { shopPlanSteps, type ShopPlan } from './shop-plan.ts';
import { verdictOf } from './verdict-of.ts';
import { wantedPaper } from './wanted-paper.ts';

export interface WriteChoices {
  /** DejaVu Sans as a TrueType file. */
  readonly font: Uint8Array;
  /** ISO 8601 date; goes into the PDF's information and onto the pages. */
  readonly date: string;
  /** Findings of the caller, put before those of the chain. */
  readonly notes?: readonly Finding[];
  readonly sourceOf: (hash: string) => Source | undefined;
}

/** Names of the files a finished project is written to. */
export const FILE_NAMES = {
  pdf: 'templates.pdf',
  svg: 'pieces.svg',
  report: 'report.json',
  project: 'project.foamloft.json',
  strip: 'test-strip.pdf',
  changed: 'templates-changed.pdf',
} as const;

/** All files of a finished project, by name. The same outcome and date give the same bytes. Fails as {@link pdfOf}. */
export async function writeFiles(
  outcome: Outcome,
  choices: WriteChoices,
): Promise<Result<Map<string, Uint8Array | string>>> {
  const pdf = await pdfOf(outcome, choices);
  if (!pdf.ok) return pdf;
  return ok(
    new Map<string, Uint8Array | string>([
      [FILE_NAMES.pdf, pdf.value],
      [FILE_NAMES.svg, svgOf(outcome)],
      [FILE_NAMES.report, reportOf(outcome, choices.notes, runAtOnce(shopPlanSteps(outcome)))],
      [FILE_NAMES.project, projectFileOf(outcome, choices.sourceOf)],
    ]),
  );
}

/** The templates, read back and compared with the pieces. Fails and pauses as `provenPdf`. */
export async function pdfOf(
  outcome: Outcome,
  { font, date }: Pick<WriteChoices, 'font' | 'date'>,
  work: Work = QUIET_WORK,
): Promise<Result<Uint8Array>> {
  const set = need(outcome.paper);
  const wanted = wantedPaper(outcome.project, set, need(outcome.pieces), besideOf(outcome));
  const { name: title, revision } = outcome.project;
  const bookmarks = bookmarksIn(outcome, set.pages);
  return await provenPdf(wanted, { font, title, date, revision, bookmarks }, work);
}

/** The pages of what changed since they were printed, see `changedPages`. */
export async function changedPdfOf(
  outcome: Outcome,
  { font, date }: Pick<WriteChoices, 'font' | 'date'>,
): Promise<Result<Uint8Array>> {
  const { project, pieces, seams, templates, turned } = outcome;
  const beside = besideOf(outcome);
  const drawn = { pieces: need(pieces), seams: need(seams), beside, templates: need(templates), turned };
  const set = changedPages(project, drawn, date);
  if (!set.ok) return set;
  const { name: title, revision } = project;
  const { pages } = set.value;
  const bookmarks = bookmarksIn(outcome, pages);
  const [own, other] = [piecesToPrint(project.done, drawn.pieces), piecesToPrint(project.done, beside)];
  const wanted = wantedPaper(project, set.value, own, other);
  const pdf = await provenPdf(wanted, { font, title, date, revision, bookmarks });
  return pdf.ok ? ok(pdf.value, set.notes) : pdf;
}

/** The second of two twins is found on the page of the template that serves for both, if that is the one that is printed. */
function bookmarksIn(outcome: Outcome, pages: readonly Page[]): readonly Bookmark[] {
  const own = new Set(pages.flatMap((page) => page.pieces));
  const shared = outcome.turned.flatMap(({ piece, turned: twin }) =>
    twin === undefined || own.has(twin) ? [] : [[twin, piece] as const],
  );
  return bookmarksOf(pages, [...need(outcome.pieces), ...besideOf(outcome)], new Map(shared), sayOf(outcome.project));
}

/** The pages from which the neutral fraction of the wall's foams is found, on the project's paper. Fails as `stripPages` does. */
export async function stripPdfOf(
  project: Project,
  { font, date }: Pick<WriteChoices, 'font' | 'date'>,
): Promise<Result<Uint8Array>> {
  const { paper: choice, foams, parts, revision } = project;
  const paper = findPaper(choice.name, choice.widthMm, choice.heightMm);
  if (!paper.ok) return paper;
  const wall = foamsOfWall(parts[0].layers, foams);
  const cautions = cautionTexts('cut');
  const say = sayOf(project);
  const strip = { paper: paper.value, marginMm: choice.marginMm, foams: wall, date, cautions, say };
  const pages = printedStripPages(strip, printerOf(project));
  if (!pages.ok) return pages;
  const title = `${say('Test strip')}, ${[...new Set(wall.map(({ name }) => name))].join(', ')}`;
  const pdf = await provenPdf(onlyPages(pages.value), { font, title, date, revision });
  return pdf.ok ? ok(pdf.value, pages.notes) : pdf;
}

/** Every foam of a wall once, in each thickness it has there, from the outermost sheet inward. */
function foamsOfWall(
  layers: readonly LayerChoice[],
  foams: readonly FoamSheet[],
): readonly { readonly name: string; readonly thicknessMm: number }[] {
  const inward = [...layers].reverse().map(({ foam, thicknessMm }) => ({
    name: foams.find(({ id }) => id === foam)?.name ?? 'foam',
    thicknessMm,
  }));
  return inward.filter(
    ({ name, thicknessMm }, i) =>
      inward.findIndex((other) => other.name === name && other.thicknessMm === thicknessMm) === i,
  );
}

export const svgOf = (outcome: Outcome): string => writePiecesSvg(need(outcome.templates), need(outcome.sheets));

export function projectFileOf(outcome: Outcome, sourceOf: WriteChoices['sourceOf']): string {
  const { project } = outcome;
  const sources = new Map<string, Source>();
  for (const { hash } of sourcesOfProject(project)) {
    const source = sourceOf(hash);
    if (source !== undefined) sources.set(hash, source);
  }
  return writeProjectFile(project, sources);
}

/**
 * @param notes findings of the caller, put before those of the chain.
 * @param plan  what lies beside the work; left out: nothing is told of gluing.
 */
export function reportOf(outcome: Outcome, notes: readonly Finding[] = [], plan?: ShopPlan): string {
  const report = outcome.part === null ? plainReportOf(outcome, notes, plan) : sculptReportOf(outcome, notes, plan);
  const plainParts = plainPartsReport(
    outcome.plain.map(({ part, work, pieces }) => ({
      id: part.id,
      kind: part.kind,
      name: part.name,
      transform: part.transform,
      copies: part.copies,
      pieces,
      steps: work?.steps ?? [],
    })),
  );
  const finish = finishSums(outcome);
  const verdict = verdictOf(outcome, notes);
  return `${JSON.stringify({
    ...report,
    verdict: { answer: verdict.answer, text: verdictSentence(verdict) },
    ...(plainParts.length === 0 ? {} : { plainParts }),
    ...(finish === null ? {} : { finish }),
  })}\n`;
}

const plainReportOf = (
  { project, plain, sheets, paper, findings }: Outcome,
  notes: readonly Finding[],
  plan: ShopPlan | undefined,
): Record<string, unknown> =>
  makePlainReport({
    projectName: project.name,
    projectRevision: project.revision,
    plain: plain.flatMap(({ pieces }) => pieces),
    sheets: need(sheets),
    paper: { name: project.paper.name, set: need(paper) },
    gluing: plan?.gluing ?? null,
    findings: [...notes, ...findings],
  });

function sculptReportOf(
  outcome: Outcome,
  notes: readonly Finding[],
  plan: ShopPlan | undefined,
): Record<string, unknown> {
  const { project, sculpts } = outcome;
  return makeReport({
    projectName: project.name,
    projectRevision: project.revision,
    parts: project.parts,
    sculpts: sculpts.map((own) => reportSculpt(project, own)),
    atWork: sculpts.findIndex(({ part }) => part === outcome.part),
    pieces: need(outcome.pieces),
    strips: outcome.strips,
    plain: outcome.plain.flatMap(({ pieces }) => pieces),
    seams: need(outcome.seams),
    templates: need(outcome.templates),
    sheets: need(outcome.sheets),
    paper: { name: project.paper.name, set: need(outcome.paper) },
    dryFit: sculpts.length === 1 ? need(outcome.dryFit) : dryFitOfAll(sculpts.map(({ dryFit }) => need(dryFit))),
    springing:
      sculpts.length === 1 ? need(outcome.springing) : springingOfAll(sculpts.map((own) => need(own.springing))),
    gluing: plan?.gluing ?? null,
    findings: [...notes, ...outcome.findings],
  });
}

function reportSculpt(project: Project, own: SculptOutcome): ReportSculpt {
  const { model, facts, mesh, mmPerUnit } = need(own.sculpt);
  const { part, layers, raised, bodyFit } = own;
  return {
    part: part.id,
    name: part.name,
    modelHash: model.hash,
    mmPerUnit: need(mmPerUnit),
    facts,
    mesh,
    layers: [...raised.toReversed(), ...layers].map((layer) => reportLayer(project, own, layer)).reverse(),
    bodyFit,
    fitMesh: need(layers[0].cut).mesh,
  };
}

function reportLayer(
  { foams }: Project,
  { sculpt, drawn }: SculptOutcome,
  { plan, cut, flats, hinges }: LayerOutcome,
): ReportLayer {
  const { shell, shells, mesh, patches } = need(cut);
  const foam = foams.find(({ id }) => id === plan.choice.foam);
  const shrinkage = (plan.choice.allowForShrinkage ? foam?.shrinkage : undefined) ?? null;
  return {
    shell,
    shells,
    mesh,
    added: drawn?.mesh.positions === mesh.positions ? placesAdded(need(sculpt), drawn) : [],
    patches,
    shrinkage,
    rules: rulesOf(foam ?? {}),
    flats: need(flats),
    corners: hinges.map((own) => own?.corners ?? null),
  };
}

/** Where the vertices that paths have added lie, in the words of the file. */
const placesAdded = ({ mesh, model }: SizedSculpt, { cut }: DrawnSurface): readonly SurfacePoint[] =>
  cut.added.map((place) => surfacePointOf(mesh, facePolygons(model), place));

/** A value that a finished chain has: an unfinished one must not be written, and that is our mistake. */
function need<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('write: the chain has not run to its end');
  return value;
}
