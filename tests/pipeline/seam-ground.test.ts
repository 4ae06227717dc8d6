import { beforeAll, describe, expect, it } from 'vitest';
import { contentHash } from '../../src/base/hash.ts';
import { QUIET_WORK } from '../../src/base/work.ts';
import { propose } from '../../src/pipeline/propose/propose.ts';
import { seamGround, type GroundWish } from '../../src/pipeline/seam-ground.ts';
import type { Command } from '../../src/project/commands.ts';
import { setScale } from '../../src/project/commands.ts';
import { setHiddenSide } from '../../src/project/hidden-commands.ts';
import { setMirror } from '../../src/project/mirror-commands.ts';
import { newProject } from '../../src/project/new-project.ts';
import { setSimplify } from '../../src/project/simplify-commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';

const { sides, rings } = SHADE;
const bytes = new TextEncoder().encode(shadeObj());

describe('what seams are sought on', () => {
  let hash: string;
  beforeAll(async () => {
    hash = await contentHash(bytes);
  });

  const ground = async (wish: GroundWish, ...commands: Command[]) => {
    const first = newProject('lamp shade', { hash, fileName: 'shade.obj', format: 'obj' });
    const project = [setScale({ by: 'unit', unit: 'mm' }), ...commands].reduce((now, one) => one.apply(now), first);
    return expectOk(await seamGround(project, new Map([[hash, { fileName: 'shade.obj', bytes }]]), wish, QUIET_WORK));
  };

  it('is alike on both sides by the mirror in force, where that is asked for', async () => {
    const { wishes } = await ground({ kind: 'foam', isMirrored: true });
    expect(wishes.mirror?.some((other, e) => other >= 0 && other !== e)).toBe(true);
    expect((await ground({ kind: 'foam' })).wishes.mirror).toBeUndefined();
    // The maker's own word on it goes before what is found.
    expect((await ground({ kind: 'foam', isMirrored: true }, setMirror({ by: 'off' }))).wishes.mirror).toBeUndefined();
  });

  it('is the simpler sculpt where the job has one', async () => {
    const whole = await ground({ kind: 'foam' });
    expect(whole.surface.mesh.triangles.length / 3).toBe(2 * sides * rings);
    const simple = await ground({ kind: 'foam' }, setSimplify({ triangles: 40, keep: [] }));
    expect(simple.surface.mesh.triangles.length / 3).toBeLessThan(sides * rings + 1);
    expect(simple.positions).toHaveLength(simple.surface.mesh.positions.length);
    expect(simple.findings.map(({ code }) => code).join(' ')).toMatch(/simplify\//);
  });

  it('has cheaper seams on the side that is hidden: a tube comes to be open there', async () => {
    const made = await ground({ kind: 'foam' }, setHiddenSide('left'));
    const { mesh } = made.surface;
    const open = Array.from({ length: rings }, () => [(3 * sides) / 4, (3 * sides) / 4]);
    let last: number[][] = [];
    let asked = 0;
    await propose(
      { mesh, positions: made.positions, limits: made.limits, ...made.wishes, dial: 'simple', seed: 1 },
      QUIET_WORK,
      ({ edges }) => {
        last = edges.map((pair) => pair.map((v) => v % sides));
      },
      () => (asked += 1) > 20_000 || JSON.stringify(last) === JSON.stringify(open),
    );
    expect(last).toEqual(open);
  });
});
