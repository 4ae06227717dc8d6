import type { Finding } from '../../base/finding.ts';
import { formatPlain } from '../../base/format-length.ts';
import { pointAt2 } from '../../geom/vec.ts';
import { greatestCurvatures } from '../../mesh/principal-curvatures.ts';
import type { BendLimits, BendStrain } from '../../model/bend-check.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { kerfLines } from './kerf-lines.ts';
import { neutralSurface } from './neutral-surface.ts';
import type { PatchBend } from './part-bends.ts';
import type { PieceLabel } from './piece-findings.ts';

/** A bend wider than this many thicknesses strains no skin by a thousandth: such a piece is as good as flat. */
const FLAT_THICKNESSES = 1000;

/**
 * Where a rolled piece is bent most, and what that does to its skins; undefined for a flat piece and for one with grooves or kerfs, whose
 * inside is cut open. Lengths are taken on the neutral surface. A fold counts as
 * spread over the facets beside it, and over no less than a circle of one thickness: foam does not bend more sharply by itself.
 * @param uv flat coordinates of the patch's vertices.
 */
export function bendStrain(bend: PatchBend, layer: ShellLayer, uv: Float64Array): BendStrain | undefined {
  if (bend.choice.style !== 'rolled') return undefined;
  const surface = neutralSurface(bend, layer);
  const { positions } = surface;
  const curvatures = greatestCurvatures(surface, layer.thicknessMm);
  let worst = -1;
  let most = 1 / (FLAT_THICKNESSES * layer.thicknessMm);
  curvatures.forEach((curvature, v) => {
    if (Math.abs(curvature) <= most) return;
    worst = v;
    most = Math.abs(curvature);
  });
  if (worst < 0) return undefined;
  const { neutralFraction: k, thicknessMm: t } = layer;
  const [x, y, z] = positions.subarray(3 * worst, 3 * worst + 3);
  return {
    outsidePct: 100 * (1 - k) * t * most,
    insidePct: 100 * k * t * most,
    radiusMm: 1 / most,
    at: pointAt2(uv, worst),
    point: [x, y, z],
  };
}

/** What the finding of a tight bend goes by. */
export interface BendFacts {
  readonly strain: BendStrain;
  readonly thicknessMm: number;
  readonly limits: BendLimits;
  readonly rules: FoamRules;
}

/** The strain of the skin that has more of it against the foam's limits, with what would do instead, in numbers. */
export function bendFinding(label: PieceLabel, facts: BendFacts): Finding | null {
  const { strain, thicknessMm, limits } = facts;
  const { outsidePct, insidePct, radiusMm } = strain;
  const value = Math.max(outsidePct, insidePct);
  if (value <= limits.noticePct) return null;
  const isTooMuch = value > limits.tooMuchPct;
  const limit = isTooMuch ? limits.tooMuchPct : limits.noticePct;
  // Strain grows with the thickness while the neutral surface stays.
  const enough = Math.floor((10 * thicknessMm * limit) / value) / 10;
  const layers = Math.ceil(value / limit);
  const thin = (thicknessMm / layers).toFixed(1);
  return {
    code: 'foam/bend-tight',
    severity: isTooMuch ? 'warning' : 'note',
    text: `${label.name} bends to a radius of ${radiusMm.toFixed(0)} mm: its outside stretches by ${outsidePct.toFixed(0)} % and its inside is squashed by ${insidePct.toFixed(0)} %, over the ${limit.toFixed(0)} % ${isTooMuch ? 'this foam takes' : 'worth a word'} by shop rule: use foam of ${enough.toFixed(1)} mm or less, glue up ${layers.toFixed(0)} layers of ${thin} mm on the bend, ${kerfWay(facts)}or warm it and hold it round a form until it is cold.`,
    value,
    limit,
    unit: '%',
    where: { part: label.part, piece: label.id, point: strain.point },
  };
}

/** Kerfs that would bring the bend about, where there is room for them; else nothing. */
function kerfWay({ strain, thicknessMm, rules }: BendFacts): string {
  if (thicknessMm <= rules.hingeMm) return '';
  const { radiusMm, outsidePct } = strain;
  const outsideRadiusMm = radiusMm * (1 + outsidePct / 100);
  // Round a tip as sharp as that there is no room for a single kerf.
  if (outsideRadiusMm <= rules.hingeMm / 2) return '';
  const kerfs = kerfLines({
    outsideRadiusMm,
    thicknessMm,
    hingeMm: rules.hingeMm,
    kerfMm: rules.kerfMm,
    turnRad: Math.PI / 2,
    leastHingeMm: rules.leastHingeMm,
  });
  if (kerfs.fault !== 'none') return '';
  return `cut kerfs ${formatPlain(rules.kerfMm)} mm wide and ${kerfs.depthMm.toFixed(1)} mm deep into its inside every ${kerfs.spacingMm.toFixed(1)} mm (${kerfs.count.toFixed(0)} for a quarter turn), `;
}
