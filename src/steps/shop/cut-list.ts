import { edgeNames, handCutText, sawTexts, settingText, SQUARE_DEG } from '../../base/lean-words.ts';
import { boxOfPoints, joinBoxes } from '../../geom/ring.ts';
import type { CutRow, SawRow } from '../../model/cut-row.ts';
import type { FoamPiece } from '../../model/foam-piece.ts';
import type { FoamStrip } from '../../model/foam-strip.ts';
import { edgeLeans, isPlain, type CutBeside, type PlainPiece } from '../../model/plain-piece.ts';
import { ruledText, type RuledStrip } from '../../model/ruled-strip.ts';
import type { SawTable } from '../../model/saw-settings.ts';

/** @param ruled  of what has no paper. */
export function cutRows(
  pieces: readonly FoamPiece[],
  beside: readonly CutBeside[],
  foamName: (id: string) => string,
  ruled: readonly RuledStrip[] = [],
): readonly CutRow[] {
  const besideRow = (one: CutBeside): CutRow => {
    const row = isPlain(one) ? plainRow(one, foamName) : stripRow(one, foamName);
    const strip = ruled.find(({ piece }) => piece === one.id);
    return strip === undefined ? row : { ...row, ruled: strip };
  };
  return [...pieces.map((piece) => pieceRow(piece, foamName)), ...beside.map(besideRow)];
}

function pieceRow(piece: FoamPiece, foamName: (id: string) => string): CutRow {
  const box = boxOfPoints([...piece.outline, ...piece.otherOutline]);
  const leans = piece.edges.map(({ bevelDeg, stationMm }) => ({
    deg: bevelDeg.reduce((most, one) => Math.max(most, Math.abs(one)), 0),
    mm: stationMm[stationMm.length - 1] ?? 0,
  }));
  const leaning = leans.filter(({ deg }) => deg >= SQUARE_DEG);
  return {
    number: piece.number,
    name: nameOf(piece),
    quantity: piece.quantity,
    foam: foamName(piece.foam),
    thicknessMm: piece.thicknessMm,
    widthMm: box.maxX - box.minX,
    heightMm: box.maxY - box.minY,
    areaMm2: piece.areaMm2,
    longestBevelMm: leaning.reduce((most, { mm }) => Math.max(most, mm), 0),
    steepestDeg: leaning.reduce((most, { deg }) => Math.max(most, deg), 0),
    saw: sawTexts(piece),
  };
}

function stripRow(strip: FoamStrip, foamName: (id: string) => string): CutRow {
  const leans = Math.abs(strip.bevelDeg) >= SQUARE_DEG;
  return {
    number: strip.number,
    name: strip.name,
    quantity: strip.quantity,
    foam: foamName(strip.foam),
    thicknessMm: strip.thicknessMm,
    widthMm: strip.lengthMm,
    heightMm: Math.max(strip.faceMm.max, strip.backMm.max),
    areaMm2: strip.areaMm2,
    longestBevelMm: leans ? strip.lengthMm : 0,
    steepestDeg: leans ? Math.abs(strip.bevelDeg) : 0,
    saw: leans ? [`${settingText(strip.bevelDeg)}: both long edges`] : [],
  };
}

function plainRow(piece: PlainPiece, foamName: (id: string) => string): CutRow {
  const { number, name, quantity, foam, thicknessMm, draft, faceRings, backRings, areaMm2 } = piece;
  const box = [...faceRings, ...backRings].map(boxOfPoints).reduce(joinBoxes);
  const leans = [draft.outline, ...draft.holes].flat().map(({ lengthMm, bevelDeg: { from, middle, to } }) => ({
    mm: lengthMm,
    deg: Math.max(Math.abs(from), Math.abs(middle), Math.abs(to)),
  }));
  const leaning = leans.filter(({ deg }) => deg >= SQUARE_DEG);
  return {
    number,
    name,
    quantity,
    foam: foamName(foam),
    thicknessMm,
    widthMm: box.maxX - box.minX,
    heightMm: box.maxY - box.minY,
    areaMm2,
    longestBevelMm: leaning.reduce((most, { mm }) => Math.max(most, mm), 0),
    steepestDeg: leaning.reduce((most, { deg }) => Math.max(most, deg), 0),
    saw: edgeLeans(draft),
  };
}

const nameOf = ({ name, hand }: FoamPiece): string =>
  hand === undefined || name.toLowerCase().includes(hand) ? name : `${name}, ${hand}`;

/** @param table every piece it names is among the pieces. */
export function sawRows(table: SawTable, pieces: readonly FoamPiece[]): readonly SawRow[] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const set = table.settings.flatMap(({ leanDeg, pieces: served }) =>
    served.flatMap(({ piece: id, edges }): SawRow[] => {
      const piece = byId.get(id);
      if (piece === undefined) return [];
      const letters = edges.map((i) => piece.edges[i].letter);
      return [{ setting: settingText(leanDeg), number: piece.number, name: nameOf(piece), edges: edgeNames(letters) }];
    }),
  );
  const byHand = pieces.flatMap((piece) =>
    (piece.saw?.byHand ?? []).map((cut): SawRow => {
      const { letter } = piece.edges[cut.edge];
      const edges = handCutText(letter, piece.tracedSide, cut);
      return { setting: 'by hand', number: piece.number, name: nameOf(piece), edges };
    }),
  );
  return [...set, ...byHand];
}

/** The lists as one file of comma-separated values (RFC 4180): what is cut, an empty line, how the saw is set. */
export function cutListCsv(rows: readonly CutRow[], settings: readonly SawRow[]): string {
  const one = (value: number): string => (Math.round(10 * value) / 10).toFixed(1);
  const hasRuled = rows.some(({ ruled }) => ruled !== undefined);
  const table = [
    [
      'no.',
      'piece',
      'quantity',
      'foam',
      'thickness mm',
      'width mm',
      'height mm',
      'area cm2',
      'longest bevel mm',
      'steepest bevel deg',
      'saw',
      ...(hasRuled ? ['by the ruler'] : []),
    ],
    ...rows.map((row) => [
      row.number,
      row.name,
      row.quantity,
      row.foam,
      row.thicknessMm,
      one(row.widthMm),
      one(row.heightMm),
      one(row.areaMm2 / 100),
      one(row.longestBevelMm),
      one(row.steepestDeg),
      row.saw.join('; '),
      ...(hasRuled ? [row.ruled === undefined ? '' : ruledText(row.ruled, 'mm')] : []),
    ]),
    [],
    ['set the saw to', 'no.', 'piece', 'edges'],
    ...settings.map(({ setting, number, name, edges }) => [setting, number, name, edges]),
  ];
  return `${table.map((cells) => cells.map(csvCell).join(',')).join('\r\n')}\r\n`;
}

/** A cell as RFC 4180 wants it. Names that a spreadsheet would take for a formula get an apostrophe before them. */
function csvCell(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const text =
    /^\s*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/.test(value) && !/^-?\d+(\.\d+)?$/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
