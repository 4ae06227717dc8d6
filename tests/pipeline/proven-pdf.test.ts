import { beforeAll, describe, expect, it } from 'vitest';
import { Cancelled, type Work } from '../../src/base/work.ts';
import type { Page } from '../../src/model/page.ts';
import { besideOf, type Outcome } from '../../src/pipeline/outcome.ts';
import { onlyPages, PAPER_FAULT_FILE, proven, provenPdf } from '../../src/pipeline/proven-pdf.ts';
import { wantedPaper } from '../../src/pipeline/wanted-paper.ts';
import type { WantedPaper } from '../../src/steps/read-back/check-paper.ts';
import { writePdf } from '../../src/steps/write/pdf.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { runSample, testFont } from '../support/run-sample.ts';

const SAID = { title: 'proof', date: '2026-01-01', revision: 1 };

let wanted: WantedPaper;
let outcome: Outcome;

beforeAll(async () => {
  outcome = await runSample('shoulder-plate');
  wanted = wantedPaper(outcome.project, outcome.paper!, outcome.pieces!, besideOf(outcome));
});

const written = async (pages: readonly Page[]): Promise<Uint8Array> =>
  await writePdf(pages, { ...SAID, font: testFont() });

/** The first fault that is found in a file of other pages than were wanted. */
async function faultOf(pages: readonly Page[], asked: WantedPaper = wanted): Promise<string> {
  const { report } = expectProblem(await proven(await written(pages), asked, SAID), 'paper/read-back');
  expect(report?.name).toBe(PAPER_FAULT_FILE);
  return (JSON.parse(report!.text) as { faults: { what: string }[] }).faults[0].what;
}

const changed = (pages: readonly Page[], kind: Page['kind'], change: (page: Page) => Page): Page[] => {
  const at = pages.findIndex((page) => page.kind === kind);
  return pages.map((page, i) => (i === at ? change(page) : page));
};

const scaled = (page: Page, x: number, y: number, role?: string): Page => ({
  ...page,
  drawing: {
    ...page.drawing,
    strokes: page.drawing.strokes.map((stroke) =>
      role !== undefined && stroke.role !== role
        ? stroke
        : {
            ...stroke,
            points: stroke.points.map((mm, i) => (i % 2 === 0 ? x * (mm - 100) + 100 : y * (mm - 100) + 100)),
          },
    ),
  },
});

describe('a PDF that is read back', () => {
  it('stands where it is as the pieces are', async () => {
    expectOk(await proven(await written(wanted.plan.pages), wanted, SAID));
  });

  it('does not where anything of it is another', async () => {
    const { pages } = wanted.plan;
    expect(await faultOf(pages.slice(0, -1))).toBe('pages');
    expect(await faultOf(changed(pages, 'tile', (page) => ({ ...page, widthMm: page.widthMm + 1 })))).toBe('page-size');
    expect(await faultOf(changed(pages, 'scale', (page) => scaled(page, 0.999, 0.999, 'ruler')))).toBe('square');
    expect(await faultOf(changed(pages, 'tile', (page) => scaled(page, 1.001, 1.001, 'cut')))).toBe('outline');
    expect(await faultOf(changed(pages, 'tile', (page) => scaled(page, -1, 1, 'cut')))).toBe('outline');
    const twice = (page: Page): Page => ({
      ...page,
      drawing: {
        ...page.drawing,
        strokes: page.drawing.strokes.flatMap((stroke) => (stroke.role === 'cut' ? [stroke, stroke] : [stroke])),
      },
    });
    expect(await faultOf(changed(pages, 'tile', twice))).toBe('stray');
    const bare = (page: Page): Page => ({
      ...page,
      drawing: { ...page.drawing, strokes: page.drawing.strokes.filter(({ role }) => role !== 'cut') },
    });
    expect(await faultOf(changed(pages, 'tile', bare))).toMatch(/missing|outline/);
  });

  it('does not where a piece has no place, or more than one', async () => {
    const { plan, pieces } = wanted;
    const block = plan.blocks[0];
    const doubled = { ...plan, blocks: [...plan.blocks, { ...block, pageOfTile: block.pageOfTile.map(() => -1) }] };
    expect(await faultOf(plan.pages, { ...wanted, plan: doubled })).toBe('twice');
    const one = { ...pieces[0], piece: 'piece-of-no-paper' as (typeof pieces)[0]['piece'] };
    expect(await faultOf(plan.pages, { ...wanted, pieces: [...pieces, one] })).toBe('missing');
  });

  it('and what is no PDF is told too', async () => {
    const problem = expectProblem(
      await proven(new TextEncoder().encode('%PDF-1.7 and no more'), onlyPages(wanted.plan.pages), SAID),
      'paper/read-back',
    );
    expect(problem.text).toContain('cannot be read');
  });

  it('is looked through for what other parts cut into a piece, on the side that is traced', () => {
    const { project, paper } = outcome;
    const [piece] = outcome.pieces!;
    const other = piece.tracedSide === 'face' ? 'back' : 'face';
    const hole = {
      of: 'Handle',
      what: 'hole',
      closed: true,
      text: '',
      points: Float64Array.of(0, 0, 9, 0, 9, 9),
    } as const;
    const letIns = [
      { ...hole, side: piece.tracedSide },
      { ...hole, side: other },
      { ...hole, what: 'seat', side: piece.tracedSide },
    ] as const;
    const tipHoles = [{ corner: 0, diameterMm: 2, at: { x: 0, y: 0 } }];
    const [bare, cut, parted] = [
      {},
      { letIns, tipHoles },
      { letIns: [{ ...hole, what: 'joint' as const, side: piece.tracedSide, closed: false }] },
    ].map((more) => wantedPaper(project, paper!, [{ ...piece, ...more }], []).pieces[0]);
    expect(cut.rings).toHaveLength(bare.rings.length + 1);
    expect(cut.roundMm2).toEqual([expect.closeTo(Math.PI, 9)]);
    expect([bare, cut, parted].map(({ isParted }) => isParted)).toEqual([false, false, true]);
  });
});

describe('a PDF that is called off', () => {
  /** Called off at the pause of this number, counted from 1; tells how far the job said it was. */
  const calledOffAt = (number: number, told: number[] = []): Work => ({
    pause(done) {
      told.push(done);
      if (told.length === number) throw new Cancelled();
      return undefined;
    },
  });

  it('pauses within each page as it is written and read back, always farther on, and is the same file', async () => {
    const told: number[] = [];
    const options = { ...SAID, font: testFont() };
    const plain = expectOk(await provenPdf(wanted, options));
    expect(expectOk(await provenPdf(wanted, options, calledOffAt(-1, told)))).toEqual(plain);
    expect(told.length).toBeGreaterThan(4 * wanted.plan.pages.length);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    expect([told[0], told.at(-1)]).toEqual([0, 1]);
    // Neither as it is written nor as it is read is a call-off taken for a fault of the file.
    for (const number of [1, 3, told.length - 3, told.length])
      await expect(provenPdf(wanted, options, calledOffAt(number))).rejects.toBeInstanceOf(Cancelled);
  });
});
