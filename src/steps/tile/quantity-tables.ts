import { formatMm, formatNumber } from '../../base/format-length.ts';
import type { FinishPlan } from '../../model/finish.ts';
import type { FoamQuantity, Quantities } from '../../model/quantities.ts';
import { volumeText } from './finish-words.ts';
import type { Flow } from './flow.ts';
import { TYPE_MM } from './pen.ts';
import { CELL_GAP_MM, rowItem } from './table-row.ts';
import { wrapText } from './text-fit.ts';

/** Widths of the columns for figures, mm; the first column has the rest. */
const FIGURES_MM = [22, 42, 26];

/** What is bought and what the prop comes to, each in a row: what, how much, for what, what it costs. */
export function putQuantities(
  flow: Flow,
  quantities: Quantities,
  { colours, clay }: Pick<FinishPlan, 'colours' | 'clay'>,
): void {
  const {
    foams,
    glue,
    coatings,
    currency,
    cost,
    massG,
    centreOfMass,
    longestMm,
    outsideMm2,
    partsMm2 = 0,
    elsewhereG = 0,
  } = quantities;
  const money = (amount: number | undefined): string =>
    amount === undefined ? '' : `${formatNumber(amount, 2)}${currency === undefined ? '' : ` ${currency}`}`;
  const rows = [
    ...foams.map((foam) => [
      foam.name,
      sheetsText(foam),
      `${formatNumber(foam.cutMm2 / 100)} cm² of pieces`,
      money(foam.cost),
    ]),
    ...(glue.ml === 0
      ? []
      : [
          [
            glue.glue.name,
            volumeText(glue.ml),
            `${formatNumber((glue.edgesMm2 + glue.laidMm2) / 100)} cm², both faces`,
            money(glue.cost),
          ],
        ]),
    // Without a surface that is known there is nothing to count.
    ...(outsideMm2 === 0 ? [] : coatings).map(({ coating, ml }) => [
      coating.name,
      volumeText(ml),
      `${formatNumber(outsideMm2 / 100)} cm², ${coating.coats} ×`,
      '',
    ]),
    ...colours.map(({ colour, ml, areaMm2 }) => [
      colour.name,
      volumeText(ml),
      `${formatNumber(areaMm2 / 100)} cm², ${colour.coats} ×`,
      '',
    ]),
    ...(clay === null ? [] : [[clay.clay.name, volumeText(clay.wetMl), 'wet', '']]),
  ];
  const total = cost === undefined ? [] : [['what has a price, in all', '', '', money(cost)]];
  const first = flow.width - FIGURES_MM.reduce((sum, mm) => sum + mm + CELL_GAP_MM, 0);
  const widths = [first, ...FIGURES_MM];
  flow.heading('What it takes');
  for (const row of [...rows, ...total]) {
    const cells = row.map((text, i) => wrapText(flow.say(text), TYPE_MM.body, widths[i]).slice(0, 3));
    flow.put(rowItem(cells, widths, false));
  }
  for (const { name, tooLarge } of foams) {
    if (tooLarge.length > 0)
      flow.paragraph(
        `Not counted: ${tooLarge.length === 1 ? 'a piece' : `${tooLarge.length} pieces`} for which no sheet of ${name} is large enough.`,
        {},
        0.8,
      );
  }
  if (partsMm2 > 0)
    flow.paragraph(
      `Coats are counted on ${outsideMm2 > partsMm2 ? 'the outside of the sculpts and on ' : ''}${formatNumber(partsMm2 / 100)} cm² all round the ${outsideMm2 > partsMm2 ? 'other ' : ''}parts, faces that another part covers too.${colours.length === 0 ? '' : ' Colours are counted on the sculpts alone.'}`,
      {},
      0.8,
    );
  const seams = glue.seamMm === 0 ? '' : `${formatMm(Math.round(glue.seamMm))} of seam. `;
  flow.paragraph(
    `${seams}Volumes are what the coverage on the label comes to; have a third more for brush and tin.`,
    {},
    0.8,
  );
  const [x, y, z] = (centreOfMass ?? [0, 0, 0]).map((mm) => formatNumber(mm));
  const middle =
    centreOfMass === null ? '' : `, its middle at ${x}, ${y}, ${z} mm of the ${partsMm2 > 0 ? 'prop' : 'sculpt'}`;
  const length = longestMm === 0 ? '' : `; it is ${formatMm(Math.round(longestMm))} at its longest`;
  const without =
    elsewhereG < 0.5
      ? ''
      : ` Middle and length leave out ${formatNumber(elsewhereG)} g whose place is not known: further copies of parts, and parts without a form.`;
  flow.paragraph(
    `Bare it weighs ${formatNumber(massG)} g${middle}, by the weight of foam you gave${length}.${without} Ask your event what it allows.`,
    {},
    0.8,
  );
}

/** How many sheets are bought, and how many in hand are cut. */
function sheetsText({ sheets, bought }: Pick<FoamQuantity, 'sheets' | 'bought'>): string {
  if (bought === sheets) return sheets === 1 ? '1 sheet' : `${sheets} sheets`;
  return bought === 0 ? `${sheets} in hand` : `${bought} to buy, ${sheets - bought} in hand`;
}
