import { ringArea, type Ring } from '../../geom/ring.ts';
import { rad } from '../../geom/vec.ts';
import { coverageM2PerL, type Coating } from '../../model/coatings.ts';
import type { FoamPiece, FoamSeam, PieceEdge } from '../../model/foam-piece.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { Glue } from '../../model/glues.ts';
import type { CutBeside } from '../../model/plain-piece.ts';
import type { CoatingQuantity, FoamQuantity, GlueQuantity, Quantities } from '../../model/quantities.ts';
import type { SheetLayout } from '../../model/sheet.ts';
import type { ShopChoices } from '../../model/shop-choices.ts';
import type { PropMeasures } from './prop-measures.ts';

/** What quantities are counted from. */
export interface QuantityJob {
  readonly pieces: readonly FoamPiece[];
  /** What is cut beside the pieces. */
  readonly beside: readonly CutBeside[];
  /** Both faces that its steps brush with glue, together, mm²; 0 if left out. */
  readonly besideGlueMm2?: number;
  readonly seams: readonly FoamSeam[];
  readonly sheets: SheetLayout;
  /** Every foam that something is cut from. */
  readonly foams: readonly FoamSheet[];
  /** Pieces that are glued flat on another sheet. */
  readonly laid: readonly FoamPiece[];
  readonly prop: PropMeasures;
  /** As in {@link Quantities}. */
  readonly partsMm2?: number;
  readonly elsewhereG?: number;
  readonly glue: Glue;
  readonly coatings: readonly Coating[];
  readonly prices: Pick<ShopChoices, 'currency' | 'sheetPrices' | 'gluePricePerL'>;
}

const MM2_PER_M2 = 1e6;

export function quantitiesOf(job: QuantityJob): Quantities {
  const { prices, prop, coatings } = job;
  const foams = job.foams.map((foam) => foamQuantity(job, foam)).filter(({ cutMm2 }) => cutMm2 > 0);
  const glue = glueQuantity(job);
  const costs = [...foams, glue].flatMap(({ cost }) => (cost === undefined ? [] : [cost]));
  return {
    foams,
    ...(prices.currency === undefined ? {} : { currency: prices.currency }),
    ...(costs.length === 0 ? {} : { cost: costs.reduce((sum, cost) => sum + cost, 0) }),
    glue,
    coatings: coatings.map((coating) => coatingQuantity(coating, prop.outsideMm2)),
    outsideMm2: prop.outsideMm2,
    ...(job.partsMm2 === undefined ? {} : { partsMm2: job.partsMm2 }),
    massG: foams.reduce((sum, { massG }) => sum + massG, 0),
    centreOfMass: prop.centre,
    ...(job.elsewhereG === undefined ? {} : { elsewhereG: job.elsewhereG }),
    sizeMm: prop.sizeMm,
    longestMm: prop.longestMm,
  };
}

/** Sheet mass = area × thickness × density, g. */
export const massG = (areaMm2: number, thicknessMm: number, densityKgM3: number): number =>
  (areaMm2 * thicknessMm * densityKgM3) / MM2_PER_M2;

/** A coat's volume is area / coverage; ml. */
export function coatingQuantity(coating: Coating, areaMm2: number): CoatingQuantity {
  const { coats, recoatMin } = coating;
  const ml = ((areaMm2 / MM2_PER_M2) * coats * 1000) / coverageM2PerL(coating);
  return { coating, ml, dryMin: coats * recoatMin };
}

/**
 * Volume of a piece over its thickness, mm²: Simpson's rule over both skins and what lies half-way between them, which is exact where edges lean
 * straight. Skins whose points do not match, where tips were cut, count by their mean alone.
 */
