import type { Finding } from '../base/finding.ts';
import type { Stepwise } from '../base/stepwise.ts';
import { BEND_LIMITS } from '../model/bend-check.ts';
import { coatingsInForce } from '../model/coatings.ts';
import type { CutRow, SawRow } from '../model/cut-row.ts';
import type { FoamPiece } from '../model/foam-piece.ts';
import type { FoamSheet } from '../model/foam-stock.ts';
import { FIRST_GLUE } from '../model/glues.ts';
import { checkGluingPlan, type GluingPlan } from '../model/gluing.ts';
import type { PlainWork } from '../model/plain-piece.ts';
import { checkQuantities, type Quantities } from '../model/quantities.ts';
import { assemblyOrder } from '../steps/dryfit/assembly-order.ts';
import { sawTable } from '../steps/foam/saw-table.ts';
import { cutRows, sawRows } from '../steps/shop/cut-list.ts';
import { gluingPlan, type SheetToGlue } from '../steps/shop/gluing-plan.ts';
import { laidSteps, netSteps } from '../steps/shop/gluing-steps.ts';
import { propMeasures, type PlateInPlace } from '../steps/shop/prop-measures.ts';
import { quantitiesOf } from '../steps/shop/quantities.ts';
import { seamNet } from '../steps/shop/seam-net.ts';
import { finishSteps, type Finish } from './finish.ts';
import { besideOf, stoppedIn, type LayerOutcome, type Outcome, type SculptOutcome } from './outcome.ts';
import { inAssembly } from './sculpts-in-place.ts';
import { shopForms } from './shop-forms.ts';
import { areasOf, sheetOrderSteps, type OrderedSheet } from './shop-order.ts';

/** What lies beside the work: made from a finished outcome, never saved. */
export interface ShopPlan {
  readonly gluing: GluingPlan;
  readonly quantities: Quantities;
  readonly finish: Finish;
  readonly cutRows: readonly CutRow[];
  readonly sawRows: readonly SawRow[];
  readonly findings: readonly Finding[];
}

