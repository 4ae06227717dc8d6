import type { PieceId, SeamId } from '../../base/ids.ts';
import { coverageM2PerL, type Coating, type CoatingUse } from '../../model/coatings.ts';
import { lightnessOf, type Colour } from '../../model/colours.ts';
import type { ClayItem, ClaySum, ColourSum, FinishPlan, FinishStep, FinishWork } from '../../model/finish.ts';
import { wetVolume, type Clay } from '../../model/clay.ts';
import type { FoamSeam } from '../../model/foam-piece.ts';
import type { GluingStep } from '../../model/gluing.ts';
import type { LooseBody } from './paint-loose.ts';
import { skinArea, type PaintSkin } from './paint-skin.ts';
import { paintTurns } from './paint-turns.ts';

/** What finishing is planned from. */
export interface FinishJob {
  readonly skin: PaintSkin;
  /** Pieces of the skin in the order of their indices, lowest number first. */
  readonly pieces: readonly { readonly id: PieceId; readonly quantity: number }[];
  readonly colours: readonly Colour[];
  /** Index of the base colour; -1 where there is none. */
  readonly base: number;
  /** In the order in which they are put on. */
  readonly coatings: readonly Coating[];
  readonly clay: Clay;
  readonly clayItems: readonly ClayItem[];
  readonly loose: readonly LooseBody[];
  /** Seams of the sheet that is seen, and the steps in which seams are glued. */
  readonly seams: readonly FoamSeam[];
  readonly steps: readonly GluingStep[];
}

const MM2_PER_M2 = 1e6;
const MIN_PER_H = 60;

/** Pieces that are finished together, and when. */
interface Body {
  readonly pieces: ReadonlySet<PieceId>;
  readonly unit?: number;
  readonly loose: LooseBody | null;
}

type PlainStep = Omit<FinishStep, 'number' | 'beforeStep' | 'pieces' | 'unit' | 'why'>;

/**
 * Everything from clay to the last clear coat: first what is painted before it is glued on, body by body, then the rest when all is glued. Each body
 * is modelled, taped where it will be glued, sealed, primed, coated, painted colour by colour and cleared, as far as any of this is wanted of it.
 */
