import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Cancelled, QUIET_WORK, type Work } from '../../../src/base/work.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { expectOk } from '../../support/expect-ok.ts';

const BYTES = readFileSync(new URL('../../reference/meshes/goathead.obj', import.meta.url));

describe('readModel', () => {
  it('tells how far it is, from 0 towards 1, and lets others run', async () => {
    const told: number[] = [];
    const work: Work = {
      pause: (done) => {
        told.push(done);
        return Promise.resolve();
      },
    };
    expectOk(await readModel(BYTES, 'goathead.obj', work));
    expect(told.length).toBeGreaterThan(4);
    expect(told[0]).toBe(0);
    expect(told.every((done, i) => done <= 1 && (i === 0 || done >= told[i - 1]))).toBe(true);
  });

  it('stops where it is when called off', async () => {
    for (const limit of [0, 0.3, 0.7]) {
      const work: Work = {
        pause: (done) => {
          if (done >= limit) throw new Cancelled();
          return undefined;
        },
      };
      await expect(readModel(BYTES, 'goathead.obj', work)).rejects.toBeInstanceOf(Cancelled);
    }
  });

  it('gives the same for the same bytes, and leaves them alone', async () => {
    const before = BYTES.toString('latin1');
    const first = expectOk(await readModel(BYTES, 'goathead.obj', QUIET_WORK));
    expect(expectOk(await readModel(Uint8Array.from(BYTES), 'goathead.obj', QUIET_WORK))).toEqual(first);
    expect(BYTES.toString('latin1')).toBe(before);
    expect(first.hash.startsWith('b0aa414ce3c46e5e')).toBe(true); // as published beside the file
  });
});
