import { formatMm, formatPlain } from '../../base/format-length.ts';
import type { PlainStep } from '../../model/plain-piece.ts';
import type { Shape, ShapePiece } from '../../model/shape.ts';
import { ringArea } from './pieces.ts';
import type { ShapeFoam } from './foam-of-shape.ts';
import type { WorkedSeam } from './shape-seams.ts';

const GLUE = ['adhesive'];
const WARM = ['heat', 'glue-then-heat'];
const SAND = ['dust', 'machines'];

/**
 * The order in which a shape is put together: pieces are brought into their form, close on themselves, are joined, and then stacked, wrapped or
 * wound. Glue of a seam: its length times the width of the cut, t / cos(bevel), on both sides; of sheets on each other: what they share, on both.
 */
export function stepsOfShape(
  shape: Shape,
  seams: readonly WorkedSeam[],
  foam: ShapeFoam,
  keyOf: (name: string) => string,
): readonly PlainStep[] {
  const { pieces } = shape;
  if (shape.name === 'tapered_layers' || isLayered(shape)) return stackSteps(shape, keyOf);
  const formed = pieces.flatMap((piece) => formStep(piece, keyOf));
  const seamStep = (one: WorkedSeam): PlainStep => ofSeam(one, shape, foam, keyOf);
  const closing = seams.filter(({ isClosing }) => isClosing).map(seamStep);
  const joining = seams.filter(({ isClosing }) => !isClosing).map(seamStep);
  return [...formed, ...closing, ...joining, ...(LAST_STEPS[shape.name]?.(shape, foam, keyOf) ?? [])];
}

const isLayered = ({ name }: Shape): boolean => name.endsWith('_layers');

function formStep({ name, quantity, bend, folds }: ShapePiece, keyOf: (name: string) => string): readonly PlainStep[] {
  const what = quantity === 1 ? name : `each of the ${quantity} pieces ${name}`;
  const step = (work: PlainStep['work'], text: string, cautions: readonly string[]): PlainStep[] => [
    { work, pieces: [keyOf(name)], text, glueMm2: 0, cautions },
  ];
  switch (bend.kind) {
    case 'flat':
      return [];
    case 'rolled':
      return name === 'strip' || name === 'hole in the body' ? [] : step('roll', `Roll ${what} round.`, WARM);
    case 'formed':
      return step('form', `Warm ${what} and form it round.`, WARM);
    case 'folded': {
      const isBent = folds.every(({ angleDeg }) => angleDeg === 0);
      return isBent
        ? step('roll', `Bend ${what} round between its flat parts.`, WARM)
        : step('fold', `Fold ${what} along its ${count(folds.length, 'line')}.`, []);
    }
  }
}

function ofSeam(
  { seam, letter, isClosing, count: times, widening }: WorkedSeam,
  shape: Shape,
  { thicknessMm }: ShapeFoam,
  keyOf: (name: string) => string,
): PlainStep {
  const lengthMm = Math.max(...seam.lengthMm);
  const [a, b] = seam.pieces;
  const [first, second] = seam.edges;
  const long = times === 1 ? formatMm(lengthMm) : `${times} times ${formatMm(lengthMm)}`;
  const text = isClosing
    ? `Close ${a} on itself along seam ${letter}, ${first} to ${second}: ${long}.`
    : `Join ${a === b ? `one ${a} to the next` : `${a} and ${b}`} along seam ${letter}: ${long}.`;
  const glueMm2 = 2 * times * lengthMm * (profileWidth(shape) ?? thicknessMm * widening);
  const pieces = [...new Set([keyOf(a), keyOf(b)])];
  return { work: isClosing ? 'close' : 'join', pieces, text, glueMm2, cautions: glueMm2 > 0 ? GLUE : [] };
}

const figure = ({ measures }: Shape, name: string): number | null => {
  const value = measures.find((one) => one.name === name)?.value;
  return typeof value === 'number' ? value : null;
};

/** Edging has no cut as high as its sheet but its profile: area over width, mm. */
function profileWidth(shape: Shape): number | null {
  const [area, width] = [figure(shape, 'profile_area'), figure(shape, 'profile_width')];
  return area === null || width === null ? null : area / width;
}