export function finishPlanOf(job: FinishJob): FinishPlan {
  const { skin, pieces, colours, coatings, loose } = job;
  const quantities = pieces.map(({ quantity }) => quantity);
  const early = new Set(loose.flatMap(({ body }) => body.pieces));
  const bodies: readonly Body[] = [
    ...loose.map((own): Body => ({
      pieces: new Set(own.body.pieces),
      ...(own.body.unit === undefined ? {} : { unit: own.body.unit }),
      loose: own,
    })),
    { pieces: new Set(pieces.map(({ id }) => id).filter((id) => !early.has(id))), loose: null },
  ];
  const isDone = new Uint8Array(skin.areaMm2.length);
  const steps: FinishStep[] = [];
  for (const body of bodies) {
    const isNow = Uint8Array.from(skin.pieceOf, (p) => (body.pieces.has(pieces[p].id) ? 1 : 0));
    for (const step of stepsOfBody(job, body, isNow, isDone, quantities)) {
      const { loose: own, unit } = body;
      const touched = pieces.map(({ id }) => id).filter((id) => step.on.has(id));
      steps.push({
        ...step.plain,
        number: steps.length + 1,
        beforeStep: own?.beforeStep ?? null,
        ...(own?.afterStep === undefined ? {} : { afterStep: own.afterStep }),
        pieces: touched,
        ...(unit === undefined || touched.length < body.pieces.size ? {} : { unit }),
        ...(own === null ? {} : { why: own.why }),
      });
    }
    isNow.forEach((now, t) => (isDone[t] |= now));
  }
  return {
    steps,
    colours: colourSums(job),
    clay: claySum(job.clay, job.clayItems, steps),
    outsideMm2: skinArea(skin, quantities, () => true),
    tapeMm: steps.reduce((sum, { tapeMm }) => sum + tapeMm, 0),
    waitMin: steps.reduce((sum, { waitMin }) => sum + waitMin, 0),
  };

  function* stepsOfBody(
    whole: FinishJob,
    body: Body,
    isNow: Uint8Array,
    done: Uint8Array,
    cut: readonly number[],
  ): Iterable<{ readonly plain: PlainStep; readonly on: ReadonlySet<PieceId> }> {
    yield* claySteps(whole, body, bodies);
    const seen = new Set(
      pieces.filter((_, p) => isNow.some((now, t) => now === 1 && skin.pieceOf[t] === p)).map(({ id }) => id),
    );
    if (seen.size === 0) return;
    const areaMm2 = skinArea(skin, cut, (t) => isNow[t] === 1);
    // What is loose borders on nothing but itself yet.
    const edges = body.loose === null ? skin.edges : skin.edges.filter(({ a, b }) => isNow[a] === 1 && isNow[b] === 1);
    const turns = paintTurns({
      skin: { ...skin, edges },
      isNow,
      isDone: done,
      base: whole.base,
      lightness: colours.map(lightnessOf),
    });
    const coats = (...uses: readonly CoatingUse[]) =>
      coatings
        .filter(({ use }) => uses.includes(use))
        .map((coating) => ({ plain: coatStep(coating, areaMm2), on: seen }));
    const all = [...coats('seal'), ...coats('prime'), ...coats('paint')];
    if (body.loose !== null && all.length + turns.length > 0) {
      const tapeMm = bareEdgesMm(whole, body, body.loose.beforeStep);
      if (tapeMm > 0) yield { plain: { ...NOTHING, work: 'bare', tapeMm }, on: body.pieces };
    }
    yield* all;
    for (const { colour: c, triangles, tape } of turns) {
      const colour = colours[c];
      const own = new Set(triangles);
      const on = new Set(triangles.map((t) => pieces[skin.pieceOf[t]].id));
      const area = skinArea(skin, cut, (t) => own.has(t));
      const tapeOn = [...new Set(tape.map((edge) => edge.on))].sort((a, b) => a - b);
      yield {
        plain: {
          ...NOTHING,
          work: 'colour',
          name: colour.name,
          colour: colour.id,
          areaMm2: area,
          coats: colour.coats,
          ml: mlOf(area, colour.coats, colour.coverageM2PerL),
          tapeMm: tape.reduce((sum, { mm, beside }) => sum + mm * cut[skin.pieceOf[beside]], 0),
          tapeOn: tapeOn.map((other) => (other < 0 ? '' : colours[other].name)),
          recoatMin: colour.recoatMin,
          waitMin: (colour.coats - 1) * colour.recoatMin + colour.handleMin,
          cautions: colour.cautions,
        },
        on,
      };
    }
    yield* coats('clear');
  }
}

const NOTHING: PlainStep = {
  work: 'bare',
  name: '',
  areaMm2: 0,
  coats: 0,
  ml: 0,
  tapeMm: 0,
  tapeOn: [],
  recoatMin: 0,
  waitMin: 0,
  cautions: [],
};

/** What coats of an area take, ml. @param m2PerL area of one coat that a litre covers. */
const mlOf = (areaMm2: number, coats: number, m2PerL: number): number =>
  ((areaMm2 / MM2_PER_M2) * coats * 1000) / m2PerL;

function coatStep(coating: Coating, areaMm2: number): PlainStep {
  const { use, name, coats, recoatMin, cautions } = coating;
  const work: FinishWork = use;
  return {
    ...NOTHING,
    work,
    name,
    areaMm2,
    coats,
    ml: mlOf(areaMm2, coats, coverageM2PerL(coating)),
    recoatMin,
    waitMin: coats * recoatMin,
    cautions,
  };
}

