import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import type { SeamCost } from '../../src/model/seam-cost.ts';
import type { SeamMarks } from '../../src/model/seams.ts';
import { foamGround } from '../../src/pipeline/foam-ground.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { seamCosts } from '../../src/pipeline/seam-costs.ts';
import { setScale, setSeams, setThickness } from '../../src/project/commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';
import { heldEdges } from '../../src/steps/seams/held-seams.ts';
import { seamSetFromMarks } from '../../src/steps/seams/seam-set.ts';
import { expectOk } from '../support/expect-ok.ts';

type Pairs = SeamMarks['edges'];

/** A box 10 mm wide: corners x + 2 y + 4 z. */
const BOX = `${Array.from({ length: 8 }, (_, i) => `v ${10 * (i & 1)} ${5 * (i & 2)} ${2.5 * (i & 4)}`).join('\n')}
f 1 3 4 2\nf 5 6 8 7\nf 1 2 6 5\nf 3 7 8 4\nf 1 5 7 3\nf 2 4 8 6\n`;

async function job(fileName: string, bytes: Uint8Array, thicknessMm: number) {
  const hash = await contentHash(bytes);
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName, bytes });
  const project = setThickness(thicknessMm).apply(
    setScale({ by: 'unit', unit: 'mm' }).apply(newProject(fileName, { hash, fileName, format: 'obj' })),
  );
  const run = (edges: Pairs): Promise<Outcome> =>
    pipeline.run(setSeams({ edges, paths: [] }).apply(project), QUIET_WORK);
  return { project, run };
}

async function costsOf(project: Project, { cut, part }: Outcome, held: Pairs = []): Promise<SeamCost[]> {
  if (cut === null) throw new Error('not parted');
  const choice = part!.layers[0];
  const foam = project.foams.find(({ id }) => id === choice.foam);
  if (foam === undefined) throw new Error('no foam');
  const ground = foamGround(cut.mesh, cut.shell, { part: part!, choice, foam }, 8);
  const costs: SeamCost[] = [];
  const seams = expectOk(seamSetFromMarks(cut.mesh, part!.seams, true));
  await seamCosts(cut, { ...ground, held: heldEdges(cut.mesh, seams, held) }, QUIET_WORK, (cost) => costs.push(cost));
  return costs;
}

describe('what it costs to join a seam', () => {
  // A lid apart from five sides that hang together on four folds of the bottom.
  const lid = [[4, 5], [5, 7], [7, 6], [6, 4]] as const; // prettier-ignore
  const upright = [[0, 4], [1, 5], [2, 6], [3, 7]] as const; // prettier-ignore

  it('is nothing at a fold between a lid and a side, and what closes a corner cannot be', async () => {
    const { project, run } = await job('box.obj', new TextEncoder().encode(BOX), 0.5);
    const costs = await costsOf(project, await run([...lid, ...upright]));
    expect(costs).toHaveLength(8);
    const joining = costs.filter(({ patches: [a, b] }) => a !== b);
    expect(joining).toHaveLength(4);
    for (const { lengthMm, stretchPct, squashPct } of joining) {
      expect(lengthMm).toBeGreaterThan(9);
      expect(Math.max(stretchPct ?? 1, squashPct ?? 1)).toBeLessThan(1e-3);
    }
    // Closing an upright corner leaves two corners of the box inside the foam.
    for (const { isFeasible, badness } of costs.filter(({ patches: [a, b] }) => a === b))
      expect([isFeasible, badness > 0.5]).toEqual([false, true]);
  });

  it('is not asked of seams that are held', async () => {
    const { project, run } = await job('box.obj', new TextEncoder().encode(BOX), 0.5);
    const outcome = await run([...lid, ...upright]);
    const held = await costsOf(project, outcome, [...lid, [0, 4]]);
    expect(held).toHaveLength(3);
    expect(held.every(({ patches: [a, b] }) => a === b)).toBe(true);
  });

  it('is that of the piece as it is made, on its hinges', async () => {
    const at = (name: string): URL => new URL(`../../samples/${name}`, import.meta.url);
    const { project, run } = await job('bracer.obj', readFileSync(at('bracer.obj')), 10);
    const marks = (JSON.parse(readFileSync(at('bracer.seams.json'), 'utf8')) as { edges: Pairs }).edges;
    const outcome = await run(marks);
    const { fileVertex } = outcome.cut?.mesh ?? { fileVertex: [] };
    const costs = await costsOf(project, outcome);
    let grooved = 0;
    for (const { seam, stretchPct } of costs) {
      const chain = outcome.cut?.chains.find(({ id }) => id === seam);
      const own = new Set(
        Array.from(chain?.vertices.subarray(1) ?? [], (v, i) =>
          key(fileVertex[chain?.vertices[i] ?? 0], fileVertex[v]),
        ),
      );
      const { cut, layers } = await run(marks.filter(([v, w]) => !own.has(key(v, w))));
      const first = chain?.vertices[0] ?? -1;
      const i = cut?.patches.findIndex(({ meshVertices }) => meshVertices.includes(first)) ?? -1;
      const flat = layers[0].flats?.[i];
      if (cut === null || flat == null || stretchPct === null) continue;
      const inMiddle = chain?.vertices[1] ?? -1;
      const j = cut.patches.findIndex(({ meshVertices }) => meshVertices.includes(inMiddle));
      if (j !== i) continue;
      const corners = layers[0].hinges[i]?.corners;
      if (cut.shells[i] !== cut.shell || corners !== undefined) grooved += 1;
      // Limits of foam go by area.
      expect(stretchPct, seam).toBeCloseTo(flat.stretchPct.p99, 6);
    }
    expect(grooved).toBeGreaterThan(0);
  });
});

const key = (v: number, w: number): string => (v < w ? `${v}-${w}` : `${w}-${v}`);