/** Sheets lie on each other in the order of their pieces, about one middle: they share what is inside the smaller outline and outside the larger hole. */
function stackSteps({ name, pieces, measures }: Shape, keyOf: (name: string) => string): readonly PlainStep[] {
  const sanded = measures.find((one) => one.name === 'sanded_volume')?.value;
  const stacked = pieces.slice(1).map((piece, i): PlainStep => {
    const below = pieces[i];
    const shared = Math.max(0, Math.min(outside(piece), outside(below)) - Math.max(inside(piece), inside(below)));
    return {
      work: 'stack',
      pieces: [keyOf(below.name), keyOf(piece.name)],
      text: `Glue ${piece.name} on ${below.name}${name === 'tapered_layers' ? ', middle on middle' : ', centred'}.`,
      glueMm2: 2 * shared,
      cautions: GLUE,
    };
  });
  // A blade's edges are cut on its slope and leave no steps.
  if (name === 'tapered_layers' || typeof sanded !== 'number' || Math.abs(sanded) < 1) return stacked;
  const volume = `${formatPlain(Math.abs(sanded) / 1000)} cm³`;
  const text = sanded > 0 ? `Sand the steps away: ${volume}.` : `Fill the steps and sand them: ${volume}.`;
  const last: PlainStep = {
    work: sanded > 0 ? 'sand' : 'fill',
    pieces: pieces.map((one) => keyOf(one.name)),
    text,
    glueMm2: 0,
    cautions: SAND,
  };
  return [...stacked, last];
}

const inside = ({ holes }: ShapePiece): number => holes.reduce((sum, hole) => sum - ringArea(hole), 0);
const outside = (piece: ShapePiece): number => piece.areaMm2 + inside(piece);

type LastSteps = (shape: Shape, foam: ShapeFoam, keyOf: (name: string) => string) => readonly PlainStep[];

/** What comes after the seams. */
const LAST_STEPS: Readonly<Record<string, LastSteps>> = {
  wrap: ({ pieces }, { thicknessMm, neutralFraction }, keyOf) =>
    pieces.slice(1).map((piece, i): PlainStep => {
      const below = pieces[i];
      const girth = below.outline[0].lengthMm + 2 * Math.PI * (1 - neutralFraction) * thicknessMm;
      return {
        work: 'wrap',
        pieces: [keyOf(below.name), keyOf(piece.name)],
        text: `Wrap ${piece.name} round ${below.name}, its seam turned away from the last.`,
        glueMm2: 2 * girth * below.outline[1].lengthMm,
        cautions: GLUE,
      };
    }),
  branch: ({ pieces }, { thicknessMm }, keyOf) => {
    const cope = pieces[0].outline.find(({ name }) => name === 'cope');
    const lengthMm = cope?.lengthMm ?? 0;
    return [
      {
        work: 'join',
        pieces: [keyOf('branch')],
        text: `Set the branch on the body along its coped end: ${formatMm(lengthMm)}.`,
        glueMm2: 2 * lengthMm * thicknessMm,
        cautions: GLUE,
      },
    ];
  },
  helical_strip: windSteps,
  tapered_helical_strip: windSteps,
  box: (shape, { thicknessMm }, keyOf) => [
    {
      work: 'join',
      pieces: shape.pieces.map(({ name }) => keyOf(name)),
      text: `Glue the slabs at their corners: ${formatMm(boxSeamMm(shape))} in all.`,
      glueMm2: 2 * boxSeamMm(shape) * thicknessMm * (shape.sizes.corners === 'mitre' ? Math.SQRT2 : 1),
      cautions: GLUE,
    },
  ],
  box_joint: fingerSteps,
  comb_joint: fingerSteps,
};

function windSteps(
  { pieces: [strip], measures }: Shape,
  _: ShapeFoam,
  keyOf: (name: string) => string,
): readonly PlainStep[] {
  const turns = measures.find(({ name }) => name === 'turns')?.value;
  const text = `Wind the strip round${typeof turns === 'number' ? `, ${formatPlain(turns)} times` : ''}, its edge along the last turn.`;
  return [{ work: 'wind', pieces: [keyOf(strip.name)], text, glueMm2: 2 * strip.areaMm2, cautions: GLUE }];
}

function fingerSteps(shape: Shape, _: ShapeFoam, keyOf: (name: string) => string): readonly PlainStep[] {
  const glueMm2 = 2 * (figure(shape, 'gluing_area') ?? 0);
  const pieces = shape.pieces.map(({ name }) => keyOf(name));
  return [{ work: 'join', pieces, text: 'Glue the fingers of both slabs into each other.', glueMm2, cautions: GLUE }];
}

/** Upright corners, and those along the floor and the lid, by the inside of the slabs that meet there, mm. */
function boxSeamMm({ pieces, sizes }: Shape): number {
  const side = (name: string, i: number): number =>
    pieces.find((piece) => piece.name === name)?.outline[i].lengthMm ?? 0;
  const isMitred = sizes.corners === 'mitre';
  const upright = 4 * side('short side', 1);
  const around = isMitred
    ? 2 * (side('floor', 0) + side('floor', 1))
    : 2 * (side('long side', 0) + side('short side', 0));
  return upright + (sizes.lid === 'yes' ? 2 : 1) * around;
}

const count = (number: number, noun: string): string => (number === 1 ? `one ${noun}` : `${number} ${noun}s`);
