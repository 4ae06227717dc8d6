import { describe, expect, it } from 'vitest';
import type { Finding, Severity } from '../../../src/base/finding.ts';
import { pieceId } from '../../../src/base/ids.ts';
import { EMPTY_BENCH, type Bench } from '../../../src/app/bench-state.ts';
import { nextStep, type JobFacts } from '../../../src/app/verdict/next-step.ts';
import { findingKey } from '../../../src/app/verdict/told-findings.ts';
import { verdictOf } from '../../../src/app/verdict/verdict.ts';
import type { StepName } from '../../../src/model/bench-view.ts';
import type { PieceDone, Project } from '../../../src/project/project.ts';

const finding = (code: string, severity: Severity): Finding => ({ code, severity, text: `${code} is so.`, where: {} });

/** Only what is asked of a document here. */
const project = (done: readonly PieceDone[] = []): Project =>
  ({ parts: [{ id: 'part-1' }], done, paper: {} }) as unknown as Project;

/** A sculpt with so many seam edges. */
const marked = (edges: number): Project =>
  ({
    parts: [{ id: 'part-1', seams: { edges: Array.from({ length: edges }, (_, i) => [i, i + 1]), paths: [] } }],
  }) as unknown as Project;

const PIECES = ['a', 'b'].map((id) => ({ id: pieceId(id), revision: 'R1' }));

/** A bench as far as it came: `isMade` with two pieces and their pages. */
function bench(isMade: boolean, patch: Partial<Bench> = {}): Bench {
  return {
    ...EMPTY_BENCH,
    sculpt: { sized: true } as unknown as Bench['sculpt'],
    ...(isMade
      ? {
          pieces: { pieces: PIECES, patches: [] } as unknown as Bench['pieces'],
          paper: { pages: [{}] } as unknown as Bench['paper'],
        }
      : {}),
    ...patch,
  };
}

const stoppedAt = (step: StepName, code: string): Partial<Bench> => ({
  stopped: { step, problem: { code, text: 'Why.', where: {} } },
});

const next = (facts: Partial<JobFacts>) =>
  nextStep({ project: project(), bench: bench(true), seen: [], isPaperOut: false, isWorking: false, ...facts });

const ticked = (work: Partial<PieceDone>, ids = ['a', 'b']): Project =>
  project(ids.map((piece) => ({ piece, ...work })));

