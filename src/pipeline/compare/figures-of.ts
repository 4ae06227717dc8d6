import type { Ring } from '../../geom/ring.ts';
import type { FoamFigures, PieceFigures, VersionFigures, Worst } from '../../model/comparison.ts';
import type { FlatPiece } from '../../model/flat-piece.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import { isPlain, type CutBeside } from '../../model/plain-piece.ts';
import { besideOf, stoppedIn, type Outcome } from '../outcome.ts';

/** What a finished run came to, and its pieces. */
export interface MadeFigures {
  readonly figures: VersionFigures;
  readonly pieces: readonly PieceFigures[];
}

/** The figures that two states of a project are judged by. */
export function figuresOf(outcome: Outcome): MadeFigures {
  const pieces = piecesOf(outcome);
  const seams = (outcome.seams ?? []).filter(({ kind }) => kind !== 'open');
  const fits = outcome.sculpts.flatMap(({ dryFit }) => dryFit?.perSeam ?? []);
  const foams = foamsOf(outcome, pieces);
  const of = ({ number, name }: PieceFigures): string => `${number} ${name}`;
  return {
    pieces,
    figures: {
      stopped: stoppedIn(outcome)?.problem.text ?? null,
      pieces: pieces.length,
      cuts: pieces.reduce((sum, { quantity }) => sum + quantity, 0),
      foams,
      sheets: outcome.sheets?.sheets.length ?? 0,
      pages: outcome.paper?.pages.length ?? 0,
      seams: seams.length,
      seamMm: seams.reduce((sum, { trueLengthMm }) => sum + trueLengthMm, 0),
      stretch: worstOf(pieces, ({ stretchPct }) => stretchPct, of),
      squash: worstOf(pieces, ({ squashPct }) => squashPct, of),
      gap: worstOf(fits, ({ worstGapMm }) => worstGapMm, letterOf),
      overlap: worstOf(fits, ({ worstOverlapMm }) => worstOverlapMm, letterOf),
      slip: worstOf(seams, ({ worstSlipMm }) => worstSlipMm, letterOf),
      bevel: worstOf(seams, ({ bevelDeg: { min, max } }) => Math.max(Math.abs(min), Math.abs(max)), letterOf),
      warnings: outcome.findings.filter(({ severity }) => severity !== 'note').length,
    },
  };
}

const letterOf = ({ letter }: { readonly letter: string }): string => letter;

/** The greatest, the first of those alike; null where nothing has the figure. */
function worstOf<T>(all: readonly T[], value: (one: T) => number | null, at: (one: T) => string): Worst | null {
  let worst: Worst | null = null;
  for (const one of all) {
    const own = value(one);
    if (own !== null && (worst === null || own > worst.value)) worst = { value: own, at: at(one) };
  }
  return worst;
}

function piecesOf(outcome: Outcome): readonly PieceFigures[] {
  const names = new Map(outcome.project.foams.map(({ id, name }) => [String(id), name]));
  const nameOf = (foam: string): string => names.get(foam) ?? foam;
  const flats = flatsOf(outcome);
  return [
    ...(outcome.pieces ?? []).map((piece) => ofSculpt(piece, flats.get(piece.id) ?? null, nameOf)),
    ...besideOf(outcome).map((piece) => beside(piece, nameOf)),
  ];
}

/** Each piece of a sculpt as it was laid flat, by its id. */
function flatsOf({ sculpts }: Outcome): ReadonlyMap<string, FlatPiece | null> {
  const layers = sculpts.flatMap((own) => [...own.layers, ...own.raised]);
  return new Map(
    layers.flatMap(({ pieces, flats }) =>
      (pieces ?? []).map(({ id, patch }): [string, FlatPiece | null] => [id, flats?.[patch] ?? null]),
    ),
  );
}

function ofSculpt(piece: FoamPiece, flat: FlatPiece | null, nameOf: (foam: string) => string): PieceFigures {
  const { id, number, name, foam, thicknessMm, quantity, revision, areaMm2, outline, holes } = piece;
  return {
    id,
    number,
    name,
    foam: nameOf(foam),
    thicknessMm,
    quantity,
    revision,
    areaMm2,
    stretchPct: flat?.stretchPct.max ?? null,
    squashPct: flat?.squashPct.max ?? null,
    rings: [outline, ...holes],
  };
}

function beside(piece: CutBeside, nameOf: (foam: string) => string): PieceFigures {
  const { id, number, name, foam, thicknessMm, quantity, revision, areaMm2 } = piece;
  const rings = isPlain(piece) ? piece.faceRings : [boxRing(piece.lengthMm, piece.faceMm.max)];
  const figures = { id, number, name, foam: nameOf(foam), thicknessMm, quantity, revision, areaMm2, rings };
  return { ...figures, stretchPct: null, squashPct: null };
}

const boxRing = (widthMm: number, heightMm: number): Ring =>
  Float64Array.of(0, 0, widthMm, 0, widthMm, heightMm, 0, heightMm);

function foamsOf({ project, sheets, pieces, ...rest }: Outcome, figures: readonly PieceFigures[]): FoamFigures[] {
  const foamOf = new Map<string, string>(
    [...(pieces ?? []), ...besideOf(rest)].map(({ id, foam }) => [String(id), String(foam)]),
  );
  return project.foams
    .map(({ id, name, thicknessMm }) => {
      const own = figures.filter((piece) => foamOf.get(piece.id) === String(id));
      return {
        id: String(id),
        name,
        thicknessMm,
        areaMm2: own.reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0),
        sheets: sheets?.sheets.filter(({ foam }) => foam === id).length ?? 0,
      };
    })
    .filter(({ areaMm2, sheets: count }) => areaMm2 > 0 || count > 0);
}
