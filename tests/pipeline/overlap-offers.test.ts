import { expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { Pipeline } from '../../src/pipeline/pipeline.ts';
import { newProject } from '../../src/project/new-project.ts';
import type { Project } from '../../src/project/project.ts';

/** A flat ramp that winds round 1.3 turns, 20 mm wide, and rises a hair: laid flat it lies over itself. */
function rampObj(): string {
  const steps = 60;
  const lines: string[] = [];
  for (let i = 0; i <= steps; i += 1) {
    const angle = (1.3 * 2 * Math.PI * i) / steps;
    for (const radius of [30, 50]) lines.push(`v ${radius * Math.cos(angle)} ${radius * Math.sin(angle)} ${i}`);
  }
  for (let i = 0; i < steps; i += 1) lines.push(`f ${2 * i + 1} ${2 * i + 2} ${2 * i + 4} ${2 * i + 3}`);
  return lines.join('\n');
}

it('offers the shortest cut that frees a piece from lying over itself, and taking it frees it', async () => {
  const bytes = new TextEncoder().encode(rampObj());
  const hash = await contentHash(bytes);
  const pipeline = new Pipeline();
  pipeline.putSource(hash, { fileName: 'ramp.obj', bytes });
  const first = newProject('ramp', { hash, fileName: 'ramp.obj', format: 'obj' });
  const part = { ...first.parts[0], scale: { by: 'unit', unit: 'mm' } as const };
  const project: Project = { ...first, parts: [part] };
  const before = await pipeline.run(project, QUIET_WORK);
  expect(before.flats?.[0]?.overlapCount).toBeGreaterThan(0);
  const [offer] = before.cut?.offers ?? [];
  expect(offer.patch).toBe(0);
  // Across the ramp: as long as it is wide, but for the hair it rises (one rung of the surface laid flat).
  expect(offer.lengthMm).toBeCloseTo(20, 0);
  const fileVertex = before.sculpt?.mesh.fileVertex;
  if (fileVertex === undefined) throw new Error('no sculpt');
  const edges = offer.edges.map(([v, w]) => [fileVertex[v], fileVertex[w]] as const);
  const after = await pipeline.run({ ...project, parts: [{ ...part, seams: { edges, paths: [] } }] }, QUIET_WORK);
  expect(after.flats?.map((flat) => flat?.overlapCount)).toEqual([0, 0]);
  expect(after.cut?.offers).toEqual([]);
});
