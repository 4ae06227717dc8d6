import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { factsOf } from '../../../src/steps/read/facts.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { expectOk } from '../../support/expect-ok.ts';

const FOLDER = new URL('../../reference/meshes/', import.meta.url);

/** The facts of one file as published in SOURCES.md. */
interface Published {
  readonly name: string;
  readonly text: string;
}

const PUBLISHED: readonly Published[] = readFileSync(new URL('SOURCES.md', FOLDER), 'utf8')
  .split(/^## /m)
  .slice(1)
  .map((section) => ({ name: section.split('\n')[0].trim(), text: /^- facts: (.*)$/m.exec(section)?.[1] ?? '' }));

function numbers(text: string, pattern: RegExp): number[] {
  const found = pattern.exec(text);
  if (found === null) throw new Error(`no ${pattern.source} in ${text}`);
  return found.slice(1).map(Number);
}

const read = async (name: string) => expectOk(await readModel(readFileSync(new URL(name, FOLDER)), name, QUIET_WORK));

/** Polygons that are not flat in these files: there the area depends on how they are cut, and the published one is that of fans. */
const NOT_FLAT = ['spot_control_mesh.obj', 'quadknot.obj', 'barrel_large.obj'];

it('covers the twelve files', () => expect(PUBLISHED.length).toBe(12));

describe.each(PUBLISHED)('$name', ({ name, text }) => {
  it('gives the published counts after exact joining and after near joining', async () => {
    const model = await read(name);
    const facts = factsOf(model);
    const [weldedV, weldedF, weldedE, chi] = numbers(text, /welded V (\d+), F (\d+), E (\d+), chi (-?\d+)/);
    const [shells, loops, openEdges] = numbers(text, /shells (\d+); boundary loops (\d+) \((\d+) edges\)/);
    const [badEdges, badVertices] = numbers(text, /non-manifold edges (\d+), vertices (\d+)/);
    const [turned] = numbers(text, /misoriented edges (\d+)/);
    const [nearV] = numbers(text, /V at 1e-6 diag weld (\d+)/);
    const [repeated, empty] = numbers(text, /degenerate (\d+)\+(\d+) zero-area/);
    const [doubled] = numbers(text, /duplicate faces (\d+)/);
    expect(facts.afterExactJoin).toEqual({
      vertices: weldedV,
      faces: weldedF,
      edges: weldedE,
      euler: chi,
      openLoops: loops,
      openEdges,
      nonManifoldVertices: badVertices,
    });
    expect(facts.verticesAfterExactJoin).toBe(weldedV);
    expect(facts.vertices).toBe(nearV);
    expect(facts).toMatchObject({
      shells,
      nonManifoldEdges: badEdges,
      turnedEdges: turned,
      emptyFaces: empty,
      doubledFaces: doubled,
    });
    expect(model.fileFaceCount - model.faceNumber.length).toBe(repeated);
    const genus = /genus (\d+)/.exec(text);
    if (genus !== null) expect(facts.genus).toBe(Number(genus[1]));
    expect(facts.euler).toBe(facts.vertices - facts.edges + facts.faces);
  });

  it('gives the published corners of the file, and how many were joined', async () => {
    const { joined } = await read(name);
    const [faces] = numbers(text, /F (\d+); welded/);
    const raw = /raw V (\d+) /.exec(text);
    const [duplicates] = numbers(text, /duplicate vertices (\d+)/);
    expect(joined.inFile).toBe(raw === null ? 3 * faces : Number(raw[1]));
    const unused = name === 'cornell_box.obj' ? 4 : 0;
    expect(joined.inFile - joined.afterExact).toBe(duplicates + unused);
  });

  it('gives the published area and box', async () => {
    const facts = factsOf(await read(name));
    const [area] = numbers(text, /; area ([\d.]+)/);
    const box = numbers(text, /bbox min \[(.*?), (.*?), (.*?)\] size \[(.*?), (.*?), (.*?)\]/);
    // Printed to 6 or 7 digits, so half a unit of the last one is all that can be asked.
    const digits = Math.max(0, 6 - Math.floor(Math.log10(area)));
    expect(Math.abs(facts.fanArea - area)).toBeLessThan(0.51 * 10 ** -digits);
    if (!NOT_FLAT.includes(name)) expect(Math.abs(facts.area / facts.fanArea - 1)).toBeLessThan(1e-6);
    for (const [i, value] of [...facts.boxMin, ...facts.boxSize].entries()) {
      expect(Math.abs(value - box[i])).toBeLessThan(1e-5 * Math.max(1, Math.abs(box[i])));
    }
  });
});

it('closes the cracks of the angle block at the near tolerance', async () => {
  const model = await read('angle_block.STL');
  expect(factsOf(model)).toMatchObject({
    vertices: 352,
    edges: 1056,
    euler: 0,
    genus: 1,
    openLoops: 0,
    nonManifoldVertices: 0,
  });
  expect(model.joined).toMatchObject({ inFile: 2112, afterExact: 398, afterNear: 352 });
});
