import { formatArea, type LengthUnit } from '../base/format-length.ts';
import type { FinishPlan } from '../model/finish.ts';
import type { Quantities } from '../model/quantities.ts';
import { dataText } from './data-words.ts';
import { QUANTITY_WORDS } from './quantity-words.ts';

/** Something the job takes. */
export interface QuantityRow {
  /** The same as long as its meaning stays. */
  readonly id: string;
  readonly what: string;
  readonly much: string;
  readonly for: string;
  readonly cost?: number | undefined;
  /** How many sheets or ml of it are bought: 0 where all is in hand. */
  readonly toBuy: number;
}

/** All that a job takes: foams, glue, coats, colours, clay. @param finish colours and clay, or null. */
export function quantityRows(
  { foams, glue, coatings, outsideMm2 }: Quantities,
  finish: FinishPlan | null,
  unit: LengthUnit,
): readonly QuantityRow[] {
  const { table, volume } = QUANTITY_WORDS;
  const area = (mm2: number): string => formatArea(mm2, unit);
  const wet = (id: string, what: string, ml: number, purpose: string, cost?: number): QuantityRow => ({
    id,
    what,
    much: volume(ml),
    for: purpose,
    cost,
    toBuy: ml,
  });
  return [
    ...foams.map(({ foam, thicknessMm, name, sheets, bought, cutMm2, cost }) => ({
      id: `foam/${foam}/${thicknessMm}`,
      what: name,
      much: table.sheets(bought, sheets - bought),
      for: table.pieces(area(cutMm2)),
      cost,
      toBuy: bought,
    })),
    ...(glue.ml === 0
      ? []
      : [wet('glue', dataText(glue.glue.name), glue.ml, table.faces(area(glue.edgesMm2 + glue.laidMm2)), glue.cost)]),
    ...coatings.map(({ coating: { id, name, coats }, ml }) =>
      wet(`coat/${id}`, dataText(name), ml, table.coats(area(outsideMm2), coats)),
    ),
    ...(finish?.colours ?? []).map(({ colour: { id, name, coats }, ml, areaMm2 }) =>
      wet(`colour/${id}`, dataText(name), ml, table.coats(area(areaMm2), coats)),
    ),
    ...(finish?.clay == null ? [] : [wet('clay', dataText(finish.clay.clay.name), finish.clay.wetMl, table.clay)]),
  ];
}