export function meanAreaMm2({
  outline,
  holes,
  otherOutline,
  otherHoles,
}: Pick<FoamPiece, 'outline' | 'holes' | 'otherOutline' | 'otherHoles'>): number {
  const [own, other] = [
    [outline, ...holes],
    [otherOutline, ...otherHoles],
  ];
  // Holes run clockwise: their area is negative.
  const area = (rings: readonly Ring[]): number => rings.reduce((sum, ring) => sum + ringArea(ring), 0);
  const ends = area(own) + area(other);
  // A bevel may shut a hole on one skin, or part it.
  const areAlike = own.length === other.length && own.every((ring, i) => ring.length === other[i].length);
  if (!areAlike) return ends / 2;
  return (ends + 4 * area(own.map((ring, i) => ring.map((x, k) => (x + other[i][k]) / 2)))) / 6;
}

function foamQuantity({ pieces, beside, sheets, prices }: QuantityJob, foam: FoamSheet): FoamQuantity {
  const own = <T extends { readonly foam: string }>(things: readonly T[]): readonly T[] =>
    things.filter((thing) => thing.foam === foam.id);
  const parts = [...own(pieces).map((piece) => ({ ...piece, areaMm2: meanAreaMm2(piece) })), ...own(beside)];
  const used = own(sheets.sheets);
  const bought = used.filter(({ label }) => label === undefined).length;
  const price = prices.sheetPrices?.find((one) => one.foam === foam.id)?.price;
  const ids = new Set(parts.map(({ id }) => id));
  return {
    foam: foam.id,
    name: foam.name,
    thicknessMm: foam.thicknessMm,
    sheets: used.length,
    bought,
    sheetMm2: foam.sheetWidthMm * foam.sheetHeightMm,
    cutMm2: parts.reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0),
    massG: parts.reduce(
      (sum, { areaMm2, quantity, thicknessMm }) => sum + massG(areaMm2 * quantity, thicknessMm, foam.densityKgM3),
      0,
    ),
    ...(price === undefined ? {} : { cost: price * bought }),
    tooLarge: sheets.tooLarge.filter((id) => ids.has(id)),
  };
}

function glueQuantity({ pieces, seams, laid, glue, prices, besideGlueMm2 = 0 }: QuantityJob): GlueQuantity {
  const joined = new Map(seams.filter(({ kind }) => kind !== 'open').map((seam) => [seam.id, seam]));
  let edgesMm2 = 0;
  for (const piece of pieces) {
    for (const edge of piece.edges) {
      const seam = joined.get(edge.seam);
      if (seam !== undefined) edgesMm2 += edgeGlueMm2(piece, edge, seam) * piece.quantity;
    }
  }
  // The face that is laid, and what it is laid on.
  const laidMm2 =
    besideGlueMm2 + laid.reduce((sum, { surfaceAreaMm2, quantity }) => sum + 2 * surfaceAreaMm2 * quantity, 0);
  const ml = ((edgesMm2 + laidMm2) / MM2_PER_M2 / glue.coverageM2PerL) * 1000;
  return {
    glue,
    seamMm: [...joined.values()].reduce((sum, { trueLengthMm }) => sum + trueLengthMm, 0),
    edgesMm2,
    laidMm2,
    ml,
    ...(prices.gluePricePerL === undefined ? {} : { cost: (prices.gluePricePerL * ml) / 1000 }),
  };
}

/** What is brushed along one side of a seam, mm²: the cut, `t / cos(bevel)` wide; of a lap, what lies on the other piece. */
export function edgeGlueMm2(
  { thicknessMm }: Pick<FoamPiece, 'thicknessMm'>,
  { stationMm, bevelDeg }: Pick<PieceEdge, 'stationMm' | 'bevelDeg'>,
  { kind, allowanceMm }: Pick<FoamSeam, 'kind' | 'allowanceMm'>,
): number {
  const widthAt = (i: number): number => (kind === 'lap' ? allowanceMm : thicknessMm / Math.cos(rad(bevelDeg[i])));
  let area = 0;
  for (let i = 1; i < stationMm.length; i += 1)
    area += ((stationMm[i] - stationMm[i - 1]) * (widthAt(i - 1) + widthAt(i))) / 2;
  return area;
}
