import type { Finding } from '../base/finding.ts';
import { formatNumber } from '../base/format-length.ts';
import { ok, type Result } from '../base/result.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import { findPaper } from '../model/papers.ts';
import type { Paper } from '../model/foam-stock.ts';
import type { SeamOfPieces } from '../model/shop-choices.ts';
import type { Page } from '../model/page.ts';
import { beyondBlade } from '../steps/foam/steep-words.ts';
import { sawTable } from '../steps/foam/saw-table.ts';
import { cutListCsv } from '../steps/shop/cut-list.ts';
import { buildSheetPages, pictureSize } from '../steps/tile/build-sheet.ts';
import { PART_PICTURE_MM } from '../steps/tile/part-section.ts';
import { finishPaperSteps } from './finish-paper.ts';
import type { LayerOutcome, Outcome } from './outcome.ts';
import { namesOfOrder } from './shop-order.ts';
import { stepPictureSteps } from './shop-pictures.ts';
import { sayOf } from './paper-say.ts';
import { onlyPages, provenPdf } from './proven-pdf.ts';
import { partPictureSteps } from './plain/part-pictures.ts';
import { partWorks } from './plain/part-works.ts';
import { shopPlanSteps, type ShopPlan } from './shop-plan.ts';
import { verdictOf } from './verdict-of.ts';

/** Names of the files. */
export const SHOP_FILES = { sheet: 'build-sheet.pdf', cutList: 'cut-list.csv', gluing: 'gluing.json' } as const;

/** What is written beside the templates, and what is said of it. */
export interface ShopFiles {
  readonly files: ReadonlyMap<string, Uint8Array | string>;
  readonly findings: readonly Finding[];
  /** One line for people. */
  readonly line: string;
}

/**
 * All files that lie beside the work. The same outcome and date give the same bytes.
 * @throws Error where the chain has not run to its end.
 */
export async function writeShopFiles(
  outcome: Outcome,
  { font, date }: { readonly font: Uint8Array; readonly date: string },
  work: Work,
): Promise<ShopFiles> {
  const files = new Map<string, Uint8Array | string>();
  for (const kind of Object.keys(SHOP_FILES) as readonly ShopFile[]) {
    const made = await shopFile(kind, outcome, { font, date }, work);
    if (!made.ok) throw new Error(made.problem.text);
    files.set(SHOP_FILES[kind], made.value);
  }
  const plan = await runWithPauses(shopPlanSteps(outcome), () => work.pause(0));
  return { files, findings: plan.findings, line: summaryLine(plan) };
}

export type ShopFile = keyof typeof SHOP_FILES;

/**
 * One of the files that lie beside the work.
 * @param font asked for by the build sheet alone.
 * @returns fails as `buildSheetPages` and `provenPdf` do.
 * @throws Error where the chain has not run to its end.
 */
export async function shopFile(
  kind: ShopFile,
  outcome: Outcome,
  { font, date }: { readonly font: Uint8Array; readonly date: string },
  work: Work,
): Promise<Result<Uint8Array | string>> {
  const pause = (): Promise<void> | undefined => work.pause(0, 'putting the build sheet together');
  if (kind === 'sheet') {
    const made = await runWithPauses(shopPaperSteps(outcome, date), pause);
    if (!made.ok) return made;
    const { name, revision } = outcome.project;
    const title = `${sayOf(outcome.project)('Build sheet')}: ${name}`;
    return await provenPdf(onlyPages(made.value.pages), { font, title, date, revision }, { ...work, pause });
  }
  const plan = await runWithPauses(shopPlanSteps(outcome), pause);
  return ok(kind === 'cutList' ? cutListCsv(plan.cutRows, plan.sawRows) : gluingReport(outcome, plan));
}

function summaryLine({ gluing: { steps, batches, outside }, quantities: { massG, longestMm } }: ShopPlan): string {
  const bare = `${formatNumber(massG)} g bare`;
  // Without a sculpt nothing says how long the prop is.
  const size = longestMm === 0 ? bare : `${bare}, ${formatNumber(longestMm)} mm at its longest`;
  if (steps.length === 0) return size;
  const shut = outside.length === 0 ? '' : `, ${outside.length} of its seams pressed from outside`;
  const count = (n: number, what: string, more: string): string => `${n} ${n === 1 ? what : more}`;
  return `${size}; glued in ${count(steps.length, 'step', 'steps')}, ${count(batches.length, 'batch', 'batches')}${shut}`;
}

