import { formatPlain } from '../base/format-length.ts';
import type { Say } from '../base/paper-language.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';
import { boxOfPoints3 } from '../mesh/measure.ts';
import { cautionsById } from '../model/cautions.ts';
import type { FoamPiece, FoamSeam } from '../model/foam-piece.ts';
import type { PageSet } from '../model/page.ts';
import { findPaper } from '../model/papers.ts';
import type { Template } from '../model/template.ts';
import { checkMockUp, mockUpProject, scaleText, type MockUp } from '../project/mock-up.ts';
import { templateSteps } from '../steps/foam/make-template.ts';
import { printedPageSteps } from '../steps/tile/printed-pages.ts';
import { bookmarksOf } from './bookmarks.ts';
import { atWorkIn, type Outcome } from './outcome.ts';
import { pageInputOf } from './pages-of.ts';
import { sayOf } from './paper-say.ts';
import type { Pipeline } from './pipeline.ts';
import { provenPdf } from './proven-pdf.ts';
import { wantedPaper } from './wanted-paper.ts';

export const MOCK_UP_FILE = 'mock-up.pdf';

/** The mock-up before it is written. */
export interface MadeMockUp {
  /** Of the small project, run to its end. */
  readonly outcome: Outcome;
  readonly pages: PageSet;
}

/**
 * The pieces of a prop laid flat anew for card, and their pages.
 * @param pipeline holds the sculpt's file.
 * @param outcome  of the prop itself, as far as its pieces.
 * @returns fails as {@link checkMockUp}, with `mock-up/no-pieces` where the prop has none yet, and as any run does.
 */
export async function makeMockUp(
  pipeline: Pipeline,
  outcome: Outcome,
  wish: MockUp,
  date: string,
  work: Work,
): Promise<Result<MadeMockUp>> {
  const mockUp = checkMockUp(wish);
  if (!mockUp.ok) return mockUp;
  const { sculpt, project } = outcome;
  if (sculpt === null || sculpt.mmPerUnit === null || atWorkIn(outcome)?.pieces == null)
    return fail('mock-up/no-pieces', 'There is no piece to make small yet: part the sculpt into pieces first.');
  const { min, max } = boxOfPoints3(sculpt.model.positions);
  const longest = Math.max(max.x - min.x, max.y - min.y, max.z - min.z);
  const small = mockUpProject(project, wish, { mmPerUnit: sculpt.mmPerUnit, longest });
  const made = await pipeline.run(small, work, { date });
  const { pieces, seams } = made;
  if (made.stopped !== null) return { ok: false, problem: made.stopped.problem };
  if (pieces === null || seams === null) throw new Error('makeMockUp: no pieces');
  const templates = await runWithPauses(briefTemplates(pieces, seams, wish, sayOf(small)), () => work.pause(1));
  const paper = findPaper(small.paper.name, small.paper.widthMm, small.paper.heightMm);
  if (!paper.ok) return paper;
  const { saw: _, ...input } = pageInputOf(
    small,
    { pieces, seams, beside: [], templates, turned: [] },
    paper.value,
    date,
  );
  const pages = await runWithPauses(
    printedPageSteps({
      ...input,
      seamWork: [],
      cautions: cautionsById(['knife']),
      notice: noticeOf(wish),
      printedSide: 'The printed side is the outside.',
    }),
    () => work.pause(1),
  );
  return pages.ok ? ok({ outcome: made, pages: pages.value }, pages.notes) : pages;
}

/** The mock-up as a PDF, read back and compared with its pieces. Fails as `provenPdf`. */
export async function mockUpPdf(
  { outcome, pages }: MadeMockUp,
  font: Uint8Array,
  date: string,
): Promise<Result<Uint8Array>> {
  const { name: title, revision } = outcome.project;
  const bookmarks = bookmarksOf(pages.pages, outcome.pieces ?? [], new Map(), sayOf(outcome.project));
  const wanted = wantedPaper(outcome.project, pages, outcome.pieces ?? [], []);
  return await provenPdf(wanted, { font, title, date, revision, bookmarks });
}

/** What a small piece needs: its name, its mates, its folds. A seam that is square by design is not told to be filled. */
function briefTemplates(
  pieces: readonly FoamPiece[],
  seams: readonly FoamSeam[],
  mockUp: MockUp,
  say: Say,
): Stepwise<readonly Template[]> {
  const plain = seams.map(({ steep: _, step: __, ...seam }) => seam);
  return templateSteps(pieces, plain, [], {
    projectName: say(`mock-up ${scaleText(mockUp)}, not for foam`),
    foamNames: new Map(pieces.map(({ foam }) => [foam, 'card'])),
    twins: { readings: new Map(), apart: new Map() },
    isBrief: true,
    say,
  });
}

/** What is printed in large letters on the first page and the map. */
function noticeOf(mockUp: MockUp): readonly string[] {
  return [
    `Paper mock-up, ${scaleText(mockUp)}: every length is a ${ordinal(mockUp.times)} of the prop’s. Do not cut foam from it, not even enlarged: foam is thicker and its edges lean.`,
    `Print on card ${formatPlain(mockUp.cardMm)} mm thick, or paste paper on it. Cut on the line with the blade upright, score fold lines and bend them, roll the rest over a table’s edge. Lay two edges of one letter side by side so that they touch on the inside, and tape them on the outside.`,
  ];
}

function ordinal(times: number): string {
  const words = new Map([
    [2, 'half'],
    [3, 'third'],
    [4, 'quarter'],
    [5, 'fifth'],
    [6, 'sixth'],
    [8, 'eighth'],
    [10, 'tenth'],
  ]);
  return words.get(times) ?? `${formatPlain(times)}th`;
}
