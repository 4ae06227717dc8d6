import { formatFine, formatLength, formatNumber, formatPercent, type LengthUnit } from '../../base/format-length.ts';
import { DRY_FIT_MM } from '../../base/tolerance.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { Project } from '../../project/project.ts';
import { ruleOf } from '../../project/shop-rules.ts';
import { chainIndex, pieceIndex, type Bench } from '../bench-state.ts';
import { toldText } from '../finding-text.ts';
import { NOTHING, type Choice, type Pointed } from '../view-state.ts';
import { WORDS } from '../words.ts';
import { figureScale, N_PER_CM } from './figure-scale.ts';
import type { FigureKind } from './figures.ts';
import { LEGEND_WORDS } from './legend-words.ts';

/** One figure with its limit and its place. */
export interface FigureRow {
  /** Piece, seam or core. */
  readonly name: string;
  /** In the unit of the scale; what is worse is greater. */
  readonly figure: number;
  readonly figureText: string;
  readonly limit: number;
  readonly limitText: string;
  readonly where: string;
  readonly isOver: boolean;
  readonly choice: Choice;
  readonly pointed: Pointed;
}

/** What the table is made of. */
export interface TableGround {
  readonly project: Project | null;
  readonly bench: Bench;
  /** Of the wall, 1 the outermost. */
  readonly sheet: number;
  readonly unit: LengthUnit;
}

/** Figures smaller than this are not worth a line: per cent. */
const LEAST_PCT = 0.05;

/** The figures that colours show as lines, the worst first. */
export function tableRows(kind: FigureKind, ground: TableGround): readonly FigureRow[] {
  return ROWS[kind](ground).toSorted((one, other) => other.figure - one.figure);
}

const ROWS: Readonly<Record<FigureKind, (ground: TableGround) => readonly FigureRow[]>> = {
  stretch: (ground) => pieces(ground).flatMap((piece) => stretchRows(piece, ground)),
  bend: (ground) => pieces(ground).flatMap((piece) => bendRows(piece, ground)),
  room: roomRows,
  pull: pullRows,
  fit: fitRows,
};

const pieces = ({ bench }: TableGround): readonly FoamPiece[] => bench.pieces?.pieces ?? [];

const nameOf = ({ number, name }: FoamPiece): string => WORDS.chosen.piece(number, name);

const foamOf = ({ project }: TableGround, piece: FoamPiece) => project?.foams.find(({ id }) => id === piece.foam);

function stretchRows(piece: FoamPiece, ground: TableGround): readonly FigureRow[] {
  const { table } = LEGEND_WORDS;
  const { bench } = ground;
  const foam = foamOf(ground, piece);
  const limit = foam === undefined ? Infinity : ruleOf(foam, 'stretchTooMuchPct');
  const patch = bench.pieces?.patches[piece.patch];
  const base = {
    name: nameOf(piece),
    limit,
    limitText: formatPercent(limit, 0),
    choice: { kind: 'piece', piece: piece.id } as const,
  };
  const row = (give: 'stretch' | 'squash', figure: number, where: string, pointed: Pointed): FigureRow => ({
    ...base,
    figure,
    figureText: table[give](formatPercent(figure)),
    where,
    isOver: figure > limit,
    pointed,
  });
  if (piece.spots !== undefined && piece.spots.length > 0)
    return piece.spots.map(({ kind, percent, placeText, meshTriangle }) =>
      row(kind, percent, toldText(placeText, 'mm'), cornerOf(bench, meshTriangle)),
    );
  const whole = { pieces: [pieceIndex(bench, piece.id)] };
  return (['stretch', 'squash'] as const).flatMap((give) => {
    const most = patch?.[`${give}Spread`]?.max ?? 0;
    return most < LEAST_PCT ? [] : [row(give, most, table.all, whole)];
  });
}

/** A corner has a dot wherever its piece is now; a triangle of a fine sculpt would be too small to see. */
function cornerOf({ sculpt }: Bench, triangle: number): Pointed {
  const corner = sculpt?.triangles[3 * triangle];
  return { triangles: [triangle], ...(corner === undefined ? {} : { vertices: [corner] }) };
}

function bendRows(piece: FoamPiece, ground: TableGround): readonly FigureRow[] {
  const { bend } = piece;
  if (bend === undefined) return [];
  const foam = foamOf(ground, piece);
  const limit = foam === undefined ? Infinity : ruleOf(foam, 'bendTooMuchPct');
  const figure = Math.max(bend.outsidePct, bend.insidePct);
  return [
    {
      name: nameOf(piece),
      figure,
      figureText: formatPercent(figure),
      limit,
      limitText: formatPercent(limit, 0),
      where: LEGEND_WORDS.table.radius(formatLength(bend.radiusMm, ground.unit)),
      isOver: figure > limit,
      choice: { kind: 'piece', piece: piece.id },
      pointed: { pieces: [pieceIndex(ground.bench, piece.id)], point: bend.point },
    },
  ];
}

/** Room that is missing is worse, so it sorts by what is missing. */
function roomRows({ bench, unit }: TableGround): readonly FigureRow[] {
  return (bench.bodyFit?.cores ?? []).flatMap(({ core, tightest }): FigureRow[] => {
    if (tightest === null) return [];
    const { clearanceMm, point } = tightest;
    const wanted = core.roomMm ?? 0;
    return [
      {
        name: core.name,
        figure: -clearanceMm,
        figureText: LEGEND_WORDS.reading.room(formatFine(Math.abs(clearanceMm), unit), clearanceMm < 0),
        limit: wanted,
        limitText: formatLength(wanted, unit),
        where: LEGEND_WORDS.table.tightest,
        isOver: clearanceMm < wanted,
        choice: NOTHING,
        pointed: { point: [point.x, point.y, point.z] },
      },
    ];
  });
}

function pullRows(ground: TableGround): readonly FigureRow[] {
  const { bench, project, sheet } = ground;
  const { limit } = figureScale('pull', project, bench, sheet);
  return (bench.springing?.seams ?? []).map(({ seam, letter, pullNPerMm, way }) => {
    const figure = N_PER_CM * pullNPerMm;
    return {
      name: WORDS.springing.seam(letter),
      figure,
      figureText: LEGEND_WORDS.pull(formatNumber(figure, 1)),
      limit,
      limitText: LEGEND_WORDS.pull(formatNumber(limit, 0)),
      where: WORDS.springing.way(way),
      isOver: figure > limit,
      choice: { kind: 'seam', seam },
      pointed: { seams: [chainIndex(bench, seam)] },
    };
  });
}

function fitRows({ bench, unit }: TableGround): readonly FigureRow[] {
  const named = (id: string): string => {
    const piece = bench.pieces?.pieces.find((one) => one.id === id);
    return piece === undefined ? '' : nameOf(piece);
  };
  return (bench.dryFit?.perSeam ?? []).map(({ seam, letter, worstGapMm, worstOverlapMm, pieces: [one, other], at }) => {
    const figure = Math.max(worstGapMm, worstOverlapMm);
    const text = formatFine(figure, unit);
    return {
      name: WORDS.chosen.seam(letter),
      figure,
      figureText: worstOverlapMm > worstGapMm ? LEGEND_WORDS.overlap(text) : LEGEND_WORDS.gap(text),
      limit: DRY_FIT_MM,
      limitText: formatFine(DRY_FIT_MM, unit),
      where: one === other ? named(one) : LEGEND_WORDS.table.between(named(one), named(other)),
      isOver: figure > DRY_FIT_MM,
      choice: { kind: 'seam', seam },
      pointed: { seams: [chainIndex(bench, seam)], point: at },
    };
  });
}
