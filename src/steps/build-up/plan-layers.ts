import { fail, ok, type Result } from '../../base/result.ts';
import type { BuildRule, BuildWeights, WrapSheet } from '../../model/build-up.ts';
import {
  besides,
  NOTHING_TO_LAY_MM,
  radiiIn,
  spansIn,
  stretchesOver,
  volumeBetween,
  wholeOf,
  type Profile,
  type Stretch,
} from './profile.ts';

/** A layer of a plan, before it has a number and a seam. */
export interface PlannedLayer extends Stretch {
  /** How many layers lie over one another up to and with it: 1 on the core. */
  readonly depth: number;
  readonly inside: number;
  readonly sheet: WrapSheet;
  /** To take off it down to the profile, and what the profile stands over it where nothing more is laid on it, mm³. */
  readonly sandMm3: number;
  readonly fillMm3: number;
}

export interface LayerPlan {
  readonly layers: readonly PlannedLayer[];
  /** Filled on the core itself, where no layer lies, mm³. */
  readonly fillMm3: number;
  /** By the weights. */
  readonly cost: number;
}

/** Radii are added up in steps of this, mm: no sheet is known better, and sums stay whole numbers. */
const STEP_MM = 0.01;

/** More layers over one another than this are no work for hands. */
export const MOST_DEPTH = 60;

/** Sheets of the thinnest in hand that would come to the whole height, at most: further down nobody winds. */
const MOST_THIN = 1000;

/** Parts of the profile that are looked at, for all ways together, before the sheets are said to make too many: about two seconds. */
const MOST_LOOKS = 100_000;

/** Where between the inside (0) and the outside (1) of a sheet the profile must reach for the sheet to be laid. */
const REACH: Readonly<Record<BuildRule, number>> = { sand: 0, middle: 0.5, fill: 1 };

/** What is remembered of a layer serves wherever its radius is reached, over however many layers. */
type LooseLayer = Omit<PlannedLayer, 'depth'>;

/** What one place costs at best, and how: the layers that begin at its radius. */
interface Way {
  readonly cost: number;
  readonly layers: readonly LooseLayer[];
  /** What is filled at this radius itself. */
  readonly fillMm3: number;
}

/**
 * Which sheets are wound where. A layer lies on the one before over the whole of a stretch that its rule gives it; what is left beside it may have a
 * thinner one. Cost is what is sanded and filled, by weight, and each wrap. What is wound over a stretch at a radius depends on nothing under it, so
 * the best of all such plans follows from the best for every greater radius (Bellman 1957): one pass over radii in steps of 0.01 mm and the
 * stretches there, none left out. Of equals the thicker sheet lies inside.
 *
 *      r ┤        ┌──────┐    depth 2, over its own stretch
 *        ┤   ┌────┴──────┴─┐  depth 1
 *     Rc ┼───┴─────────────┴── core
 *
 * @param coreRadius  mm, nowhere over the profile.
 * @returns layers in the order of the work: what lies under another comes before it. Fails with `core/sheets`, `core/layers` or `core/ways`.
 */
export function planLayers(
  profile: Profile,
  coreRadius: number,
  sheets: readonly WrapSheet[],
  rule: BuildRule,
  weights: BuildWeights,
): Result<LayerPlan> {
  if (profile.length === 0) return ok({ layers: [], fillMm3: 0, cost: 0 });
  const most = radiiIn(profile, wholeOf(profile))?.most ?? 0;
  if (most <= coreRadius + NOTHING_TO_LAY_MM) return ok({ layers: [], fillMm3: 0, cost: 0 });
  const fault = sheetsFault(sheets);
  if (fault !== null) return fail('core/sheets', fault);
  // Thickest first, one of each thickness.
  const inHand = [...sheets]
    .sort((a, b) => b.thicknessMm - a.thicknessMm)
    .filter(({ thicknessMm }, i, all) => i === 0 || thicknessMm < all[i - 1].thicknessMm);
  const thinnest = inHand[inHand.length - 1].thicknessMm;
  if ((most - coreRadius) / inHand[0].thicknessMm > MOST_DEPTH || (most - coreRadius) / thinnest > MOST_THIN)
    return tooMany();
  const search = new LayerSearch(profile, coreRadius, inHand, rule, weights);
  const best = search.over(0, wholeOf(profile));
  if (search.isTooLong)
    return fail(
      'core/ways',
      'These sheets can be laid in too many ways: leave some out, or give thicknesses in whole mm.',
    );
  const layers = withDepths(best.layers);
  if (layers.some(({ depth }) => depth > MOST_DEPTH)) return tooMany();
  return ok({ layers, fillMm3: best.fillMm3, cost: best.cost });
}

const tooMany = () =>
  fail(
    'core/layers',
    `More than ${MOST_DEPTH} layers would lie over one another: take thicker sheets, or a thicker core.`,
  );

