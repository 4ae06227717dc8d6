import { describe, expect, it } from 'vitest';
import type { SeamPath } from '../../src/model/seams.ts';
import { addSeamEdges, removeSeamEdges, setEdgeWish, type Command } from '../../src/project/commands.ts';
import { holdSeams, letSeamsGo } from '../../src/project/hold-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { drawPaths, lockPaths, removePaths, replacePath } from '../../src/project/path-commands.ts';
import { namedPath, pathName } from '../../src/project/path-names.ts';
import type { Project } from '../../src/project/project.ts';
import { scoreSeam } from '../../src/project/score-commands.ts';
import { setSeamJoin } from '../../src/project/seam-commands.ts';

const path = (from: number, to: number): SeamPath => ({ points: [{ vertex: from }, { vertex: to }], kind: 'butt' });
const [ONE, TWO] = [path(0, 3), path(4, 7)];
const FRESH = newProject('x', { hash: '0'.repeat(64), fileName: 'x.obj', format: 'obj' });
const after = (...commands: Command[]): Project => commands.reduce((project, command) => command.apply(project), FRESH);
const pathsOf = (project: Project) => project.parts[0].seams.paths;
const DRAWN = after(drawPaths([ONE, TWO]), addSeamEdges([[0, 1]]));

describe('paths', () => {
  it('are drawn, several as one stroke, and taken away', () => {
    expect(pathsOf(DRAWN)).toEqual([ONE, TWO]);
    expect(pathsOf(removePaths([0]).apply(DRAWN))).toEqual([TWO]);
    expect(pathsOf(removePaths([0]).apply(DRAWN))[0]).toBe(TWO);
  });

  it('of one point draw nothing', () => {
    const dot: SeamPath = { points: [{ vertex: 1 }], kind: 'butt' };
    expect(drawPaths([dot]).apply(DRAWN)).toBe(DRAWN);
    expect(replacePath(0, dot.points).apply(DRAWN)).toBe(DRAWN);
  });

  it('are straightened, and keep what is said of them', () => {
    const lap = setSeamJoin([pathName(1)], { kind: 'lap', allowanceMm: 10, lapSide: 'left' }).apply(DRAWN);
    const points = [{ vertex: 4 }, { vertex: 5 }, { vertex: 7 }];
    expect(pathsOf(replacePath(1, points).apply(lap))).toEqual([
      ONE,
      { points, kind: 'lap', allowanceMm: 10, lapSide: 'left' },
    ]);
  });

  it('are held and let go', () => {
    const held = lockPaths([0], true).apply(DRAWN);
    expect(pathsOf(held)).toEqual([{ ...ONE, locked: true }, TWO]);
    expect(lockPaths([0], true).apply(held)).toBe(held);
    expect(pathsOf(lockPaths([0], false).apply(held))).toEqual([ONE, TWO]);
  });

  it('that are not there change nothing', () => {
    for (const command of [removePaths([7]), replacePath(7, ONE.points), lockPaths([7], true)])
      expect(command.apply(DRAWN)).toBe(DRAWN);
  });
});

describe('where edges are named a path may be named', () => {
  it('by a pair that is no edge', () => {
    expect([0, 1, 9].map((n) => namedPath(pathName(n)))).toEqual([0, 1, 9]);
    expect(namedPath([0, 0])).toBeNull();
    expect(namedPath([3, 4])).toBeNull();
  });

  it('to join it again, beside edges', () => {
    const joined = removeSeamEdges([pathName(1), [0, 1]]).apply(DRAWN);
    expect(joined.parts[0].seams).toEqual({ edges: [], paths: [ONE] });
  });

  it('to say how it is joined, and to take that back', () => {
    const join = { kind: 'lap', allowanceMm: 8, lapFace: 3, lapUnder: true, lapSide: 'right' } as const;
    const lap = setSeamJoin([pathName(0), [0, 1]], join).apply(DRAWN);
    expect(pathsOf(lap)[0]).toEqual({ ...ONE, kind: 'lap', allowanceMm: 8, lapUnder: true, lapSide: 'right' });
    expect(lap.parts[0].seamSettings).toEqual([
      { edge: [0, 1], kind: 'lap', allowanceMm: 8, lapFace: 3, lapUnder: true },
    ]);
    const plain = setSeamJoin([pathName(0), [0, 1]], { kind: 'butt', allowanceMm: 0 }).apply(lap);
    expect(pathsOf(plain)).toEqual([ONE, TWO]);
    expect(setSeamJoin([pathName(0)], { kind: 'butt', allowanceMm: 0 }).apply(plain)).toBe(plain);
  });

  it('to say what is wished of its edges', () => {
    const wished = setEdgeWish([pathName(0)], { straight: true, holdLength: false }).apply(DRAWN);
    expect(pathsOf(wished)[0]).toEqual({ ...ONE, straight: true });
    expect(wished.parts[0].edgeWishes).toEqual([]);
    expect(pathsOf(setEdgeWish([pathName(0)], { straight: false }).apply(wished))).toEqual([ONE, TWO]);
    expect(setEdgeWish([pathName(0)], { straight: true }).apply(wished)).toBe(wished);
  });

  it('to hold it', () => {
    const held = holdSeams([pathName(1), [0, 1]]).apply(DRAWN);
    expect(pathsOf(held)[1].locked).toBe(true);
    expect(held.parts[0].heldSeams).toEqual([[0, 1]]);
    const free = letSeamsGo([pathName(1), [0, 1]]).apply(held);
    expect(free.parts[0].seams.paths).toEqual([ONE, TWO]);
    expect(free.parts[0].heldSeams).toBeUndefined();
  });

  it('but not to part, and not to score', () => {
    expect(addSeamEdges([pathName(0)]).apply(DRAWN)).toBe(DRAWN);
    expect(scoreSeam([pathName(0)], { depthMm: 2, openMm: 1 }).apply(DRAWN)).toBe(DRAWN);
  });
});
