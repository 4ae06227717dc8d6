import { describe, expect, it } from 'vitest';
import { base64FromBytes, bytesFromBase64 } from '../../src/base/base64.ts';
import { DisjointSets } from '../../src/base/disjoint-sets.ts';
import { contentHash } from '../../src/base/hash.ts';
import { letters } from '../../src/base/ids.ts';
import { Memo } from '../../src/base/memo.ts';
import { MinHeap } from '../../src/base/min-heap.ts';
import { seededRandom } from '../../src/base/random.ts';
import { shareOfWork, sharesOfWork } from '../../src/base/work.ts';

describe('letters', () => {
  it('counts A to Z, then AA', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(letters)).toEqual(['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA']);
  });
});

describe('Memo', () => {
  it('remembers by identity of every part and forgets the oldest', () => {
    const memo = new Memo<[object, number], string>(2);
    const key = {};
    memo.set([key, 1], 'a');
    memo.set([key, 2], 'b');
    expect(memo.get([key, 1])).toBe('a');
    expect(memo.get([{}, 1])).toBeUndefined();
    memo.set([key, 3], 'c');
    expect(memo.get([key, 2])).toBeUndefined();
    expect(memo.get([key, 1])).toBe('a');
  });

  it('takes a new result for the same inputs in place of the old one, not beside it', () => {
    const memo = new Memo<[number], string>(2);
    memo.set([1], 'a');
    memo.set([2], 'b');
    memo.set([2], 'c');
    expect(memo.get([2])).toBe('c');
    expect(memo.get([1])).toBe('a');
  });
});

describe('MinHeap', () => {
  it('gives the smallest key first and equal keys by item', () => {
    const rand = seededRandom(7);
    const heap = new MinHeap();
    const expected = Array.from({ length: 500 }, (_, item) => ({ key: Math.floor(rand() * 40), item }));
    for (const { key, item } of expected) heap.push(key, item);
    const got = expected.map(() => heap.pop());
    expect(got).toEqual(expected.sort((a, b) => a.key - b.key || a.item - b.item));
    expect(() => heap.pop()).toThrow(RangeError);
  });
});

describe('DisjointSets', () => {
  it('joins groups once', () => {
    const sets = new DisjointSets(4);
    expect([sets.join(0, 1), sets.join(2, 3), sets.join(1, 0), sets.join(3, 0)]).toEqual([true, true, false, true]);
    expect(sets.find(3)).toBe(sets.find(1));
  });
});

describe('base64', () => {
  it('brings any bytes back and refuses what is no base64', () => {
    const bytes = Uint8Array.from({ length: 70000 }, (_, i) => (i * 31) & 255);
    expect(bytesFromBase64(base64FromBytes(bytes))).toEqual(bytes);
    expect(bytesFromBase64('not base64!')).toBeNull();
  });
});

describe('contentHash', () => {
  // FIPS 180-2, appendix B.1: SHA-256 of "abc".
  it('is SHA-256', async () => {
    expect(await contentHash(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});

describe('shareOfWork', () => {
  it('maps a part onto the whole', () => {
    const told: number[] = [];
    const part = shareOfWork({ pause: (done) => void told.push(done) }, 0.2, 0.6);
    void part.pause(0);
    void part.pause(0.5);
    void part.pause(2);
    expect(told).toEqual([0.2, 0.4, 0.6]);
  });

  it('is called off with the whole', () => {
    const { signal } = new AbortController();
    expect(shareOfWork({ pause: () => undefined, signal }, 0, 1).signal).toBe(signal);
    expect(shareOfWork({ pause: () => undefined }, 0, 1)).not.toHaveProperty('signal');
  });
});

describe('sharesOfWork', () => {
  it('adds up what parts done at the same time have told', () => {
    const told: number[] = [];
    const [small, large] = sharesOfWork({ pause: (done) => void told.push(done) }, [1, 3]);
    void large.pause(0.5);
    void small.pause(1);
    void large.pause(0.4);
    void large.pause(1);
    expect(told).toEqual([0.375, 0.625, 0.625, 1]);
  });
});
