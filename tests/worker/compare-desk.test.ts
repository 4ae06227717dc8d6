import { beforeAll, describe, expect, it } from 'vitest';
import { addSeamEdges, removeSeamEdges, setThickness } from '../../src/project/commands.ts';
import type { Comparison } from '../../src/model/comparison.ts';
import type { Project } from '../../src/project/project.ts';
import { expectOk } from '../support/expect-ok.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

const { workbench } = makeWorkbench();
let project: Project;

beforeAll(async () => {
  await openPartedTray(workbench);
  if (workbench.project === null) throw new Error('no project');
  ({ project } = workbench);
});

const made = (comparison: Comparison | null): Comparison => {
  if (comparison === null) throw new Error('called off');
  return comparison;
};
const quiet = (): void => undefined;

describe('comparing two states', () => {
  it('gives the figures the window shows, and names the pieces that differ', async () => {
    const [edge] = project.parts[0].seams.edges;
    const joined = removeSeamEdges([edge]).apply(project);
    const { one, other, pieces } = made(
      expectOk(await workbench.workshop.compare(structuredClone(project), structuredClone(joined), quiet)),
    );
    const { bench } = workbench;
    expect(one.pieces).toBe(bench.pieces?.pieces.length);
    expect(one.pages).toBe(bench.paper?.pages.length);
    expect(one.sheets).toBe(bench.sheets?.sheets.length);
    expect(one.gap?.value).toBeCloseTo(bench.dryFit?.worstGapMm ?? NaN, 9);
    const foam = bench.pieces?.pieces.reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0) ?? 0;
    expect(one.foams.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)).toBeCloseTo(foam, 6);
    expect(other.seams).toBeLessThan(one.seams);
    expect(one.seamMm - other.seamMm).toBeGreaterThan(0);
    expect(pieces[0].kind).not.toBe('same');
    expect(pieces.filter(({ kind }) => kind === 'gone')).toHaveLength(1);
    // Seen from the screen nothing has happened.
    expect(workbench.project).toBe(project);
    expect(workbench.isStale).toBe(false);
  });

  it('finds nothing to tell of two that are alike, and says how far edges moved of two that are not', async () => {
    const alike = made(expectOk(await workbench.workshop.compare(project, structuredClone(project), quiet)));
    expect(alike.one).toEqual(alike.other);
    expect(alike.pieces.every(({ kind }) => kind === 'same')).toBe(true);
    const thicker = setThickness(10).apply(project);
    const { one, other, pieces } = made(expectOk(await workbench.workshop.compare(project, thicker, quiet)));
    expect([one.foams[0].areaMm2 > other.foams[0].areaMm2, one.seams === other.seams]).toEqual([true, true]);
    expect(pieces.every(({ kind }) => kind === 'changed')).toBe(true);
    expect(Math.max(...pieces.map(({ movedMm }) => movedMm ?? 0))).toBeGreaterThan(0.5);
  });

  it('is called off by another, and a change of the job goes first', async () => {
    const thicker = setThickness(9).apply(project);
    const first = workbench.workshop.compare(project, thicker, quiet);
    const second = workbench.workshop.compare(project, project, quiet);
    expect(expectOk(await first)).toBeNull();
    made(expectOk(await second));
    const third = workbench.workshop.compare(project, setThickness(8).apply(project), quiet);
    workbench.run(addSeamEdges([[1, 3]]));
    await workbench.workshop.stopComparing();
    expect(expectOk(await third)).toBeNull();
    await shown(workbench);
  });

  it('says which file is missing', async () => {
    const [part] = project.parts;
    const lost = { ...project, parts: [{ ...part, source: { ...part.source, hash: 'b'.repeat(64) } }] };
    const reply = await workbench.workshop.compare(project, lost, quiet);
    expect(!reply.ok && reply.problem.text).toContain(part.source.fileName);
  });
});
