import { describe, expect, it } from 'vitest';
import { foamId, seamId } from '../../../src/base/ids.ts';
import type { FoamPiece, PieceEdge } from '../../../src/model/foam-piece.ts';
import type { SeamChain } from '../../../src/model/seams.ts';
import type { EdgeRun } from '../../../src/steps/foam/edge-runs.ts';
import type { Twin } from '../../../src/steps/foam/mirror-twins.ts';
import { printedValues } from '../../../src/steps/foam/printed-values.ts';
import { revisionCode } from '../../../src/steps/foam/revision.ts';
import type { SeamCut } from '../../../src/steps/foam/seam-cuts.ts';
import { handMadeTemplate, pieceOf } from '../../support/hand-made-templates.ts';

const EDGE: PieceEdge = {
  seam: seamId('s1'),
  letter: 'A',
  side: 0,
  ring: 0,
  from: 0,
  to: 0,
  reversed: false,
  stationMm: Float64Array.of(0, 300),
  bevelDeg: Float64Array.of(12, 15),
  faceOffsetMm: Float64Array.of(0, 0),
  backOffsetMm: Float64Array.of(0, 0),
  allowanceMm: 0,
};
const RUN: EdgeRun = { chain: 0, side: 0, ring: 0, from: 0, to: 0, count: 1, reversed: false };
const CHAIN: SeamChain = {
  id: seamId('s1'),
  letter: 'A',
  kind: 'butt',
  vertices: new Uint32Array(0),
  closed: true,
  sides: [
    { patch: 0, localVertices: new Uint32Array(0) },
    { patch: 2, localVertices: new Uint32Array(0) },
  ],
  foldRad: new Float64Array(0),
  allowanceMm: 0,
  lapSide: 0,
};
const CUT: SeamCut = { joining: 'halved', sides: [], step: { faceMm: 0, backMm: 0 } };
const ROOM = { atStart: new Float64Array(0), atEnd: new Float64Array(0) };
const PIECE = pieceOf(handMadeTemplate('plate', [0, 0, 100, 0, 100, 50, 0, 50]), 4, { edges: [EDGE] });

interface Printed {
  readonly piece?: Partial<FoamPiece>;
  readonly edge?: Partial<PieceEdge>;
  readonly run?: Partial<EdgeRun>;
  readonly chain?: Partial<SeamChain>;
  readonly cut?: Partial<SeamCut>;
  readonly mate?: number;
  readonly twin?: Twin;
}

const valuesOf = ({ piece, edge, run, chain, cut, mate = 9, twin }: Printed): readonly unknown[] =>
  printedValues(
    { ...PIECE, edges: [{ ...EDGE, ...edge }], ...piece },
    [{ ...RUN, ...run }],
    [{ ...CHAIN, ...chain }],
    [{ ...CUT, ...cut }],
    [{ number: 4 }, { number: 7 }, { number: mate }],
    twin ?? null,
  );
const codeOf = (printed: Printed): string => revisionCode(valuesOf(printed));

const lap = { kind: 'lap' } as const;
const point = { x: 1, y: 2 };

