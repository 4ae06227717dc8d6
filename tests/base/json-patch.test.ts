import { describe, expect, it } from 'vitest';
import { patchBetween, patched, type PatchStep } from '../../src/base/json-patch.ts';
import { sharedWith } from '../../src/base/share-equal.ts';
import { expectOk } from '../support/expect-ok.ts';
import { forAll } from '../support/for-all.ts';

/** Examples of RFC 6902, appendix A, for the operations that change one value. */
const EXAMPLES: readonly (readonly [string, unknown, PatchStep, unknown])[] = [
  ['A.1, an object member', { foo: 'bar' }, { op: 'add', path: '/baz', value: 'qux' }, { foo: 'bar', baz: 'qux' }],
  [
    'A.2, an array element',
    { foo: ['bar', 'baz'] },
    { op: 'add', path: '/foo/1', value: 'qux' },
    { foo: ['bar', 'qux', 'baz'] },
  ],
  ['A.3, a member taken away', { baz: 'qux', foo: 'bar' }, { op: 'remove', path: '/baz' }, { foo: 'bar' }],
  [
    'A.4, an element taken away',
    { foo: ['bar', 'qux', 'baz'] },
    { op: 'remove', path: '/foo/1' },
    { foo: ['bar', 'baz'] },
  ],
  [
    'A.5, a value replaced',
    { baz: 'qux', foo: 'bar' },
    { op: 'replace', path: '/baz', value: 'boo' },
    { baz: 'boo', foo: 'bar' },
  ],
  [
    'A.10, a nested object',
    { foo: 'bar' },
    { op: 'add', path: '/child', value: { grandchild: {} } },
    { foo: 'bar', child: { grandchild: {} } },
  ],
  ['A.14, ~ escaped', { '/': 9, '~1': 10 }, { op: 'replace', path: '/~01', value: 11 }, { '/': 9, '~1': 11 }],
  [
    'A.16, an array as a value',
    { foo: ['bar'] },
    { op: 'add', path: '/foo/-', value: ['abc', 'def'] },
    { foo: ['bar', ['abc', 'def']] },
  ],
];

describe('a patch', () => {
  it.each(EXAMPLES)('does what RFC 6902 shows: %s', (_, before, step, after) => {
    const kept = structuredClone(before);
    expect(expectOk(patched(before, [step]))).toEqual(after);
    expect(before).toEqual(kept);
  });

  it('refuses a place that is not there (RFC 6902, A.12), a leading nought and one past the end', () => {
    for (const path of ['/baz/bat', '/list/01', '/list/3', 'list', '/list/x'])
      expect(patched({ foo: 'bar', list: [1, 2] }, [{ op: 'add', path, value: 1 }]).ok).toBe(false);
    expect(patched({ list: [1] }, [{ op: 'remove', path: '/list/1' }]).ok).toBe(false);
  });

  it('makes one value of any other', () =>
    forAll(
      (rand) => ({ from: jsonOf(rand, 3), to: jsonOf(rand, 3) }),
      ({ from, to }) => {
        expect(expectOk(patched(from, patchBetween(from, to)))).toEqual(to);
        expect(patchBetween(from, structuredClone(from))).toEqual([]);
      },
      { runs: 60 },
    ));

  it('is one step where an edge was put into a long list, and the list where most of it changed', () => {
    const list = Array.from({ length: 300 }, (_, i) => [i, i + 1]);
    const longer = [...list.slice(0, 150), [7, 9], ...list.slice(150)];
    expect(patchBetween({ list }, { list: longer })).toEqual([{ op: 'add', path: '/list/150', value: [7, 9] }]);
    const other = list.map(([a, b]) => [a + 1000, b]);
    expect(patchBetween({ list }, { list: other })).toEqual([{ op: 'replace', path: '/list', value: other }]);
  });

  it('sets a field of any name as a field, and nothing else', () => {
    const made = expectOk(patched({}, [{ op: 'add', path: '/__proto__', value: { bad: true } }])) as object;
    expect(Object.getPrototypeOf(made)).toBe(Object.prototype);
    expect(Object.hasOwn(made, '__proto__')).toBe(true);
    expect(patched({}, [{ op: 'add', path: '/constructor/name', value: 1 }]).ok).toBe(false);
  });
});

it('shares what says the same, whatever lies about it', () => {
  const like = { parts: [{ seams: { edges: [[1, 2]] }, name: 'a' }], foams: [{ id: 'x' }] };
  const value = structuredClone({ ...like, parts: [{ ...like.parts[0], name: 'b' }] });
  const shared = sharedWith(like, value);
  expect(shared).toEqual(value);
  expect(shared.foams).toBe(like.foams);
  expect(shared.parts[0].seams).toBe(like.parts[0].seams);
  expect(sharedWith(like, structuredClone(like))).toBe(like);
});

function jsonOf(rand: () => number, depth: number): unknown {
  const kind = Math.floor(rand() * (depth > 0 ? 6 : 4));
  const size = (): number => Math.floor(rand() * 5);
  if (kind === 4) return Array.from({ length: size() }, () => jsonOf(rand, depth - 1));
  if (kind === 5) {
    const names = ['a', 'b', 'c/d', '~e', ''].filter(() => rand() < 0.6);
    return Object.fromEntries(names.map((name) => [name, jsonOf(rand, depth - 1)]));
  }
  return [null, true, Math.floor(rand() * 3), 'word'][kind];
}
