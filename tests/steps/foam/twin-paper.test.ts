import { describe, expect, it } from 'vitest';
import type { FoamPiece, FoamSeam, PieceEdge } from '../../../src/model/foam-piece.ts';
import { makeTemplate } from '../../../src/steps/foam/make-template.ts';
import { readTurned, twinPapers } from '../../../src/steps/foam/twin-paper.ts';
import type { TwinReading } from '../../../src/steps/foam/twin-reading.ts';
import { meshOf } from '../../support/meshes.ts';
import { foamOf, partedAlong } from './support.ts';
import { textsOf } from './template-check.ts';

/**
 * Two panels, each folded once, that lean against each other over x = 0; under each hangs one more. Numbered so that mirrored seams run head to
 * tail: the left one from 2 to 3, the right one from 5 to 4, which lie across from 3 and 2.
 */
const MESH = meshOf(
  [
    [0, 50, 0],
    [0, 50, 200],
    [-60, 10, 0],
    [-60, 10, 200],
    [60, 10, 200],
    [60, 10, 0],
    [-70, -80, 0],
    [-70, -80, 200],
    [70, -80, 0],
    [70, -80, 200],
  ],
  [
    [0, 2, 3, 1],
    [0, 1, 4, 5],
    [2, 6, 7, 3],
    [5, 4, 9, 8],
  ],
);
const { pieces, seams } = foamOf(
  partedAlong(MESH, [
    [0, 1],
    [2, 3],
    [4, 5],
  ]),
  { upAxis: 'y' },
);
const [first, second] = pieces;

const changed = (change: Partial<FoamPiece>): FoamPiece => ({ ...second, ...change });
const withEdges = (change: (edge: PieceEdge) => PieceEdge): FoamPiece => changed({ edges: second.edges.map(change) });

describe('paper of twins', () => {
  it('is shared where all agrees', () => {
    const { readings, apart } = twinPapers(pieces, seams);
    expect([...readings.keys()]).toEqual([pieces[0].id, pieces[2].id]);
    expect([...apart]).toEqual([]);
    const { piece, edges, marks } = readings.get(first.id) as TwinReading;
    expect(piece).toBe(second);
    expect([...edges].map(([own, twin]) => `${own.letter}>${twin.letter}`).sort()).toEqual(['>', '>', 'A>C', 'B>B']);
    // The same number on both, though the seam of the second is counted from its other end.
    expect([...marks.values()].map(({ letter, index }) => `${letter}${index}`).sort()).toEqual(
      second.marks.map(({ letter, index }) => `${letter}${index}`).sort(),
    );
    for (const mark of first.marks.filter(({ letter }) => letter === 'A')) {
      const twin = marks.get(`${mark.seam} ${mark.side} ${mark.index}`);
      expect([twin?.letter, twin?.index]).toEqual(['C', mark.index]);
    }
  });

  it('says both names and both readings', () => {
    const mates = new Map(pieces.map(({ id, number }) => [id, number]));
    const context = { projectName: 'roof', foamName: 'EVA 10 mm', mates };
    const twin = readTurned(first, second, seams) as TwinReading;
    const shared = makeTemplate(first, seams, context, twin);
    expect(shared.turned).toBe(second.id);
    const texts = textsOf(shared).join(' | ');
    expect(texts).toContain(`1  ${first.name}`);
    expect(texts).toContain(`turned over: 2  ${second.name}`);
    expect(texts).toContain('cut 2, turn 1 over');
    expect(texts).toContain('B → 2 · turned: B → 1');
    expect(texts).toContain('A → 3 · turned: C → 4');
    expect(texts).toContain('A1/C1');
    expect(texts).toContain('| B1 |');
    expect(texts).not.toContain('B1/B1');
    expect(texts).toContain(first.revision);
    expect(texts).toContain(`${second.revision} turned`);
    const alone = makeTemplate(first, seams, { ...context, apart: 'the bevel at A and C differs by 1.2°' });
    expect(alone.apart).toBe('the bevel at A and C differs by 1.2°');
    expect(textsOf(alone).join(' ').replace(/ +/g, ' ')).toContain('not to be turned over');
  });

  it.each<[string, FoamPiece, readonly FoamSeam[], RegExp]>([
    [
      'outlines',
      changed({ outline: second.outline.map((x) => x * 1.001) }),
      seams,
      /^the line to cut differs by 0\.\d\d mm$/,
    ],
    [
      'other edges of bevels',
      changed({ otherOutline: second.otherOutline.map((x) => x * 1.001) }),
      seams,
      /^the other edge of the bevels differs by 0\.\d\d mm$/,
    ],
    [
      'bevels',
      withEdges((edge) =>
        edge.letter === 'C' ? { ...edge, bevelDeg: edge.bevelDeg.map((lean) => lean + 1.2) } : edge,
      ),
      seams,
      /^the bevel at A and C differs by 1\.2°$/,
    ],
    [
      'marks',
      changed({ marks: second.marks.map((mark) => ({ ...mark, at: { ...mark.at, y: mark.at.y + 3 } })) }),
      seams,
      /^a match mark differs by \d\.\d\d mm$/,
    ],
    [
      'a fold that is missing',
      changed({ folds: [{ from: { x: 0, y: 0 }, to: { x: 0, y: 9 }, angleDeg: 30 }] }),
      seams,
      /^only one has a fold out$/,
    ],
    [
      'joins',
      second,
      seams.map((seam) => (seam.letter === 'C' ? { ...seam, standSide: 0 as const } : seam)),
      /^A says “”, C “rebate, /,
    ],
    ['sides', changed({ tracedSide: 'back' }), seams, /^one is traced on the back$/],
    ['foams', changed({ foam: 'other' as FoamPiece['foam'] }), seams, /^they are of different foam$/],
    ['up', changed({ up: { x: 1, y: 0 } }), seams, /^up runs 90\.0° apart$/],
    ['grain', changed({ grainRad: 0.3 }), seams, /^only one has a grain$/],
    [
      'scores',
      changed({ scores: [{ line: 'score-1', points: Float64Array.of(0, 0, 5, 5), depthMm: 2, openMm: 0 }] }),
      seams,
      /^only one has a scored line$/,
    ],
    [
      'corners',
      changed({ cornerCuts: [{ vertex: 0, cutMm: 2, wideMm: 2 }] }),
      seams,
      /^only one says “corner cut back 2 mm”$/,
    ],
  ])('is each its own where %s differ, and why is told', (_, other, theirs, why) => {
    expect(readTurned(first, other, theirs)).toMatch(why);
    const { readings, apart } = twinPapers([first, other], theirs);
    expect(readings.size).toBe(0);
    expect(apart.get(first.id)).toMatch(why);
    expect(apart.get(second.id)).toMatch(why);
  });

  it('is each its own where a fold bends farther', () => {
    const fold = { from: { x: 0, y: 10 }, to: { x: 0, y: 60 }, angleDeg: 30 };
    const move = first.twinMove;
    if (move === undefined) throw new Error('no move');
    const [c, s] = [Math.cos(move.turnRad), Math.sin(move.turnRad)];
    const onSecond = ({ x, y }: { x: number; y: number }) => ({ x: move.x - c * x - s * y, y: move.y - s * x + c * y });
    const twin = (angleDeg: number) =>
      changed({ folds: [{ from: onSecond(fold.to), to: onSecond(fold.from), angleDeg }] });
    const folded = { ...first, folds: [fold] };
    expect(typeof readTurned(folded, twin(30.4), seams)).toBe('object');
    expect(readTurned(folded, twin(31), seams)).toBe('a fold differs by 1.0°');
  });
});