describe('the code of a template', () => {
  it.each<[string, Printed]>([
    ['number', { piece: { number: 5 } }],
    ['name', { piece: { name: 'Rim' } }],
    ['how many', { piece: { quantity: 2 } }],
    ['thickness', { piece: { thicknessMm: 6 } }],
    ['foam', { piece: { foam: foamId('eva-6') } }],
    ['traced side', { piece: { tracedSide: 'back' } }],
    ['hand', { piece: { hand: 'left' } }],
    ['up', { piece: { up: { x: 0, y: 1 } } }],
    ['twin', { twin: { patch: 1, partners: new Map() } }],
    ['mate', { mate: 10 }],
    ['outline', { piece: { outline: Float64Array.of(0, 0, 100, 0, 100, 50.001, 0, 50) } }],
    ['holes', { piece: { holes: [Float64Array.of(1, 1, 2, 2, 3, 1)] } }],
    ['other outline', { piece: { otherOutline: Float64Array.of(0, 0, 100, 0, 100, 49, 0, 50) } }],
    ['other holes', { piece: { otherHoles: [Float64Array.of(1, 1, 2, 2, 3, 1)] } }],
    ['letter of an edge', { edge: { letter: 'B' } }],
    ['bevel of an edge', { edge: { bevelDeg: Float64Array.of(12, 15.001) } }],
    ['allowance of an edge', { edge: { allowanceMm: 8 } }],
    ['lap on top', { chain: { ...lap, topSide: 0 } }],
    [
      'way of a steep seam',
      { cut: { steep: { room: { face: ROOM, back: ROOM }, way: 'fill', gapMm: 1, openOn: 'face' } } },
    ],
    ['step on the face', { cut: { step: { faceMm: 2, backMm: 0 } } }],
    ['step on the back', { cut: { step: { faceMm: 0, backMm: 2 } } }],
    ['folds', { piece: { folds: [{ from: point, to: { x: 9, y: 2 }, angleDeg: 30 }] } }],
    ['marks', { piece: { marks: [] } }],
    ['scores', { piece: { scores: [] } }],
    ['places of raised sheets', { piece: { outlines: [] } }],
    ['holes at ends of darts', { piece: { tipHoles: [{ at: point, diameterMm: 3 } as never] } }],
    ['kerfs', { piece: { kerfs: { side: 'back', lines: [] } as never } }],
    ['grain', { piece: { grainRad: 0.5 } }],
    ['shrinkage along', { piece: { shrinkage: { alongPct: 2, acrossPct: 0 } } }],
    ['shrinkage across', { piece: { shrinkage: { alongPct: 0, acrossPct: 2 } } }],
  ])('changes with what is printed: %s', (_, change) => {
    expect(codeOf(change)).not.toBe(codeOf({}));
  });

  it('tells both sides of a lap apart, and either step and grain from shrinkage', () => {
    const codes = [
      codeOf({ chain: { ...lap, topSide: 0 } }),
      codeOf({ chain: { ...lap, topSide: 1 } }),
      codeOf({ cut: { step: { faceMm: 2, backMm: 0 } } }),
      codeOf({ cut: { step: { faceMm: 0, backMm: 2 } } }),
      codeOf({ piece: { grainRad: 2 } }),
      codeOf({ piece: { shrinkage: { alongPct: 2, acrossPct: 0 } } }),
      codeOf({ piece: { shrinkage: { alongPct: 0, acrossPct: 2 } } }),
    ];
    expect(new Set(codes).size).toBe(codes.length);
  });

  it('stays with what is not printed', () => {
    expect(codeOf({ piece: { bendReason: 'Other.', areaMm2: 3, findings: [], patch: 8 } })).toBe(codeOf({}));
    expect(codeOf({ chain: { topSide: 1 } })).toBe(codeOf({}));
    expect(codeOf({ chain: { allowanceMm: 0, standSide: 1 } })).toBe(codeOf({}));
    // A hundredth of what a printer shows.
    expect(codeOf({ edge: { bevelDeg: Float64Array.of(12.0001, 14.9999) } })).toBe(codeOf({}));
  });

  it('names the piece on the other side of each edge, and none beside an open one', () => {
    expect(valuesOf({})[1]).toEqual([null, 0, [9]]);
    expect(valuesOf({ run: { side: 1 } })[1]).toEqual([null, 0, [4]]);
    expect(valuesOf({ chain: { kind: 'open', sides: [CHAIN.sides[0]] } })[1]).toEqual([null, 0, [0]]);
    expect(valuesOf({ twin: { patch: 1, partners: new Map() } })[1]).toEqual([null, 7, [9]]);
  });

  it('has four characters that are not mistaken for others, and the same for the same values', () => {
    for (let number = 1; number <= 200; number += 1) {
      const code = codeOf({ piece: { number } });
      expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}$/);
      expect(code).toBe(codeOf({ piece: { number } }));
    }
  });

  it('is hardly ever that of another template', () => {
    const codes = new Set(Array.from({ length: 300 }, (_, number) => codeOf({ piece: { number } })));
    expect(codes.size).toBeGreaterThanOrEqual(299);
  });

  it('counts numbers to a thousandth, and nought once', () => {
    expect(revisionCode([1.0004])).toBe(revisionCode([1]));
    expect(revisionCode([1.0006])).not.toBe(revisionCode([1]));
    expect(revisionCode([-0.0001])).toBe(revisionCode([0]));
    expect(revisionCode([Float64Array.of(1.0004, 2)])).toBe(revisionCode([Float64Array.of(1, 2.0004)]));
    expect(revisionCode([Float64Array.of(1.0006, 2)])).not.toBe(revisionCode([Float64Array.of(1, 2)]));
    expect(revisionCode([1, 2])).not.toBe(revisionCode([2, 1]));
  });
});