/** A layer lies on those that end where it begins. */
function withDepths(loose: readonly LooseLayer[]): readonly PlannedLayer[] {
  const outward = [...loose].sort((a, b) => a.inside - b.inside || a.from - b.from);
  const layers: PlannedLayer[] = [];
  for (const one of outward) {
    const depth = layers.reduce((most, under) => {
      const isUnder = under.inside < one.inside && under.from < one.to && under.to > one.from;
      return isUnder ? Math.max(most, under.depth) : most;
    }, 0);
    layers.push({ ...one, depth: depth + 1 });
  }
  return layers.sort((a, b) => a.depth - b.depth || a.from - b.from);
}

function sheetsFault(sheets: readonly WrapSheet[]): string | null {
  if (sheets.length === 0) return 'Say which sheets are in hand: thicknesses in mm, as 10,6,2.';
  for (const { thicknessMm, neutralFraction } of sheets) {
    if (!(thicknessMm >= 0.1 && thicknessMm <= 200)) return 'Sheets are from 0.1 to 200 mm thick, as 10,6,2.';
    if (!(neutralFraction >= 0 && neutralFraction <= 1)) return 'The neutral fraction of a sheet is from 0 to 1.';
  }
  return null;
}

/** Remembers what every stretch at every radius costs at best. */
class LayerSearch {
  readonly #known = new Map<string, Way>();
  #looks = 0;

  constructor(
    private readonly profile: Profile,
    private readonly coreRadius: number,
    private readonly sheets: readonly WrapSheet[],
    private readonly rule: BuildRule,
    private readonly weights: BuildWeights,
  ) {}

  get isTooLong(): boolean {
    return this.#looks > MOST_LOOKS;
  }

  /** Everything over a stretch whose foam has come to `steps` over the core. */
  over(steps: number, within: Stretch): Way {
    const islands = stretchesOver(this.profile, this.#radius(steps), within);
    return together(islands.map((one) => this.#island(steps, one, 0)));
  }

  #radius(steps: number): number {
    return this.coreRadius + steps * STEP_MM;
  }

  /** A stretch all of which the profile stands over. @param first number of the thickest sheet that may begin here. */
  #island(steps: number, here: Stretch, first: number): Way {
    const key = `${steps} ${first} ${here.from} ${here.to}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    let best = this.#asItIs(steps, here);
    const parts = spansIn(this.profile, here).length;
    for (let i = first; i < this.sheets.length && !this.isTooLong; i += 1) {
      this.#looks += parts;
      const way = this.#withSheet(steps, here, i);
      // Sums of the same volumes in another order differ by rounding.
      if (way !== null && way.cost < best.cost - 1e-9 * Math.abs(best.cost === Infinity ? 0 : best.cost)) best = way;
    }
    this.#known.set(key, best);
    return best;
  }

  /** Nothing more is laid: what the profile stands over the foam is filled, which the rule may not allow. */
  #asItIs(steps: number, here: Stretch): Way {
    if (this.rule === 'sand') return { cost: Infinity, layers: [], fillMm3: 0 };
    const fillMm3 = volumeBetween(this.profile, here, this.#radius(steps), Infinity);
    return { cost: (this.weights.fillCm3 * fillMm3) / 1000, layers: [], fillMm3 };
  }

  #withSheet(steps: number, here: Stretch, i: number): Way | null {
    const sheet = this.sheets[i];
    const thick = Math.round(sheet.thicknessMm / STEP_MM);
    const [inside, outside] = [this.#radius(steps), this.#radius(steps + thick)];
    const reach = inside + REACH[this.rule] * (outside - inside);
    // What is level with a face counts as reaching it.
    const laid = this.rule === 'sand' ? [here] : this.#reaching(reach, here);
    if (laid.length === 0) return null;
    const ways = laid.map((one): Way => {
      const held = volumeBetween(this.profile, one, inside, outside);
      const sandMm3 = Math.max(0, Math.PI * (outside - inside) * (outside + inside) * (one.to - one.from) - held);
      const upon = this.over(steps + thick, one);
      const layer: LooseLayer = { ...one, inside, sheet, sandMm3, fillMm3: upon.fillMm3 };
      return {
        cost: (this.weights.sandCm3 * sandMm3) / 1000 + this.weights.wrap + upon.cost,
        layers: [layer, ...upon.layers],
        fillMm3: 0,
      };
    });
    const beside = besides(here, laid).map((one) => this.#island(steps, one, i + 1));
    return together([...ways, ...beside]);
  }

  #reaching(level: number, here: Stretch): readonly Stretch[] {
    return stretchesOver(this.profile, level - ROUNDING_MM, here, 0).filter(
      ({ from, to }) => to - from >= SHORTEST_WRAP_MM,
    );
  }
}

/** Radii that are alike differ by this much when they were added up in another order, mm. */
const ROUNDING_MM = 1e-6;

/** A wrap shorter than this along the core is no ring that can be cut and glued, mm [J]; where foam must stand proud there is no choice. */
const SHORTEST_WRAP_MM = 3;

const together = (ways: readonly Way[]): Way => ({
  cost: ways.reduce((sum, { cost }) => sum + cost, 0),
  layers: ways.flatMap(({ layers }) => layers),
  fillMm3: ways.reduce((sum, { fillMm3 }) => sum + fillMm3, 0),
});