/** Fillets and shapes are modelled when all they lie on hangs together, before anything is coated there. */
function* claySteps(
  { clay, clayItems }: FinishJob,
  body: Body,
  bodies: readonly Body[],
): Iterable<{ readonly plain: PlainStep; readonly on: ReadonlySet<PieceId> }> {
  const isOf = ({ pieces }: ClayItem, { pieces: own }: Body): boolean => pieces.every((id) => own.has(id));
  const own = clayItems.filter((item) =>
    body.loose === null ? !bodies.some((other) => other.loose !== null && isOf(item, other)) : isOf(item, body),
  );
  if (own.length === 0) return;
  const layers = own.reduce((most, item) => Math.max(most, item.layers), 0);
  const dry = own.reduce((sum, { ml }) => sum + ml, 0);
  yield {
    plain: {
      ...NOTHING,
      work: 'clay',
      name: clay.name,
      ml: wetVolume(dry, clay.shrinkPct),
      recoatMin: clay.dryH * MIN_PER_H,
      waitMin: layers * clay.dryH * MIN_PER_H,
      cautions: clay.cautions,
    },
    on: new Set(own.flatMap(({ pieces }) => pieces)),
  };
}

/** Edges of a body that are still to be glued, and the borders of what will be laid on it. */
function bareEdgesMm({ skin, pieces, seams, steps }: FinishJob, { pieces: own }: Body, beforeStep: number): number {
  const glued = new Map<SeamId, number>();
  for (const { number, runs } of steps) for (const { seam } of runs) glued.set(seam, number);
  const quantityOf = new Map(pieces.map(({ id, quantity }) => [id, quantity]));
  let mm = 0;
  for (const { id, kind, pieces: both, trueLengthMm } of seams) {
    if (kind === 'open' || (glued.get(id) ?? 0) < beforeStep) continue;
    const [first, second = first] = both;
    for (const piece of [first, second]) if (own.has(piece)) mm += trueLengthMm * (quantityOf.get(piece) ?? 1);
  }
  for (const { a, b, joint, mm: length } of skin.edges) {
    if (joint !== 'laid') continue;
    const [on, laid] = [b, a].map((t) => pieces[skin.pieceOf[t]].id);
    if (own.has(on) && !own.has(laid)) mm += length * (quantityOf.get(on) ?? 1);
  }
  return mm;
}

/** What each colour of the list that is painted with comes to. */
export function colourSums({
  skin,
  pieces,
  colours,
  base,
}: Pick<FinishJob, 'skin' | 'pieces' | 'colours' | 'base'>): readonly ColourSum[] {
  return colours.flatMap((colour, c): ColourSum[] => {
    const sums = pieces.map(() => 0);
    for (let t = 0; t < skin.areaMm2.length; t += 1)
      if (skin.colourOf[t] === c) sums[skin.pieceOf[t]] += skin.areaMm2[t] * pieces[skin.pieceOf[t]].quantity;
    const areaMm2 = sums.reduce((sum, own) => sum + own, 0);
    if (areaMm2 === 0) return [];
    const own = pieces.flatMap(({ id }, p) => (sums[p] > 0 ? [{ piece: id, areaMm2: sums[p] }] : []));
    const ml = mlOf(areaMm2, colour.coats, colour.coverageM2PerL);
    return [{ colour, isBase: c === base, areaMm2, ml, pieces: own }];
  });
}

function claySum(clay: Clay, items: readonly ClayItem[], steps: readonly FinishStep[]): ClaySum | null {
  if (items.length === 0) return null;
  const wetMl = wetVolume(
    items.reduce((sum, { ml }) => sum + ml, 0),
    clay.shrinkPct,
  );
  const minutes = steps.reduce((sum, { work, waitMin }) => sum + (work === 'clay' ? waitMin : 0), 0);
  return { clay, items, wetMl, days: minutes / MIN_PER_H / 24 };
}
