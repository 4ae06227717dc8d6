import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { checkMesh } from '../../../src/mesh/check-mesh.ts';
import type { SourceModel } from '../../../src/model/source-model.ts';
import { factsOf } from '../../../src/steps/read/facts.ts';
import { findFaults } from '../../../src/steps/read/faults.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { applyRepairs } from '../../../src/steps/read/repair.ts';
import { meshFromModel } from '../../../src/steps/read/size.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import {
  asciiStl,
  binaryStl,
  bytesOf,
  modelOf,
  objOf,
  readText,
  TETRA_FACES,
  TETRA_FACETS,
  TETRA_POINTS,
} from './text-model.ts';

const TETRA = objOf(TETRA_POINTS, TETRA_FACES);

const lookOver = async (model: SourceModel): Promise<string[]> => {
  const mesh = meshFromModel(model, 1);
  checkMesh(mesh);
  factsOf(model);
  return (await findFaults(model, mesh, QUIET_WORK)).map((finding) => finding.code);
};

// The time limit ends what hangs: a step whose time grows with the square of the file would take hours here.
describe('hostile files end in time', () => {
  it('a face of a million corners', async () => {
    const count = 1_000_000;
    const corners = Array.from({ length: count }, (_, i) => 1 + (i % 3)).join(' ');
    const problem = expectProblem(await readText(`v 0 0 0\nv 1 0 0\nv 0 1 0\nf ${corners}\n`), 'read/face-too-large');
    expect(problem.text).toContain('line 4 has 1000000 corners');
  });

  it('the largest face there may be', async () => {
    const count = 20_000;
    const points = Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      const radius = i % 2 === 0 ? 10 : 9;
      return [radius * Math.cos(angle), radius * Math.sin(angle), 0];
    });
    const model = await modelOf(objOf(points, [points.map((_, i) => i)]));
    expect(factsOf(model).triangles).toBe(count - 2);
    expect(factsOf(model).area).toBeCloseTo((count / 2) * 90 * Math.sin((2 * Math.PI) / count), 6);
  });

  it('a hundred thousand vertices on one spot', async () => {
    const count = 100_000;
    const lines = Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      return `v 5 5 5\nv ${(100 * Math.cos(angle)).toFixed(9)} ${(100 * Math.sin(angle)).toFixed(9)} 0`;
    });
    const faces = Array.from({ length: count }, (_, i) => `f ${2 * i + 1} ${2 * i + 2} ${2 * ((i + 1) % count) + 2}`);
    const model = await modelOf([...lines, ...faces].join('\n'));
    expect(model.joined.afterExact).toBe(count + 1);
    await lookOver(model);
  });

  it('thirty thousand vertices that almost lie on one spot', async () => {
    const random = seededRandom(1);
    const count = 30_000;
    const lines = Array.from({ length: count }, (_, i) => {
      const angle = (2 * Math.PI * i) / count;
      return `v ${1e-5 * random()} ${1e-5 * random()} ${1e-5 * random()}\nv ${100 * Math.cos(angle)} ${100 * Math.sin(angle)} ${i % 7}`;
    });
    const faces = Array.from({ length: count }, (_, i) => `f ${2 * i + 1} ${2 * i + 2} ${2 * ((i + 1) % count) + 2}`);
    const model = await modelOf([...lines, ...faces].join('\n'));
    expect(model.joined.afterExact).toBe(2 * count);
    expect(model.joined.afterNear).toBe(count + 1);
  });

  it('one line of ten megabytes', async () => {
    const long = 'x'.repeat(10_000_000);
    for (const line of [long, `# ${long}`, `g ${long}`, `mtllib ${long}`])
      expect((await modelOf(`${line}\n${TETRA}`)).faceNumber.length).toBe(4);
    expect(
      expectProblem(await readText(`v 0 ${'1'.repeat(10_000_000)} 0\n${TETRA}`), 'read/not-finite').text.length,
    ).toBeLessThan(200);
    expectProblem(await readText(`v 0 0 ${long}\n${TETRA}`), 'read/bad-number');
    expectProblem(await readText(`f 1 2 ${long}\n${TETRA}`), 'read/bad-index');
    expectProblem(await readText(`v 0 0${' '.repeat(10_000_000)}\n`), 'read/too-few-numbers');
    expectProblem(await readText(`v 0 0 ${'\\\n'.repeat(3_000_000)}`), 'read/too-few-numbers');
  });

  it('one face a hundred thousand times', async () => {
    const model = await modelOf(`${TETRA}${'f 1 2 3\n'.repeat(100_000)}`);
    expect(await lookOver(model)).toContain('read/doubled-faces');
    expect(factsOf(expectOk(applyRepairs(model, [{ kind: 'drop-doubled' }]))).faces).toBe(4);
  });

  it('thousands of triangles through one spot', async () => {
    const random = seededRandom(8);
    const points = Array.from({ length: 3 * 5000 }, () => [random() - 0.5, random() - 0.5, random() - 0.5]);
    const faces = Array.from({ length: 5000 }, (_, f) => [3 * f, 3 * f + 1, 3 * f + 2]);
    const findings = await findFaults(
      await modelOf(objOf(points, faces)),
      meshFromModel(await modelOf(objOf(points, faces)), 1),
      QUIET_WORK,
    );
    expect(findings.find((finding) => finding.code === 'read/self-crossing')?.text).toMatch(/^At least 5000 pairs/);
  });

  it('triangles without number that lie side by side on one spot', async () => {
    // Thin flat triangles in parallel planes: all boxes overlap, nothing crosses.
    const points = Array.from({ length: 3 * 20_000 }, (_, i) => {
      const z = Math.floor(i / 3) * 1e-3;
      return [
        [0, 0, z],
        [1000, 0, 1000 + z],
        [0, 1000, 1000 + z],
      ][i % 3];
    });
    const faces = Array.from({ length: 20_000 }, (_, f) => [3 * f, 3 * f + 1, 3 * f + 2]);
    expect(await lookOver(await modelOf(objOf(points, faces)))).toContain('read/crossing-unknown');
  });

  it('a hundred thousand names', async () => {
    const text = Array.from({ length: 100_000 }, (_, i) => `g part ${i}\nf 1 2 3`).join('\n');
    expect((await modelOf(`${TETRA}${text}\n`)).groupNames.length).toBe(100_000);
  });
});

