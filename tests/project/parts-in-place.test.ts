import { describe, expect, it } from 'vitest';
import { IN_PLACE, placed4, turnRound4 } from '../../src/geom/matrix4.ts';
import { vec3 } from '../../src/geom/vec.ts';
import { newProject } from '../../src/project/new-project.ts';
import { atPlace, placeBeside, placeOf, turnedBy } from '../../src/project/part-place.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { addSculpt, changeSculpt, removeSculpt } from '../../src/project/sculpt-commands.ts';
import { contentHash } from '../../src/base/hash.ts';
import { expectOk } from '../support/expect-ok.ts';

describe('where a part stands', () => {
  it('is moved and turned about its own upright, and what it is tipped besides stays', () => {
    const tipped = turnedBy(atPlace(IN_PLACE, { x: 10, y: -20, z: 5 }), 'x', 90);
    const turned = atPlace(tipped, { turnDeg: 30 });
    expect(placeOf(turned)).toMatchObject({ x: 10, y: -20, z: 5 });
    expect(placeOf(turned).turnDeg).toBeCloseTo(30, 9);
    // Its own z lay along -y, and is turned with it: by hand, 30 degrees.
    const tip = placed4(turned, vec3(0, 0, 1));
    expect([tip.x - 10, tip.y + 20, tip.z - 5].map((v) => v.toFixed(6))).toEqual(
      [0.5, -Math.sqrt(3) / 2, 0].map((v) => v.toFixed(6)),
    );
    const same = atPlace(turned, placeOf(turned));
    same.forEach((value, i) => expect(value).toBeCloseTo(turned[i], 9));
  });

  it('is beside all that is there, on the same ground, its own z up', () => {
    const there = [Float32Array.of(-50, 0, -30, 60, 200, 30)];
    const own = { min: { x: -5, y: -5, z: 0 }, max: { x: 5, y: 5, z: 100 } };
    const matrix = placeBeside(there, own, 'y');
    const corners = [own.min, own.max].map((corner) => placed4(matrix, corner));
    expect(Math.min(...corners.map(({ x }) => x))).toBeCloseTo(100, 6);
    expect(corners.map(({ y }) => y).sort((a, b) => a - b)).toEqual([0, 100]);
    expect(placeBeside([], own, 'z')).toEqual(IN_PLACE);
    expect(placeBeside([], null, 'y')).toEqual(turnRound4(vec3(0, 0, 0), vec3(1, 0, 0), -90));
  });
});

describe('several sculpts', () => {
  const source = (letter: string) => ({ hash: letter.repeat(64), fileName: `${letter}.obj`, format: 'obj' as const });

  it('are added with ids of their own, worked on, changed and taken away', async () => {
    const one = newProject('helm', source('a'));
    const two = addSculpt('horn', source('b')).apply(one);
    expect(two.atWork).toBe('part-2');
    expect(two.parts.map(({ layers }) => layers[0].id)).toEqual(['layer-1', 'layer-2']);
    const [helm, horn] = two.parts;
    const named = changeSculpt(horn.id, { name: 'left horn', copies: 2 }).apply(two);
    expect(named.parts[0]).toBe(helm);
    expect(named.parts[1]).toMatchObject({ name: 'left horn', copies: 2 });
    expect(changeSculpt(horn.id, { copies: 2 }).apply(named)).toBe(named);
    const left = removeSculpt(horn.id).apply(named);
    expect(left.parts).toEqual([helm]);
    expect(left.atWork).toBeUndefined();

    // A file holds both, as the reader of projects wants it.
    const bytes = new Uint8Array([1]);
    const hash = await contentHash(bytes);
    const kept = { ...named, parts: named.parts.map((part) => ({ ...part, source: { ...part.source, hash } })) };
    const text = writeProjectFile(kept, new Map([[hash, { fileName: 'a.obj', bytes }]]));
    expect(expectOk(await readProjectFile(text, 'job.json')).project.parts).toHaveLength(2);
  });
});