/** Whether a chain has run to its end and every patch of every sheet has become a piece that can be laid flat: else there is no plan. */
export function isWhole(outcome: Outcome): boolean {
  const { pieces, seams, sheets, sculpts, findings } = outcome;
  if (findings.some(({ severity, code }) => severity === 'error' && /^(cut|flatten)\//.test(code))) return false;
  if (stoppedIn(outcome) !== null || pieces === null || seams === null || sheets === null) return false;
  return sculpts
    .flatMap(({ layers, raised }) => [...layers, ...raised])
    .every((layer) => layer.cut !== null && layer.pieces?.length === layer.cut.patches.length);
}

/** Plans by what they were made from. */
const KNOWN = new WeakMap<Outcome, ShopPlan>();

/**
 * What lies beside the work; worked out once for an outcome.
 * @throws Error where the chain has not run to its end: ask {@link isWhole} first.
 */
export function* shopPlanSteps(outcome: Outcome): Stepwise<ShopPlan> {
  const known = KNOWN.get(outcome);
  if (known !== undefined) return known;
  const plan = yield* planSteps(outcome);
  KNOWN.set(outcome, plan);
  return plan;
}

function* planSteps(outcome: Outcome): Stepwise<ShopPlan> {
  const { project, sculpts, pieces, sheets, seams } = outcome;
  const beside = besideOf(outcome);
  const { glue = FIRST_GLUE, ...prices } = project.shop ?? {};
  const foamOf = (id: string): FoamSheet => need(project.foams.find((foam) => foam.id === id));
  const toGlue: SheetToGlue[] = [];
  const findings: Finding[] = [];
  for (const own of sculpts) {
    const sculpt = sculpts.length === 1 ? {} : { sculpt: { part: own.part.id, name: own.part.name } };
    for (const sheet of yield* sheetsToGlue(own, foamOf, findings)) toGlue.push({ ...sheet, ...sculpt });
  }
  yield;
  const gluing = gluingPlan(toGlue, glue);
  checkGluingPlan(gluing);
  yield;
  const finish = yield* finishSteps(outcome, gluing);
  findings.push(...finish.findings);
  const all = need(pieces);
  const { forms, elsewhereG, surfaceMm2 } = shopForms(outcome.plain, foamOf);
  const quantities = quantitiesOf({
    pieces: all,
    beside,
    besideGlueMm2: outcome.plain.reduce((sum, { part, work }) => sum + part.copies * glueOf(work), 0),
    seams: need(seams),
    sheets: need(sheets),
    foams: project.foams,
    laid: sculpts.flatMap((own) =>
      fromInside(own)
        .slice(1)
        .flatMap((layer) => need(layer.pieces)),
    ),
    // What a sheet that is laid on it covers is not coated.
    prop: {
      ...propMeasures([...platesOf(outcome, foamOf)], forms),
      outsideMm2: finish.plan.outsideMm2 + surfaceMm2,
    },
    ...(surfaceMm2 === 0 ? {} : { partsMm2: surfaceMm2 }),
    ...(elsewhereG === 0 ? {} : { elsewhereG }),
    glue,
    coatings: coatingsInForce(project.shop ?? {}),
    prices,
  });
  checkQuantities(quantities);
  return {
    gluing,
    quantities,
    finish,
    cutRows: cutRows(all, beside, (id) => foamOf(id).name, outcome.paper?.ruled),
    sawRows: sawRows(sawTable(all), all),
    findings,
  };
}

/** Sheets from the inside of the wall outward, and then what is laid on it. */
const fromInside = ({ layers, raised }: SculptOutcome): readonly LayerOutcome[] => [...layers.toReversed(), ...raised];

/** The sheets of a sculpt as they are glued. @param findings  what is found is added. */
function* sheetsToGlue(
  own: SculptOutcome,
  foamOf: (id: string) => FoamSheet,
  findings: Finding[],
): Stepwise<readonly SheetToGlue[]> {
  const limitsOf = ({ foam: id }: FoamPiece): ReturnType<SheetToGlue['limitsOf']> => {
    const { stretchLimits: stretch, bendLimits: bend = BEND_LIMITS } = foamOf(id);
    return { stretch, bend };
  };
  const sheets: SheetToGlue[] = [];
  for (const [i, layer] of fromInside(own).entries()) {
    const { chains, patches, shell } = need(layer.cut);
    const base = {
      sheet: layer.plan.sheet,
      chains,
      positions: shell.neutralPositions,
      pieces: need(layer.pieces),
      seams: need(layer.seams),
      limitsOf,
    };
    if (i > 0) {
      const net = seamNet(chains, patches, shell.neutralPositions);
      sheets.push({ ...base, net, steps: laidSteps(net, layOrder(layer)) });
      continue;
    }
    const { net, order, findings: told }: OrderedSheet = yield* sheetOrderSteps(layer, own.part.gluing);
    findings.push(...told);
    sheets.push({ ...base, net, steps: netSteps(net, order, areasOf(layer)) });
  }
  return sheets;
}

/** Patches of a sheet in the order in which they are laid. */
function layOrder({ pieces, seams }: LayerOutcome): readonly number[] {
  const own = need(pieces);
  const places = assemblyOrder(
    own.map(({ id, areaMm2 }) => ({ id, areaMm2 })),
    need(seams).map(({ pieces: ids, trueLengthMm }) => ({ pieces: ids, lengthMm: trueLengthMm })),
  );
  return own
    .map(({ patch }, i) => ({ patch, place: places[i] }))
    .sort((a, b) => a.place - b.place)
    .map(({ patch }) => patch);
}

/** Every piece in its place; the outermost sheet of a wall is what is seen, and what is laid on it. */
function* platesOf({ sculpts }: Outcome, foamOf: (id: string) => FoamSheet): Iterable<PlateInPlace> {
  for (const { part, layer } of sculpts.flatMap(({ part, layers, raised }) =>
    [...layers, ...raised].map((layer) => ({ part, layer })),
  )) {
    const place = inAssembly(sculpts, part);
    const { patches, shells } = need(layer.cut);
    for (const { patch, foam } of need(layer.pieces)) {
      const { triangles, meshVertices } = patches[patch];
      const skin = (positions: Float64Array): Float64Array => {
        const points = new Float64Array(3 * meshVertices.length);
        meshVertices.forEach((v, i) => points.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
        return points;
      };
      yield {
        ...place({
          triangles,
          face: skin(shells[patch].facePositions),
          back: skin(shells[patch].backPositions),
        }),
        densityKgM3: foamOf(foam).densityKgM3,
        isOutside: layer.plan.sheet <= 1,
      };
    }
  }
}

/** Both faces that the steps of one such part brush with glue, mm². */
const glueOf = (work: PlainWork | null): number => (work?.steps ?? []).reduce((sum, { glueMm2 }) => sum + glueMm2, 0);

function need<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('shop: the chain has not run to its end');
  return value;
}