describe('a damaged file', () => {
  const whole: readonly (readonly [string, Uint8Array])[] = [
    ['a.obj', bytesOf(`${TETRA}vt 0 0\nvn 0 0 1\ng a\nf 1/1/1 2//1 \\\n3\nf -1 -2 -3 -4\n`)],
    ['a.stl', bytesOf(asciiStl(TETRA_FACETS))],
    ['a.stl', binaryStl(TETRA_FACETS)],
  ];

  it('is read to a sound model, or refused in a sentence, and never ends in an error', () =>
    forAll(
      (rand) => {
        const [name, bytes] = whole[Math.floor(3 * rand())];
        const damaged = bytes.slice(0, rand() < 0.3 ? Math.floor(bytes.length * rand()) : bytes.length);
        const hits = Math.floor(4 * rand());
        for (let i = 0; i < hits && damaged.length > 0; i += 1) {
          damaged[Math.floor(damaged.length * rand())] =
            rand() < 0.5 ? 32 + Math.floor(95 * rand()) : Math.floor(256 * rand());
        }
        return { name: rand() < 0.1 ? 'a.dat' : name, damaged };
      },
      async ({ name, damaged }) => {
        const result = await readModel(damaged, name, QUIET_WORK);
        if (!result.ok) {
          expect(result.problem.text).toMatch(/\.$/);
          return;
        }
        await lookOver(result.value);
        for (const kind of ['turn-faces', 'drop-doubled', 'drop-empty'] as const) {
          const repaired = applyRepairs(result.value, [{ kind }]);
          if (repaired.ok) await lookOver(repaired.value);
        }
      },
      { runs: 1500 },
    ));
});