/** The paper beside the work, before it is written. */
export interface ShopPaper {
  readonly plan: ShopPlan;
  readonly pages: readonly Page[];
}

/**
 * What lies beside the work, on the project's paper where that is a sheet that lies on a bench, else on A4.
 * @param date printed as it is given.
 * @returns fails as `buildSheetPages` does; what the plan has to say travels with it.
 */
export function* shopPaperSteps(outcome: Outcome, date: string): Stepwise<Result<ShopPaper>> {
  const plan = yield* shopPlanSteps(outcome);
  const pictures = yield* stepPictureSteps(outcome, plan.gluing.steps, pictureSize);
  const { project, pieces, seams } = outcome;
  const all = pieces ?? [];
  const pages = buildSheetPages({
    paper: benchPaper(outcome),
    marginMm: Math.min(MOST_MARGIN_MM, Math.max(project.paper.marginMm, LEAST_MARGIN_MM)),
    projectName: project.name,
    projectRevision: project.revision,
    date,
    verdict: verdictOf(outcome),
    pieces: all,
    cutRows: plan.cutRows,
    saw: sawTable(all),
    seamWork: beyondBlade(all, seams ?? []),
    quantities: plan.quantities,
    gluing: plan.gluing,
    parts: partWorks(outcome),
    partPictures: yield* partPictureSteps(outcome, PART_PICTURE_MM),
    finish: yield* finishPaperSteps(outcome, plan.finish),
    pictures,
    say: sayOf(project),
  });
  return pages.ok ? ok({ plan, pages: pages.value }, plan.findings) : pages;
}

/** A build sheet goes through any printer: 10 mm is safe with most; more than 20 only takes room away, mm. */
const LEAST_MARGIN_MM = 10;
const MOST_MARGIN_MM = 20;

/** Sides a sheet has that lies beside the work: from A5 and half Letter to A3 and Tabloid, mm. */
const LEAST_SIDE_MM = 148;
const MOST_SIDE_MM = 432;

/** A sheet that is handled on a bench, upright; pictures want the width of A4. */
function benchPaper({ project: { paper: choice } }: Outcome): Paper {
  const chosen = findPaper(choice.name, choice.widthMm, choice.heightMm);
  const a4: Paper = { name: 'A4', widthMm: 210, heightMm: 297, roll: false };
  if (!chosen.ok || chosen.value.roll) return a4;
  const { widthMm, heightMm, name } = chosen.value;
  const [narrow, wide] = [Math.min(widthMm, heightMm), Math.max(widthMm, heightMm)];
  const isHandy = narrow >= NEEDED_MM && narrow >= LEAST_SIDE_MM && wide <= MOST_SIDE_MM;
  return isHandy ? { name, widthMm: narrow, heightMm: wide, roll: false } : a4;
}

/** Width that a picture and words beside it need, mm. */
const NEEDED_MM = 190;

/** The order of gluing and the quantities as JSON (shared/gluing.schema.json). */
export function gluingReport(outcome: Outcome, plan: ShopPlan): string {
  const { layers, sculpts } = outcome;
  const { gluing, quantities, finish, findings } = plan;
  const parts = partWorks(outcome);
  const orderOf = (all: readonly LayerOutcome[]): readonly SeamOfPieces[] => {
    const inner = all.at(-1);
    const indexOf = new Map<string, number>((inner?.cut?.chains ?? []).map(({ id }, i) => [id, i]));
    const seams = gluing.steps.flatMap(({ runs }) => runs.flatMap(({ seam }) => indexOf.get(seam) ?? []));
    return inner === undefined ? [] : namesOfOrder(inner, [...new Set(seams)]);
  };
  const report = {
    schemaVersion: 1,
    glue: gluing.glue,
    steps: gluing.steps,
    batches: gluing.batches,
    pressedFromOutside: gluing.outside,
    // What accepts this order when it stands in a project file as `gluing`.
    order: orderOf(layers),
    ...(sculpts.length < 2
      ? {}
      : { orders: sculpts.map(({ part, layers: own }) => ({ part: part.id, name: part.name, order: orderOf(own) })) }),
    ...(parts.length === 0 ? {} : { parts }),
    quantities,
    finish: finish.plan,
    findings: findings.map(({ code, severity, text, where }: Finding) => ({ code, severity, text, where })),
  };
  return `${JSON.stringify(report, null, 1)}\n`;
}
