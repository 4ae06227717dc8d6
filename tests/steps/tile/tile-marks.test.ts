import { describe, expect, it } from 'vitest';
import { inEnglish } from '../../../src/base/paper-language.ts';
import type { LineRole } from '../../../src/model/template.ts';
import { findPaper } from '../../../src/model/papers.ts';
import type { Lattice, Side } from '../../../src/steps/tile/lattice.ts';
import { Obstacles } from '../../../src/steps/tile/obstacles.ts';
import { paperFrame, type PaperFrame } from '../../../src/steps/tile/paper-frame.ts';
import { Pen } from '../../../src/steps/tile/pen.ts';
import { drawTileMarks, labelJoints, neighboursOf, type Neighbours } from '../../../src/steps/tile/tile-marks.ts';
import { wordsBox } from '../../../src/steps/tile/words-box.ts';
import { expectOk } from '../../support/expect-ok.ts';

/** A4 upright: tiles of 190 × 265 mm with their lower left corner at 10, 22 of the page; the one glued under the next shows 10 mm of it. */
const frameWith = (overlapMm: number): PaperFrame =>
  expectOk(paperFrame(expectOk(findPaper('A4')), 'portrait', 10, overlapMm));

const latticeWith = (overlapMm: number, columns = 2, rows = 2): Lattice => ({
  columns,
  rows,
  tileWidthMm: 190,
  tileHeightMm: 265,
  stepXMm: 190 - overlapMm,
  stepYMm: 265 - overlapMm,
});

const NONE: Neighbours = { left: false, right: false, below: false, above: false };

/** Lines of one role that are drawn on a tile, to a thousandth of a mm, closed ones with all their corners. */
function drawn(role: LineRole, tile: number, beside: Neighbours, lattice = latticeWith(10)): readonly string[] {
  const pen = new Pen();
  drawTileMarks(pen, frameWith(10), lattice, tile, beside);
  expect(pen.words).toEqual([]);
  return pen.strokes
    .filter((stroke) => stroke.role === role)
    .map(({ points }) => Array.from(points, (mm) => Math.round(mm * 1000) / 1000).join(' '))
    .sort();
}

describe('neighbours of a tile', () => {
  it('are those that are printed', () => {
    // 2 3
    // 0 1
    const isPrinted = [true, true, false, true];
    const lattice = latticeWith(10);
    expect(neighboursOf(lattice, isPrinted, 0)).toEqual({ ...NONE, right: true });
    expect(neighboursOf(lattice, isPrinted, 1)).toEqual({ ...NONE, left: true, above: true });
    expect(neighboursOf(lattice, isPrinted, 3)).toEqual({ ...NONE, below: true });
  });
});

describe('marks of a page', () => {
  it('of its own are four corner crosses of 4 mm and no frame', () => {
    expect(drawn('frame', 0, NONE, latticeWith(10, 1, 1))).toEqual([]);
    expect(drawn('ruler', 0, NONE, latticeWith(10, 1, 1))).toEqual(
      [
        '10 22 14 22',
        '10 22 10 26',
        '196 22 200 22',
        '200 22 200 26',
        '10 287 14 287',
        '10 283 10 287',
        '196 287 200 287',
        '200 283 200 287',
      ].sort(),
    );
  });

  it('at the lower left show its frame, the strips that go under both neighbours, and crosses and ticks on their inner lines', () => {
    const beside = { ...NONE, right: true, above: true };
    expect(drawn('frame', 0, beside)).toEqual(
      ['10 22 200 22 200 287 10 287', '190 22 190 287', '10 277 200 277'].sort(),
    );
    const crosses = [
      ...['10 22 14 22', '10 22 10 26', '186 22 194 22', '190 22 190 26'],
      ...['10 277 14 277', '10 273 10 281', '186 277 194 277', '190 273 190 281'],
    ];
    // 50, 100, 150 and 200 mm up the block; 250 would stand in the cross.
    const up = ['188 72 190 72', '188 122 190 122', '188 172 190 172', '188 222 190 222'];
    const across = ['60 275 60 277', '110 275 110 277', '160 275 160 277'];
    expect(drawn('ruler', 0, beside)).toEqual([...crosses, ...up, ...across].sort());
  });

  it('at the upper right show the same places of the block, counted on from its corner, on its own edges', () => {
    const beside = { ...NONE, left: true, below: true };
    expect(drawn('frame', 3, beside)).toEqual(['10 22 200 22 200 287 10 287']);
    const crosses = [
      ...['10 22 14 22', '10 22 10 26', '196 22 200 22', '200 22 200 26'],
      ...['10 287 14 287', '10 283 10 287', '196 287 200 287', '200 283 200 287'],
    ];
    // The tile begins at 180, 255 of the block: 300 up it stands at 45, 200 across at 20.
    const up = ['10 67 12 67', '10 117 12 117', '10 167 12 167', '10 217 12 217', '10 267 12 267'];
    const across = ['30 22 30 24', '80 22 80 24', '130 22 130 24', '180 22 180 24'];
    expect(drawn('ruler', 3, beside)).toEqual([...crosses, ...up, ...across].sort());
  });

  it('keep a cross where a neighbour would be that is not printed, and draw no strip there', () => {
    const beside = { ...NONE, above: true };
    expect(drawn('frame', 0, beside)).toEqual(['10 22 200 22 200 287 10 287', '10 277 200 277'].sort());
    expect(drawn('ruler', 0, beside)).toContain('190 273 190 281');
    expect(drawn('ruler', 0, beside)).toContain('186 22 194 22');
    // Ticks along the joint go on to the edge of the page.
    expect(drawn('ruler', 0, beside).filter((line) => line.endsWith(' 275'))).toEqual([]);
    expect(drawn('ruler', 0, beside).filter((line) => /^\d+ 275 \d+ 277$/.test(line))).toHaveLength(3);
  });

  it('leave no tick within 5 mm of a corner', () => {
    // Steps of 46 mm: tick 50 stands 4 mm into the second tile, tick 100 of a tile of 105 mm 5 mm before its end.
    const lattice = { ...latticeWith(10, 2, 1), tileWidthMm: 105, stepXMm: 46 };
    const ticks = drawn('ruler', 1, { ...NONE, below: true }, lattice).filter((line) => / 24$/.test(line));
    expect(ticks).toEqual(['64 22 64 24']);
    const first = drawn('ruler', 0, { ...NONE, below: true }, lattice).filter((line) => / 24$/.test(line));
    expect(first).toEqual(['60 22 60 24']);
  });
});

