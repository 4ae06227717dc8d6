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
import { besideOf, type LayerOutcome, type Outcome } from './outcome.ts';
import { areasOf, sheetOrderSteps } from './shop-order.ts';

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
export function isWhole({ stopped, pieces, seams, sheets, layers, raised, findings }: Outcome): boolean {
  if (findings.some(({ severity, code }) => severity === 'error' && /^(cut|flatten)\//.test(code))) return false;
  if (stopped !== null || pieces === null || seams === null || sheets === null) return false;
  return [...layers, ...raised].every(
    (layer) => layer.cut !== null && layer.pieces?.length === layer.cut.patches.length,
  );
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
  const { project, pieces, sheets, seams, layers, raised } = outcome;
  const beside = besideOf(outcome);
  const { glue = FIRST_GLUE, ...prices } = project.shop ?? {};
  const foamOf = (id: string): FoamSheet => need(project.foams.find((foam) => foam.id === id));
  // From the inside of the wall outward, and then what is laid on it.
  const inOrder = [...layers.toReversed(), ...raised];
  const toGlue: SheetToGlue[] = [];
  const findings: Finding[] = [];
  for (const [i, layer] of inOrder.entries()) {
    const limitsOf = ({ foam: id }: FoamPiece): ReturnType<SheetToGlue['limitsOf']> => {
      const { stretchLimits: stretch, bendLimits: bend = BEND_LIMITS } = foamOf(id);
      return { stretch, bend };
    };
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
      toGlue.push({ ...base, net, steps: laidSteps(net, layOrder(layer)) });
      continue;
    }
    const { net, order, findings: told } = yield* sheetOrderSteps(layer, outcome.part?.gluing);
    findings.push(...told);
    toGlue.push({ ...base, net, steps: netSteps(net, order, areasOf(layer)) });
  }
  yield;
  const gluing = gluingPlan(toGlue, glue);
  checkGluingPlan(gluing);
  yield;
  const finish = yield* finishSteps(outcome, gluing);
  findings.push(...finish.findings);
  const all = need(pieces);
  const quantities = quantitiesOf({
    pieces: all,
    beside,
    besideGlueMm2: outcome.plain.reduce((sum, { part, work }) => sum + part.copies * glueOf(work), 0),
    seams: need(seams),
    sheets: need(sheets),
    foams: project.foams,
    laid: inOrder.slice(1).flatMap((layer) => need(layer.pieces)),
    // What a sheet that is laid on it covers is not coated.
    prop: { ...propMeasures([...platesOf(outcome, foamOf)]), outsideMm2: finish.plan.outsideMm2 },
    glue,
    coatings: coatingsInForce(project.shop ?? {}),
    prices,
  });
  checkQuantities(quantities);
  return {
    gluing,
    quantities,
    finish,
    cutRows: cutRows(all, beside, (id) => foamOf(id).name),
    sawRows: sawRows(sawTable(all), all),
    findings,
  };
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

/** Every piece as it stands on the sculpt; the outermost sheet of the wall is what is seen, and what is laid on it. */
function* platesOf({ layers, raised }: Outcome, foamOf: (id: string) => FoamSheet): Iterable<PlateInPlace> {
  for (const layer of [...layers, ...raised]) {
    const { patches, shells } = need(layer.cut);
    for (const { patch, foam } of need(layer.pieces)) {
      const { triangles, meshVertices } = patches[patch];
      const skin = (positions: Float64Array): Float64Array => {
        const points = new Float64Array(3 * meshVertices.length);
        meshVertices.forEach((v, i) => points.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
        return points;
      };
      yield {
        triangles,
        face: skin(shells[patch].facePositions),
        back: skin(shells[patch].backPositions),
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
