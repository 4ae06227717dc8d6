import { describe, expect, it } from 'vitest';
import { rad } from '../../../src/geom/vec.ts';
import type { FoamPiece } from '../../../src/model/foam-piece.ts';
import type { LineRole, Template } from '../../../src/model/template.ts';
import { grooveLines } from '../../../src/steps/foam/groove-lines.ts';
import { makeTemplate } from '../../../src/steps/foam/make-template.ts';
import { columnEdges, foamOf, hingeMesh, partedAlong, ringEdges, turnedMesh, type Parted } from './support.ts';

const SIX_MM = { thicknessMm: 6, modelIs: 'middle' } as const;

function drawn(parted: Parted, tracedSide: 'face' | 'back'): { piece: FoamPiece; template: Template }[] {
  const { pieces, seams } = foamOf(parted, { tracedSide });
  return pieces.map((piece) => ({
    piece,
    template: makeTemplate(piece, seams, { projectName: 'lantern', foamName: 'EVA 6 mm' }),
  }));
}

const linesOf = ({ drawing }: Template, wanted: LineRole = 'groove'): number[][] =>
  drawing.strokes.filter(({ role }) => role === wanted).map(({ points }) => [...points]);

const textOf = ({ drawing }: Template): string => drawing.words.map(({ text }) => text).join(' ');

/** Distance from a point to the nearest side of the rings, mm. */
function toRings(rings: readonly Float64Array[], x: number, y: number): number {
  let least = Infinity;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const j = (i + 2) % ring.length;
      const [ex, ey] = [ring[j] - ring[i], ring[j + 1] - ring[i + 1]];
      const along = ((x - ring[i]) * ex + (y - ring[i + 1]) * ey) / (ex * ex + ey * ey);
      const share = Math.min(1, Math.max(0, along));
      least = Math.min(least, Math.hypot(x - ring[i] - share * ex, y - ring[i + 1] - share * ey));
    }
  }
  return least;
}

describe('grooves on a template', () => {
  // A fold of 45 degrees in 6 mm: 2 * (6 - 1.5) * tan 22.5 = 3.727922 wide.
  it('are two lines half a width either side of the fold, from edge to edge, where they are cut from the printed side', () => {
    for (const [fold, side] of [
      [45, 'back'],
      [-45, 'face'],
    ] as const) {
      const [{ piece, template }] = drawn(partedAlong(hingeMesh(rad(fold)), [], SIX_MM), side);
      const lines = linesOf(template);
      expect(lines).toHaveLength(2);
      const [centre] = template.drawing.strokes
        .filter(({ role }) => role === 'fold-in')
        .map(({ points }) => [...points]);
      const [ax, ay, bx, by] = centre;
      const asides = lines.map(
        ([x, y]) => ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay),
      );
      expect(asides.sort((p, q) => p - q)[0]).toBeCloseTo(-3.727922 / 2, 6);
      expect(asides[1]).toBeCloseTo(3.727922 / 2, 6);
      for (const [x, y, z, w] of lines) expect(Math.hypot(z - x, w - y)).toBeCloseTo(100, 9);
      expect(textOf(template)).toContain('fold in 45°, groove 3.7 mm');
      expect(textOf(template)).toContain('grooves 4.5 mm deep, leave 1.5 mm');
      expect(piece.tracedSide).toBe(side);
    }
  });

  it('are drawn as lines of their own where they are cut from behind, at the places they have on that side', () => {
    for (const [fold, front, behind] of [
      [45, 'face', 'back'],
      [-45, 'back', 'face'],
    ] as const) {
      const parted = partedAlong(hingeMesh(rad(fold)), [], SIX_MM);
      const [{ template }] = drawn(parted, front);
      expect(linesOf(template)).toEqual([]);
      expect(textOf(template)).toContain('fold out 45°, groove behind 3.7 mm');
      // Printed from the other side the same walls lie at x mirrored.
      const [other] = drawn(parted, behind);
      const mirrored = linesOf(other.template).map(([ax, ay, bx, by]) => [-ax, ay, -bx, by]);
      expect(mirrored).toHaveLength(2);
      expect(linesOf(template, 'groove-behind')).toEqual(mirrored);
    }
  });

  it('are not spoken of in a rolled piece', () => {
    const parted = partedAlong(hingeMesh(rad(45)), [], SIX_MM);
    const { pieces, seams } = foamOf(parted, { tracedSide: 'back', pieceSettings: [{ face: 0, bendStyle: 'rolled' }] });
    const template = makeTemplate(pieces[0], seams, { projectName: 'lantern', foamName: 'EVA 6 mm' });
    expect(linesOf(template)).toEqual([]);
    expect(textOf(template)).not.toContain('groove');
  });

  it('end on the line that is cut, however it slants and leans', () => {
    // A flared tube of eight sides, slit and parted round its waist: its rims slant against the folds and lean at the waist.
    const flared = turnedMesh(8, [
      [70, 0],
      [40, 60],
      [60, 120],
    ]);
    const parted = partedAlong(flared, [...columnEdges(8, 0, 2), ...ringEdges(8, 1)], SIX_MM);
    const { pieces } = foamOf(parted, { tracedSide: 'back' });
    expect(pieces).toHaveLength(2);
    for (const piece of pieces) {
      const lines = grooveLines(piece, piece.tracedSide);
      expect(piece.folds).toHaveLength(7);
      expect(lines).toHaveLength(14);
      const ends = piece.folds.flatMap(({ from, to }) => [from, to]);
      expect(Math.max(...ends.map(({ x, y }) => toRings([piece.outline], x, y)))).toBeGreaterThan(0.2);
      for (const [ax, ay, bx, by] of lines) {
        expect(toRings([piece.outline], ax, ay)).toBeLessThan(1e-9);
        expect(toRings([piece.outline], bx, by)).toBeLessThan(1e-9);
      }
    }
  });

  it('end where the other side of the foam ends, where they are cut from there', () => {
    const flared = turnedMesh(8, [
      [70, 0],
      [40, 60],
      [60, 120],
    ]);
    const parted = partedAlong(flared, [...columnEdges(8, 0, 2), ...ringEdges(8, 1)], SIX_MM);
    for (const piece of foamOf(parted, { tracedSide: 'face' }).pieces) {
      const lines = grooveLines(piece, 'back');
      expect(lines).toHaveLength(14);
      const ends = lines.flatMap(([ax, ay, bx, by]) => [
        [ax, ay],
        [bx, by],
      ]);
      for (const [x, y] of ends) expect(toRings([piece.otherOutline], x, y)).toBeLessThan(1e-9);
      expect(Math.max(...ends.map(([x, y]) => toRings([piece.outline], x, y)))).toBeGreaterThan(0.5);
    }
  });

  it('stop where their fold ends inside the piece', () => {
    const [piece] = foamOf(partedAlong(hingeMesh(rad(45)), [], SIX_MM), { tracedSide: 'back' }).pieces;
    const [fold] = piece.folds;
    const middle = { x: (fold.from.x + fold.to.x) / 2, y: (fold.from.y + fold.to.y) / 2 };
    for (const half of [
      { ...fold, to: middle },
      { ...fold, from: middle },
    ]) {
      const lines = grooveLines({ ...piece, folds: [half] }, piece.tracedSide);
      expect(lines).toHaveLength(2);
      for (const [ax, ay, bx, by] of lines) expect(Math.hypot(bx - ax, by - ay)).toBeCloseTo(50, 9);
    }
  });
});
