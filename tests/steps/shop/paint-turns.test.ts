import { describe, expect, it } from 'vitest';
import type { PaintSkin, SkinEdge } from '../../../src/steps/shop/paint-skin.ts';
import { paintTurns, type TurnJob } from '../../../src/steps/shop/paint-turns.ts';

/** A wall of square tiles of 10 mm, each letter a colour of `list`, a dot the rest; each tile stands for a triangle. */
function tiles(rows: readonly string[], list: string, base = ''): TurnJob {
  const width = rows[0].length;
  const letters = [...rows.join('')];
  const edges: SkinEdge[] = letters.flatMap((_, t) => [
    ...((t + 1) % width === 0 ? [] : [{ a: t, b: t + 1, mm: 10, joint: null }]),
    ...(t + width < letters.length ? [{ a: t, b: t + width, mm: 10, joint: null }] : []),
  ]);
  const skin: PaintSkin = {
    areaMm2: new Float64Array(letters.length).fill(100),
    pieceOf: new Int32Array(letters.length),
    colourOf: Int32Array.from(letters, (letter) => list.indexOf(letter)),
    corners: new Float64Array(9 * letters.length),
    edges,
  };
  const all = new Uint8Array(letters.length).fill(1);
  return {
    skin,
    isNow: all,
    isDone: new Uint8Array(letters.length),
    base: list.indexOf(base || '#'),
    lightness: [...list].map((_, i) => i / 10),
  };
}

const told = (job: TurnJob, list: string): readonly string[] =>
  paintTurns(job).map(({ colour, triangles, tape }) => {
    const mm = tape.reduce((sum, one) => sum + one.mm, 0);
    return `${list[colour]} ${triangles.length} tiles, ${mm} mm`;
  });

describe('the order of masking', () => {
  it('begins with the base, and goes from the larger areas to what lies within them', () => {
    // A ring b round a larger panel c round a spot d; e beside them is larger than the ring.
    const rows = [
      'aaaaaaaaaaa',
      'abbbbbaeeea',
      'abcccbaeeea',
      'abcdcbaeeea',
      'abcccbaeeea',
      'abbbbbaeeea',
      'aaaaaaaaaaa',
    ];
    expect(told(tiles(rows, 'abcde', 'a'), 'abcde')).toEqual([
      'a 37 tiles, 0 mm',
      'b 16 tiles, 200 mm',
      'e 15 tiles, 160 mm',
      'c 8 tiles, 120 mm',
      'd 1 tiles, 40 mm',
    ]);
  });

  it('begins with the base however small it is', () => {
    expect(told(tiles(['abb', 'abb'], 'ab', 'a'), 'ab').map((line) => line[0])).toEqual(['a', 'b']);
    expect(told(tiles(['abb', 'abb'], 'ab', 'b'), 'ab').map((line) => line[0])).toEqual(['b', 'a']);
    // Also where nothing hangs together.
    const { skin, ...rest } = tiles(['abb'], 'ab', 'a');
    expect(told({ ...rest, skin: { ...skin, edges: [] } }, 'ab').map((line) => line[0])).toEqual(['a', 'b']);
  });

  it('takes the rest for the ground where there is no base, and tapes it', () => {
    expect(told(tiles(['.....', '.bbb.', '.bcb.', '.bbb.', '.....'], 'cb'), 'cb')).toEqual([
      'b 8 tiles, 120 mm',
      'c 1 tiles, 40 mm',
    ]);
  });

  it('paints a colour twice only where each of two lies within the other', () => {
    const rows = ['aaaaaaaaa', 'abbbabcba', 'abcbaccca', 'abbbabcba', 'aaaaaaaaa'];
    const cross = ['aaaaaaaaaa', 'abbbacccca', 'abcbacbbca', 'abbbacccca', 'aaaaaaaaaa'];
    expect(told(tiles(rows, 'abc', 'a'), 'abc').map((line) => line[0])).toEqual(['a', 'b', 'c']);
    expect(told(tiles(cross, 'abc', 'a'), 'abc').map((line) => line[0])).toEqual(['a', 'c', 'b', 'c']);
  });

  it('puts the lighter of two alike first, and is not led by their place in the list', () => {
    const rows = ['bba', 'bba', 'aaa', 'cca', 'cca'];
    expect(told(tiles(rows, 'abc', 'a'), 'abc').map((line) => line[0])).toEqual(['a', 'c', 'b']);
    expect(told({ ...tiles(rows, 'abc', 'a'), lightness: [0, 1, 0] }, 'abc').map((line) => line[0])).toEqual([
      'a',
      'b',
      'c',
    ]);
  });

  it('tapes what was painted before it was glued on', () => {
    const job = tiles(['aab'], 'ab', 'a');
    const [isNow, isDone] = [Uint8Array.of(1, 1, 0), Uint8Array.of(0, 0, 1)];
    expect(told({ ...job, isNow, isDone }, 'ab')).toEqual(['a 2 tiles, 10 mm']);
    expect(told({ ...job, isNow, isDone: new Uint8Array(3) }, 'ab')).toEqual(['a 2 tiles, 0 mm']);
  });
});