/** What is written at the joints, where, and the sides that found no room. */
function labelled(overlapMm: number, beside: Partial<Neighbours>, obstacles = new Obstacles()) {
  const pen = new Pen();
  const full = labelJoints(pen, frameWith(overlapMm), latticeWith(overlapMm), {
    beside: { ...NONE, ...beside },
    nameOf: (side: Side) => `page-${side}`,
    obstacles,
    say: inEnglish,
  });
  return { full, words: pen.words };
}

describe('words at a joint', () => {
  it('say what is done with the page on that side', () => {
    const said = labelled(10, { left: true, right: true, below: true, above: true });
    expect(said.full).toEqual([]);
    expect(said.words.map(({ text }) => text)).toEqual([
      'cut here, lay on page-left',
      'glue page-right here',
      'cut here, lay on page-below',
      'glue page-above here',
    ]);
    const meet = labelled(0, { left: true, above: true });
    expect(meet.words.map(({ text }) => text)).toEqual(['meets page-left', 'meets page-above']);
  });

  // Letters reach 0.825 mm under their line and 2.75 mm over it; upright ones have their tops to the left. 1.4 mm stay white at the joint.
  it.each([
    ['left', 14.15, 154.5, Math.PI / 2],
    ['right', 194.15, 154.5, Math.PI / 2],
    ['below', 105, 24.225, 0],
    ['above', 105, 279.225, 0],
  ] as const)('stand beside it, in the middle of the side: %s', (side, x, y, angleRad) => {
    const [words, ...others] = labelled(10, { [side]: true }).words;
    expect(others).toEqual([]);
    expect(words.at.x).toBeCloseTo(x, 9);
    expect(words.at.y).toBeCloseTo(y, 9);
    expect(words).toMatchObject({ angleRad, align: 'centre', heightMm: 2.5 });
  });

  it('stand before a strip that is too narrow for them', () => {
    // They need 1.45 capital heights and twice 1.4 mm: 6.425 mm.
    const [right] = labelled(6.4, { right: true }).words;
    expect(wordsBox(right).minX).toBeCloseTo(10 + 183.6 - 6.425 + 1.4, 9);
    const [above] = labelled(6.4, { above: true }).words;
    expect(wordsBox(above).minY).toBeCloseTo(22 + 258.6 - 6.425 + 1.4, 9);
    const [inStrip] = labelled(6.5, { right: true }).words;
    expect(wordsBox(inStrip).minX).toBeCloseTo(10 + 183.5 + 1.4, 9);
  });

  it('go as little aside as brings them clear of lines', () => {
    const obstacles = new Obstacles();
    obstacles.addStrokes([{ role: 'cut', points: Float64Array.of(106, 0, 106, 100), closed: false }]);
    const [words] = labelled(10, { below: true }, obstacles).words;
    const box = wordsBox(words);
    const half = (box.maxX - box.minX) / 2;
    // 0.6 mm of white round words: to the right 1 + half + 0.6, to the left one less; in steps of 2 mm.
    expect(words.at.x).toBeCloseTo(105 - 2 * Math.ceil((half + 0.6 - 1) / 2), 9);
    expect(box.maxX).toBeLessThan(106 - 0.6);
  });

  it('keep off words that were written before, and are kept off themselves', () => {
    const obstacles = new Obstacles();
    labelled(10, { below: true }, obstacles);
    const [second] = labelled(10, { below: true }, obstacles).words;
    expect(Math.abs(second.at.x - 105)).toBeGreaterThan(20);
  });

  it('stay 5 mm off both corners, and a side without room is told', () => {
    const obstacles = new Obstacles();
    const found: number[] = [];
    for (;;) {
      const { full, words } = labelled(10, { below: true }, obstacles);
      if (words.length === 0) {
        expect(full).toEqual(['below']);
        break;
      }
      const { minX, maxX } = wordsBox(words[0]);
      found.push(minX - 10, 200 - maxX);
    }
    expect(found.length).toBeGreaterThan(4);
    expect(Math.min(...found)).toBeGreaterThanOrEqual(5);
  });
});
