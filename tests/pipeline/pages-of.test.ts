import { describe, expect, it } from 'vitest';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { changedPages, type Drawn } from '../../src/pipeline/pages-of.ts';
import { tickCut, tickPrinted } from '../../src/project/done-commands.ts';
import { setThickness } from '../../src/project/commands.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';
import { sampleProject } from '../support/run-sample.ts';

const drawnOf = ({ pieces, seams, strips, templates, turned }: Outcome): Drawn => {
  if (pieces === null || seams === null || templates === null) throw new Error('not made');
  return { pieces, seams, beside: strips, templates, turned };
};

describe('pages of what changed', async () => {
  const { project, pipeline } = await sampleProject('bracer');
  const run = (document: typeof project) => pipeline.run(document, QUIET_WORK, { date: '2026-01-01' });
  const first = await run(project);
  const drawn = drawnOf(first);
  const printed = tickPrinted(drawn.pieces).apply(project);

  it('are all of them before anything was printed', () => {
    const { pages } = expectOk(changedPages(project, drawn, undefined));
    expect(pages).toHaveLength(first.paper?.pages.length ?? 0);
  });

  it('are none when all paper is up to date', () => {
    expectProblem(changedPages(printed, drawn, undefined), 'paper/up-to-date');
  });

  it('are those of other pieces than the cut one after a change, and the run says so', async () => {
    const cut = tickCut(drawn.pieces[0]).apply(printed);
    const thicker = await run(setThickness(8).apply(cut));
    const set = expectOk(changedPages(thicker.project, drawnOf(thicker), '2026-01-01'));
    const shown = new Set(set.pages.flatMap(({ pieces }) => pieces));
    expect(shown).toEqual(new Set(drawn.pieces.slice(1).map(({ id }) => id)));
    const codes = thicker.findings.map(({ code }) => code);
    expect(codes).toContain('done/changed');
    expect(codes).toContain('done/stale');
    expect(first.findings.map(({ code }) => code)).not.toContain('done/stale');
  });
});
