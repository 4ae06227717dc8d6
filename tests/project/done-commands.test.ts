import { describe, expect, it } from 'vitest';
import { pieceId } from '../../src/base/ids.ts';
import { standingFindings } from '../../src/pipeline/standing-findings.ts';
import {
  forgetGone,
  releaseCut,
  releasePrinted,
  releaseSteps,
  releaseWork,
  tickCut,
  tickPrinted,
  tickStep,
  tickWork,
} from '../../src/project/done-commands.ts';
import { piecesToPrint, pieceTick, standingOf, stepTick } from '../../src/project/piece-standing.ts';
import type { Project } from '../../src/project/project.ts';

const piece = (id: string, revision: string) => ({
  id: pieceId(id),
  revision,
  number: Number(id.slice(1)),
  name: 'cheek',
});
const bare = {} as Project;
const [one, two, three] = [piece('p1', 'AAAA'), piece('p2', 'BBBB'), piece('p3', 'CCCC')];
const ticked = tickCut(two).apply(tickPrinted([one, two, three]).apply(bare));

describe('what is ticked off', () => {
  it('stands as long as the piece is what it was', () => {
    expect(standingOf(ticked.done, [one, two, three])).toEqual([
      { paper: 'printed', foam: 'none' },
      { paper: 'printed', foam: 'cut' },
      { paper: 'printed', foam: 'none' },
    ]);
    expect(standingFindings(ticked.done, [one, two, three])).toEqual([]);
    expect(standingFindings(undefined, [one])).toEqual([]);
  });

  it('is told once a piece changes: foam one by one, paper in one sentence', () => {
    const now = [piece('p1', 'AAAB'), piece('p2', 'BBBC'), piece('p3', 'CCCD'), piece('p4', 'DDDD')];
    expect(standingOf(ticked.done, now).map(({ paper, foam }) => `${paper} ${foam}`)).toEqual([
      'stale none',
      'stale changed',
      'stale none',
      'none none',
    ]);
    const findings = standingFindings(ticked.done, now);
    expect(findings.map(({ code }) => code)).toEqual(['done/changed', 'done/stale']);
    expect(findings[0].where).toEqual({ piece: 'p2' });
    expect(findings[1].text).toContain('1 cheek, 3 cheek:');
    expect(piecesToPrint(ticked.done, now).map(({ id }) => id)).toEqual(['p1', 'p3', 'p4']);
  });

  it('is told when a cut piece is no more, and can be forgotten', () => {
    expect(standingFindings(ticked.done, [one]).map(({ text }) => text)).toEqual([
      expect.stringMatching(/^A piece that is ticked as cut is no more/),
    ]);
    const left = forgetGone([one]).apply(ticked);
    expect(left.done?.map((entry) => entry.piece)).toEqual(['p1']);
    expect(forgetGone([one]).apply(left)).toBe(left);
    expect('done' in forgetGone([]).apply(left)).toBe(false);
  });

  it('is released, and ticked again', () => {
    const released = releaseCut(two.id).apply(ticked);
    expect(standingOf(released.done, [two])[0].foam).toBe('none');
    expect(releaseCut(two.id).apply(released)).toBe(released);
    expect(tickPrinted([one]).apply(ticked)).toBe(ticked);
    expect('done' in releaseCut(two.id).apply(tickCut(two).apply(bare))).toBe(false);
  });
});

describe('what else is done with a piece, and steps of no piece', () => {
  const work = { id: 'glue/s1', as: 'AAAA.BBBB' };

  it('is ticked and released each by itself, and told once it is of something else', () => {
    const bent = tickWork('formed', two).apply(tickWork('bevelled', two).apply(ticked));
    expect(pieceTick(bent.done, two, 'bevelled')).toBe('done');
    expect(pieceTick(bent.done, { ...two, revision: 'BBBC' }, 'formed')).toBe('changed');
    expect(pieceTick(bent.done, one, 'formed')).toBe('open');
    const square = releaseWork('bevelled', two.id).apply(bent);
    expect([pieceTick(square.done, two, 'bevelled'), pieceTick(square.done, two, 'cut')]).toEqual(['open', 'done']);
    expect('done' in releaseWork('formed', two.id).apply(tickWork('formed', two).apply(bare))).toBe(false);
    expect(pieceTick(releasePrinted([two]).apply(ticked).done, two, 'printed')).toBe('open');
  });

  it('holds for steps too, each ticked once', () => {
    const glued = tickStep(work).apply(bare);
    expect(stepTick(glued.doneSteps, work)).toBe('done');
    expect(stepTick(glued.doneSteps, { ...work, as: 'AAAA.BBBC' })).toBe('changed');
    expect(tickStep(work).apply(glued)).toBe(glued);
    expect(tickStep({ ...work, as: 'C' }).apply(glued).doneSteps).toEqual([{ ...work, as: 'C' }]);
    expect(releaseSteps(['glue/s2']).apply(glued)).toBe(glued);
    expect('doneSteps' in releaseSteps([work.id]).apply(glued)).toBe(false);
  });
});
