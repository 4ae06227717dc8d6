import { describe, expect, it } from 'vitest';
import { edgeLabels } from '../../../src/app/at-bench/edge-labels.ts';
import { plainBevels } from '../../../src/app/at-bench/plain-bevels.ts';
import { copiesOf, copyState, turnCopy } from '../../../src/app/at-bench/work-copies.ts';
import { cautionsAt } from '../../../src/app/at-bench/work-cautions.ts';
import type { WorkLine } from '../../../src/app/at-bench/work-order.ts';
import { goneSteps, lineState, nextOpen, releaseLine, tickLine } from '../../../src/app/at-bench/work-ticks.ts';
import { pieceId } from '../../../src/base/ids.ts';
import type { FoamPiece, PieceEdge } from '../../../src/model/foam-piece.ts';
import type { Project } from '../../../src/project/project.ts';

const bare = {} as Project;
const [one, two] = ['p1', 'p2'].map((id) => ({ id: pieceId(id), revision: `of ${id}` }));
const line = (key: string, tick: WorkLine['tick'], hurts: readonly string[] = []): WorkLine => ({
  key,
  phase: 'cut',
  what: 'fit',
  tick,
  cautions: [],
  hurts,
});
const lines = [
  line('print', { of: 'printed', pieces: [one, two] }),
  line('cut/p1', { of: 'cut', piece: one }, ['cut']),
  line('bevel/p1', { of: 'bevelled', piece: one }, ['cut', 'sand']),
  line('glue/s1', { of: 'step', step: { id: 'glue/s1', as: 'of p1.of p2' } }, ['cut']),
];

describe('lines of the work', () => {
  it('are ticked and released each in its way, and lead on to what is open', () => {
    let project = bare;
    for (const [i, each] of lines.entries()) {
      expect(nextOpen(project, lines)).toBe(i);
      project = tickLine(each).apply(project);
      expect(lineState(project, each)).toBe('done');
    }
    expect(nextOpen(project, lines, 1)).toBe(lines.length);
    project = releaseLine(lines[1]).apply(project);
    // From behind it, the way leads back to what was left out.
    expect(nextOpen(project, lines, 2)).toBe(1);
    const left = lines.reduce((now, each) => releaseLine(each).apply(now), project);
    expect(left).toEqual(bare);
  });

  it('that were ticked are told once they are of something else, or are no more', () => {
    const project = lines.reduce((now, each) => tickLine(each).apply(now), bare);
    const changed = line('cut/p1', { of: 'cut', piece: { ...one, revision: 'other' } });
    expect(lineState(project, changed)).toBe('changed');
    const paper = line('print', { of: 'printed', pieces: [one, { ...two, revision: 'other' }] });
    expect(lineState(project, paper)).toBe('changed');
    // A piece that is to be cut anew needs its paper anew.
    expect(lineState(project, line('print', { of: 'printed', pieces: [{ ...one, revision: 'other' }, two] }))).toBe(
      'changed',
    );
    expect(goneSteps(project, lines)).toEqual([]);
    expect(goneSteps(project, lines.slice(0, 3))).toEqual(['glue/s1']);
    const atShop = { ...project, doneSteps: [...(project.doneSteps ?? []), { id: 'buy/glue', as: '40' }] };
    expect(goneSteps(atShop, lines)).toEqual([]);
  });

  it('have their cautions told in full once, and where somebody comes in', () => {
    expect(cautionsAt(lines, 1, 0)).toEqual({ told: ['knife', 'machines'], named: [] });
    expect(cautionsAt(lines, 2, 0)).toEqual({ told: ['dust'], named: ['knife', 'machines'] });
    expect(cautionsAt(lines, 3, 3)).toEqual({ told: ['knife', 'machines'], named: [] });
    expect(cautionsAt(lines, 0, 3)).toEqual({ told: [], named: [] });
  });
});

describe('letters of seams', () => {
  const edge = (letter: string, ring: number, from: number, to: number): PieceEdge =>
    ({ letter, ring, from, to }) as PieceEdge;
  const piece = {
    neutralOutline: Float64Array.of(0, 0, 40, 0, 40, 20, 0, 20),
    // Clockwise, as holes run: foam is on the left of its way too.
    neutralHoles: [Float64Array.of(10, 5, 10, 15, 30, 15, 30, 5)],
    edges: [edge('A', 0, 0, 1), edge('B', 0, 1, 2), edge('D', 0, 2, 0), edge('', 1, 0, 1), edge('C', 1, 1, 2)],
  } as unknown as FoamPiece;

  it('stand inside the middle of their edges, on foam beside a hole too; open edges have none', () => {
    const at = (reversed: boolean) => edgeLabels(piece, 2, reversed).map(({ letter, x, y }) => [letter, x, y]);
    // D runs 40 across and 20 down: its middle is on its first part.
    expect(at(false)).toEqual([
      ['A', 20, 2],
      ['B', 38, 10],
      ['D', 10, 18],
      ['C', 20, 17],
    ]);
    expect(at(true)[0]).toEqual(['A', -20, 2]);
  });
});

describe('copies of a piece', () => {
  const cut = { ...lines[1], what: 'cut', piece: { ...one, quantity: 3 } } as unknown as WorkLine;

  it('are ticked one by one, and the line with the last of them', () => {
    const copies = copiesOf(cut);
    expect(copies.map(({ id }) => id)).toEqual(['cut/p1/1', 'cut/p1/2', 'cut/p1/3']);
    const states = (project: Project) => copies.map((copy) => copyState(project, cut, copy));
    const turn = (project: Project, i: number): Project => turnCopy(project, cut, copies[i]).apply(project);
    const two = turn(turn(bare, 0), 2);
    expect([states(two), lineState(two, cut)]).toEqual([['done', 'open', 'done'], 'open']);
    expect(goneSteps(two, [cut])).toEqual([]);
    const all = turn(two, 1);
    expect([states(all), lineState(all, cut), all.doneSteps]).toEqual([['done', 'done', 'done'], 'done', undefined]);
    const less = turn(all, 0);
    expect([states(less), lineState(less, cut)]).toEqual([['open', 'done', 'done'], 'open']);
    expect(turn(turn(less, 1), 2)).toEqual(bare);
  });

  it('are none where there is but one', () => expect(copiesOf(lines[1])).toEqual([]));
});

it('bevels of a piece of another part are told by the edges they are cut on', () => {
  const edge = (lengthMm: number, ...[from, middle, to]: number[]) => ({ lengthMm, bevelDeg: { from, middle, to } });
  const draft = {
    outline: [edge(120, 45, 45, 45), edge(80, 0, 0, 0), edge(60, 45, 45, 45), edge(90, 10, 15, 20)],
    holes: [],
  };
  expect(plainBevels({ draft, tracedSide: 'back' } as never)).toEqual([
    { setting: '45° out under', lengthsMm: [120, 60] },
    { setting: '10° to 20° out under', lengthsMm: [90] },
  ]);
});