describe('what is best done next', () => {
  it.each<[string, Partial<JobFacts>, string, string | null, number]>([
    ['no job', { project: null, bench: EMPTY_BENCH }, 'open', 'open', 0],
    ['a job without parts', { project: { parts: [] } as unknown as Project, bench: EMPTY_BENCH }, 'open', 'open', 0],
    ['a file being read', { bench: EMPTY_BENCH, isWorking: true }, 'wait', null, 0],
    [
      'a file that cannot be read',
      { bench: { ...EMPTY_BENCH, ...stoppedAt('read', 'read/empty') } },
      'read',
      'go-size',
      0,
    ],
    [
      'a sculpt without a size',
      { bench: bench(false, { sculpt: { sized: false } as unknown as Bench['sculpt'] }) },
      'size',
      'go-size',
      0,
    ],
    ['a closed sculpt', { bench: bench(false, { findings: [finding('cut/closed', 'error')] }) }, 'part', 'go-seams', 0],
    ['nothing that can lie flat', { bench: bench(false, stoppedAt('cut', 'cut/nothing-flat')) }, 'part', 'go-seams', 0],
    [
      'proposals for a closed sculpt without seams',
      { project: marked(0), bench: bench(false, { findings: [finding('cut/closed', 'error')] }), offered: 1 },
      'take',
      'go-proposals',
      0,
    ],
    ['proposals for a sculpt that has seams', { project: marked(1), offered: 3 }, 'print', 'save-pdf', 0],
    ['foam too thick for it', { bench: bench(false, stoppedAt('shell', 'shell/no-room')) }, 'foam', 'go-foam', 0],
    [
      'a piece larger than a sheet',
      { bench: bench(true, { findings: [finding('nest/too-large', 'warning')] }) },
      'sheets',
      'go-sheets',
      0,
    ],
    ['pieces on their way', { bench: bench(false), isWorking: true }, 'wait', null, 0],
    [
      'findings that were not shown',
      {
        bench: bench(true, {
          findings: [finding('foam/a', 'warning'), finding('foam/b', 'error'), finding('foam/c', 'note')],
        }),
      },
      'see',
      'see-findings',
      2,
    ],
    ['pages to print', {}, 'print', 'save-pdf', 0],
    ['pages that were saved', { isPaperOut: true }, 'tick', 'go-paper', 2],
    ['pages of which some are printed', { project: ticked({ printed: 'R1' }, ['a']) }, 'changed', 'save-changed', 1],
    [
      'stale paper',
      {
        project: project([
          { piece: 'a', printed: 'R0' },
          { piece: 'b', printed: 'R1' },
        ]),
      },
      'changed',
      'save-changed',
      1,
    ],
    ['printed pages', { project: ticked({ printed: 'R1' }) }, 'cut', 'go-cuts', 2],
    [
      'foam that is glued',
      {
        project: ticked({ printed: 'R1', cut: 'R1' }),
        shop: { gluing: { steps: [] }, parts: [], finish: { groups: [] } } as never,
      },
      'done',
      null,
      0,
    ],
    [
      'foam that is glued and a part with steps of its own',
      {
        project: ticked({ printed: 'R1', cut: 'R1' }),
        shop: {
          gluing: { steps: [] },
          parts: [{ part: 'p', steps: [{ work: 'sand', pieces: [], cautions: [] }] }],
          finish: { groups: [] },
        } as never,
      },
      'finish',
      'at-bench',
      1,
    ],
    ['foam that is cut', { project: ticked({ printed: 'R1', cut: 'R1' }) }, 'glue', 'go-gluing', 0],
  ])('with %s', (_, facts, kind, verb, count) => expect(next(facts)).toEqual({ kind, verb, count }));

  it('is no finding that was shown, but one that has come since', () => {
    const shown = finding('foam/a', 'warning');
    const seen = [findingKey(shown)];
    expect(next({ bench: bench(true, { findings: [shown] }), seen }).kind).toBe('print');
    const fresh = finding('foam/b', 'warning');
    expect(next({ bench: bench(true, { findings: [shown, fresh] }), seen })).toMatchObject({ kind: 'see', count: 1 });
  });
});

describe('whether it will work', () => {
  const answer = (patch: Partial<Bench>, isMade = true): string => verdictOf(bench(isMade, patch)).answer;

  it('goes by the worst that was found', () => {
    expect(answer({})).toBe('works');
    expect(answer({ findings: [finding('foam/a', 'note')] })).toBe('works');
    expect(answer({ findings: [finding('foam/a', 'note'), finding('foam/b', 'warning')] })).toBe('worksIf');
    expect(answer({ findings: [finding('foam/a', 'warning'), finding('foam/b', 'error')] })).toBe('worksNot');
    expect(answer({}, false)).toBe('waits');
    expect(answer(stoppedAt('shell', 'shell/no-room'), false)).toBe('worksNot');
  });

  it('tells what stopped it once, first, and not that the size is asked for', () => {
    const { told } = verdictOf(bench(false, { ...stoppedAt('cut', 'cut/x'), findings: [finding('cut/y', 'error')] }));
    expect(told.error.map(({ code }) => code)).toEqual(['cut/x', 'cut/y']);
    const again = { ...stoppedAt('cut', 'cut/x'), findings: [finding('cut/x', 'error')] };
    expect(verdictOf(bench(false, again)).told.error).toHaveLength(1);
    expect(answer(stoppedAt('size', 'size/unknown'), false)).toBe('waits');
  });
});
