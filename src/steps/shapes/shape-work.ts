import { formatMm } from '../../base/format-length.ts';
import type { PlainDraft, PlainWork } from '../../model/plain-piece.ts';
import type { Shape, ShapePiece } from '../../model/shape.ts';
import { foamOfShape, thicknessOfPiece, type ShapeFoam } from './foam-of-shape.ts';
import { formOfShape } from './shape-form.ts';
import { linesOfPiece } from './shape-lines.ts';
import { workedSeams, type WorkedSeam } from './shape-seams.ts';
import { stepsOfShape } from './shape-steps.ts';

/**
 * A shape in foam: its pieces with their exact outlines, the order in which they are put together, and the finished foam.
 * @param asked  the foam; where the shape's own sizes name a thickness or a neutral fraction, those hold.
 * @returns work without pieces for a table of figures.
 */
export function shapeWork(shape: Shape, asked: ShapeFoam): PlainWork {
  const foam = foamOfShape(shape, asked);
  const seams = workedSeams(shape);
  const drawnAt = drawnAtOf(shape, foam);
  const keys = keysOf(shape.pieces);
  const pieces = shape.pieces.map((piece, i): PlainDraft => ({
    key: keys[i],
    name: piece.name,
    quantity: piece.quantity,
    thicknessMm: thicknessOfPiece(shape, piece, foam.thicknessMm),
    drawnAt,
    outline: piece.outline,
    holes: piece.holes,
    bend: piece.bend,
    lines: linesOfPiece(shape, piece, seams),
    notes: notesOf(shape, piece, seams, foam),
    areaMm2: piece.areaMm2,
  }));
  const keyOf = (name: string): string => keys[shape.pieces.findIndex((piece) => piece.name === name)];
  return {
    pieces,
    steps: stepsOfShape(shape, seams, foam, keyOf),
    findings: shape.warnings,
    form: pieces.length === 0 ? null : formOfShape(shape, foam),
  };
}

/** Names as keys, told apart where two come to the same. */
function keysOf(pieces: readonly ShapePiece[]): readonly string[] {
  const taken = new Set<string>();
  return pieces.map(({ name }) => {
    const plain = name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '');
    let key = plain;
    for (let again = 2; taken.has(key); again += 1) key = `${plain}-${again}`;
    taken.add(key);
    return key;
  });
}

/**
 * Where the outlines lie between back and face: what is bent is laid flat by its neutral surface, flat pieces among bent ones with it; panels
 * are as large as their face; the sheets of a blade have their size where they lie on the next, on their back.
 */
function drawnAtOf({ name, pieces }: Shape, { neutralFraction }: ShapeFoam): number {
  if (name === 'tapered_layers') return 0;
  const isBent = pieces.some(
    ({ bend, folds }) =>
      bend.kind === 'rolled' || bend.kind === 'formed' || (bend.kind === 'folded' && isOnlyBent(folds)),
  );
  return isBent ? neutralFraction : 1;
}

/** Folds without a turn are lines of a bend. */
const isOnlyBent = (folds: ShapePiece['folds']): boolean => folds.every(({ angleDeg }) => angleDeg === 0);

function notesOf(
  shape: Shape,
  piece: ShapePiece,
  seams: readonly WorkedSeam[],
  { thicknessMm, neutralFraction }: ShapeFoam,
): readonly string[] {
  const closing = seams.filter(({ isClosing, seam }) => isClosing && seam.pieces[0] === piece.name);
  const joined = seams.filter(({ isClosing, seam }) => !isClosing && seam.pieces.includes(piece.name));
  return [
    ...bendNotes(piece, neutralFraction * thicknessMm),
    ...closing.map(({ letter, seam }) => `Seam ${letter} closes on itself: ${seam.edges[0]} to ${seam.edges[1]}.`),
    ...joined.map(({ letter, seam }) => {
      const other = seam.pieces[0] === piece.name ? seam.pieces[1] : seam.pieces[0];
      return `Seam ${letter} joins ${other === piece.name ? 'the next one like it' : other}.`;
    }),
    ...(NOTES_OF[shape.name]?.(piece) ?? []),
  ];
}

const NOTES_OF: Readonly<Record<string, (piece: ShapePiece) => readonly string[]>> = {
  branch: ({ name }) =>
    name === 'hole in the body'
      ? ['Cut this opening in the body, then lay the piece aside.']
      : ['The coped end lies on the body.'],
  half_round_edging: () => ['The outline is the covered side; the round stands up from it.'],
  quarter_round_edging: () => ['The outline is the covered side; the round stands up from it.'],
};

/** @param toInside  from the neutral surface to the inside of the bend, mm. */
function bendNotes({ bend, folds, name }: ShapePiece, toInside: number): readonly string[] {
  const { kind, leastRadiusMm, greatestRadiusMm } = bend;
  if (kind === 'folded')
    return [
      isOnlyBent(folds) ? 'Keep the triangles flat and bend round what is between them.' : 'Fold along the lines.',
    ];
  if (kind === 'flat') return [];
  if (kind === 'formed')
    return [
      `Form ${name} round, warm${leastRadiusMm === undefined ? '' : `, to ${insideText(leastRadiusMm, toInside)} inside radius`}.`,
    ];
  if (leastRadiusMm === undefined || greatestRadiusMm === undefined)
    return ['Roll it round, along the lines of the bend.'];
  const [least, most] = [insideText(leastRadiusMm, toInside), insideText(greatestRadiusMm, toInside)];
  if (least === most) return [`Roll to ${least} inside radius.`];
  return leastRadiusMm <= toInside
    ? [`Roll to a point, and to ${most} inside radius at the wide end.`]
    : [`Roll to ${least} inside radius at the tight end, ${most} at the wide end.`];
}

const insideText = (neutralMm: number, toInside: number): string => formatMm(Math.max(0, neutralMm - toInside));
