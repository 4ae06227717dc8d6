import { beforeAll, describe, expect, it } from 'vitest';
import type { Workbench } from '../../src/app/workbench.ts';
import { addSeamEdges, setScale } from '../../src/project/commands.ts';
import { holdSeams } from '../../src/project/hold-commands.ts';
import { drawPaths } from '../../src/project/path-commands.ts';
import type { ProposalAnswer, ProposalAsk } from '../../src/worker/proposing-api.ts';
import { expectOk } from '../support/expect-ok.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';

const { sides, rings } = SHADE;
const ring = (at: number): [number, number][] =>
  Array.from({ length: sides }, (_, i) => [at * sides + i, at * sides + ((i + 1) % sides)]);
const upright = (side: number): [number, number][] =>
  Array.from({ length: rings }, (_, i) => [i * sides + side, (i + 1) * sides + side]);
const key = (pair: readonly [number, number]): string => [...pair].sort((a, b) => a - b).join('-');

describe('proposals from the worker', () => {
  let workbench: Workbench;
  beforeAll(async () => {
    ({ workbench } = makeWorkbench());
    await openObj(workbench, 'lamp shade', shadeObj());
  });

  const answersTo = async (ask: ProposalAsk): Promise<ProposalAnswer[]> => {
    const last = new Map<string, ProposalAnswer>();
    // Stopped at once, each kind still gives its first answer.
    const asked = workbench.workshop.propose(ask, (answer) => {
      last.set(answer.kind, answer);
      void workbench.workshop.stopProposing();
    });
    expect((await asked).ok).toBe(true);
    return [...last.values()];
  };

  const easing = async (patch: number, limitPct: number) => {
    const last = new Map<string, ProposalAnswer>();
    const why = expectOk(await workbench.workshop.ease({ patch, limitPct }, (answer) => last.set(answer.kind, answer)));
    return { answers: [...last.values()], why };
  };

  it('wait for the size', async () => {
    const result = await workbench.workshop.propose({ from: 'anew', limitPct: 8 }, () => undefined);
    expect(!result.ok && result.problem.code).toBe('propose/no-size');
    workbench.run(setScale({ by: 'unit', unit: 'mm' }));
    await shown(workbench);
  });

  it('are three, each with all it needs', async () => {
    const answers = await answersTo({ from: 'anew', limitPct: 8 });
    expect(answers.map(({ kind }) => kind).sort()).toEqual(['between', 'few', 'simple']);
    for (const { needs, isFeasible, pieces, pairs, edges } of answers) {
      expect(isFeasible).toBe(true);
      expect([pieces, pairs.length]).toEqual([1, edges.length]);
      // Eight sides of 2 r sin(22.5 degrees), 120 mm high, less the neutral surface inside: within a tenth.
      expect((needs?.foamMm2 ?? 0) / (8 * 2 * 60 * Math.sin(Math.PI / 8) * 120)).toBeGreaterThan(0.9);
      expect(needs?.sheets).toBe(1);
    }
  });

  it('keep what is held when they begin anew, and all that is marked when the rest is sought', async () => {
    workbench.run(addSeamEdges([...ring(2), ...ring(4)]));
    workbench.run(holdSeams(ring(2)));
    await shown(workbench);
    const keys = (pairs: ProposalAnswer['pairs']): Set<string> => new Set(pairs.map(key));
    for (const { pairs } of await answersTo({ from: 'anew', limitPct: 8 })) {
      expect(ring(2).every((pair) => keys(pairs).has(key(pair)))).toBe(true);
      expect(ring(4).some((pair) => keys(pairs).has(key(pair)))).toBe(false);
    }
    for (const { pairs } of await answersTo({ from: 'rest', limitPct: 8 }))
      expect([...ring(2), ...ring(4)].every((pair) => keys(pairs).has(key(pair)))).toBe(true);
  });

  it('ease one piece alone: seams come into it and nowhere else', async () => {
    workbench.undo();
    workbench.undo();
    // Two halves; each is bent round four sides, 74 mm wide at most on a sheet that is too small otherwise.
    workbench.run(addSeamEdges([...ring(3)]));
    await shown(workbench);
    const { pieces } = workbench.bench;
    const lower = pieces?.patchOfTriangle[0] ?? -1;
    const { answers, why } = await easing(lower, 8);
    expect(why[0].text).toMatch(/larger than the sheet|must/);
    expect(answers.map(({ kind }) => kind)).toEqual(['first', 'second', 'third'].slice(0, answers.length));
    expect(answers[0].isFeasible).toBe(true);
    expect(answers[0].mends?.length).toBeGreaterThan(0);
    for (const { pairs, edges, needs, pieces: parts, darts } of answers) {
      const added = pairs.filter((pair) => !ring(3).some((kept) => key(kept) === key(pair)));
      expect(added.length).toBeGreaterThan(0);
      expect(edges).toHaveLength(added.length);
      expect(parts + darts).toBeGreaterThan(0);
      // Corners of the lower half: the first four rings.
      expect(added.every((pair) => pair.every((v) => v <= 4 * sides - 1))).toBe(true);
      expect(needs?.sheets).toBeGreaterThan(0);
    }
  });

  it('ease nothing that keeps its limits', async () => {
    workbench.run(addSeamEdges(upright(0)));
    await shown(workbench);
    expect(await easing(0, 8)).toEqual({ answers: [], why: [] });
    workbench.undo();
    await shown(workbench);
  });

  it('keep what is drawn across faces, and end on it', async () => {
    const across = { points: [{ vertex: 0 }, { vertex: 2 * sides + 3 }], kind: 'butt' as const };
    workbench.run(drawPaths([across]));
    await shown(workbench);
    for (const { paths, pairs } of await answersTo({ from: 'rest', limitPct: 8 })) {
      expect(paths[0]).toEqual(across);
      expect(pairs.length).toBeGreaterThan(0);
    }
    const { answers } = await easing(workbench.bench.pieces?.patchOfTriangle[0] ?? -1, 8);
    for (const { paths } of answers) expect(paths[0]).toEqual(across);
    for (const { paths } of await answersTo({ from: 'anew', limitPct: 8 })) expect(paths).toEqual([]);
  });
});
