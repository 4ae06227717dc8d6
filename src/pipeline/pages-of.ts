import type { PieceId } from '../base/ids.ts';
import { fail, type Result } from '../base/result.ts';
import { runAtOnce } from '../base/stepwise.ts';
import { cautionTexts } from '../model/cautions.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import type { Paper } from '../model/foam-stock.ts';
import type { CutBeside } from '../model/plain-piece.ts';
import type { PageSet } from '../model/page.ts';
import type { RuledStrip } from '../model/ruled-strip.ts';
import { findPaper } from '../model/papers.ts';
import type { Template } from '../model/template.ts';
import { printerOf } from '../project/printer-commands.ts';
import { piecesToPrint } from '../project/piece-standing.ts';
import type { Project } from '../project/project.ts';
import { ruledStrips } from '../steps/foam/ruled-strips.ts';
import { sawTable } from '../steps/foam/saw-table.ts';
import { beyondBlade } from '../steps/foam/steep-words.ts';
import type { PageInput } from '../steps/tile/page-input.ts';
import { printedPageSteps } from '../steps/tile/printed-pages.ts';
import { sayOf } from './paper-say.ts';
import { PAPER_NESTER } from './paper-nester.ts';

/** All that is drawn on pages. */
export interface Drawn {
  readonly pieces: readonly FoamPiece[];
  readonly seams: readonly FoamSeam[];
  readonly beside: readonly CutBeside[];
  /** One for each piece, then one for each thing beside them. */
  readonly templates: readonly Template[];
  /** Templates that serve for a piece and, turned over, for its twin. */
  readonly turned: readonly Template[];
}

/** Templates as they are printed: where both of two twins are wanted, the one that serves for both in place of theirs. */
function templatesOnPaper({ templates, turned }: Drawn): readonly Template[] {
  const wanted = new Set(templates.map(({ piece }) => piece));
  const serving = turned.filter(
    (shared) => wanted.has(shared.piece) && shared.turned !== undefined && wanted.has(shared.turned),
  );
  const left = new Set(serving.map((shared) => shared.turned));
  const shared = new Map(serving.map((template) => [template.piece, template]));
  return templates.flatMap((own) => (left.has(own.piece) ? [] : [shared.get(own.piece) ?? own]));
}

/** What has no paper because it is cut by the ruler; nothing where the project wants all on paper. */
function ruledOf(
  { paper: choice }: Project,
  { beside }: Drawn,
  { widthMm, heightMm, roll }: Paper,
): readonly RuledStrip[] {
  // A roll is as long as it likes: what its width does not hold is long there too.
  const longer = roll ? widthMm : Math.max(widthMm, heightMm);
  return choice.ruled === 'print' ? [] : ruledStrips(beside, longer - 2 * choice.marginMm);
}

/** What pages are made of, as the project wishes them. */
export function pageInputOf(project: Project, drawn: Drawn, paper: Paper, date: string | undefined): PageInput {
  const { pieces, seams, beside } = drawn;
  const { orientation, marginMm, overlapMm } = project.paper;
  const printer = printerOf(project);
  const ruled = ruledOf(project, drawn, paper);
  const hasNone = new Set(ruled.map(({ piece }) => piece));
  return {
    templates: templatesOnPaper(drawn).filter(({ piece }) => !hasNone.has(piece)),
    pieces,
    saw: sawTable(pieces),
    beside,
    ...(ruled.length === 0 ? {} : { ruled }),
    seamWork: beyondBlade(pieces, seams),
    paper,
    orientation,
    marginMm,
    overlapMm,
    ...(printer === null ? {} : { printer }),
    say: sayOf(project),
    projectName: project.name,
    projectRevision: project.revision,
    ...(date === undefined ? {} : { date }),
    cautions: cautionTexts('cut'),
    nester: PAPER_NESTER,
  };
}

/**
 * Pages of the pieces that need paper alone: of those without and of those whose paper is out of date, not of what is cut.
 * @returns fails with `paper/up-to-date` where there is none, and as `pageSteps` does.
 */
export function changedPages(project: Project, drawn: Drawn, date: string | undefined): Result<PageSet> {
  const paper = findPaper(project.paper.name, project.paper.widthMm, project.paper.heightMm);
  if (!paper.ok) return paper;
  const wanted = new Set<PieceId>(piecesToPrint(project.done, [...drawn.pieces, ...drawn.beside]).map(({ id }) => id));
  if (wanted.size === 0)
    return fail(
      'paper/up-to-date',
      'The paper of every piece is printed and up to date, or its piece is cut: there is nothing to print.',
    );
  const some: Drawn = {
    seams: drawn.seams.filter(({ pieces }) => pieces.some((id) => wanted.has(id))),
    pieces: drawn.pieces.filter(({ id }) => wanted.has(id)),
    beside: drawn.beside.filter(({ id }) => wanted.has(id)),
    templates: drawn.templates.filter(({ piece }) => wanted.has(piece)),
    turned: drawn.turned,
  };
  // What stands at a seam is told from both of its pieces, printed or not.
  const seamWork = beyondBlade(drawn.pieces, some.seams);
  return runAtOnce(printedPageSteps({ ...pageInputOf(project, some, paper.value, date), seamWork }));
}
