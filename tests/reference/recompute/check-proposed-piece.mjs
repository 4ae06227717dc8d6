import { distance, flatArea, singularValues, spaceArea } from './measure.mjs';
import { deepestOverlap } from './piece-overlap.mjs';

/** A limit is kept when it is passed by no more than this, per cent: a hundredth of what the report prints. */
const LIMIT_SLACK_PCT = 1e-6;
/** Depth of a touch over the size of the piece: sides of a slit that close exactly lie on each other to rounding. */
const TOUCH_SHARE = 1e-7;
/** Under this share of the square of its longest side a triangle has no area, and no stretch. */
const EMPTY_SHARE = 1e-9;

/**
 * Recomputes what one proposed piece must keep: its stretch and squash, its side, its overlaps, its sheet.
 * @param limits              as in the report, and `byNumberToo`: true where 99 % of the triangles must hold beside 99 % of the area
 * @param {number} tolerance  of figures, relative above 1
 */
export function checkProposedPiece(piece, index, limits, tolerance, ledger) {
  const name = `piece ${index + 1}`;
  if (piece.uvMm === null) {
    ledger.must(!piece.isFeasible, `${name}: the report says it holds, but it is not laid flat`);
    const area = piece.triangles.reduce((sum, t) => sum + spaceArea(t.map((v) => piece.surfaceMm[v])), 0);
    return {
      passes: false,
      area,
      stretch99: Infinity,
      squash99: Infinity,
      between99: Infinity,
      text: `${name}: FAIL (not laid flat)`,
    };
  }
  const flats = piece.triangles.map((triangle) => triangle.map((v) => piece.uvMm[v]));
  const onSurface = piece.triangles.map((triangle) => triangle.map((v) => piece.surfaceMm[v]));
  // Where its triangles keep their size: on the hinges of a piece with grooves.
  const spaces = piece.hingedMm ?? onSurface;
  const areas = spaces.map(spaceArea);
  const full = areas.map((_, t) => t).filter((t) => areas[t] > EMPTY_SHARE * longestSide(spaces[t]) ** 2);
  const values = full.map((t) => singularValues(flats[t], spaces[t]));
  const weights = full.map((t) => areas[t]);
  const stretch = shares(
    values.map(([a]) => 100 * (a - 1)),
    weights,
  );
  const squash = shares(
    values.map(([, b]) => 100 * (1 - b)),
    weights,
  );
  const area = onSurface.map(spaceArea).reduce((sum, x) => sum + x, 0);
  const turned = full.filter((t) => !(flatArea(flats[t]) > 0)).length;
  const overlap = deepestOverlap(flats, TOUCH_SHARE * Math.sqrt(area));
  const { stretchPct, squashPct, byNumberToo, sheetMm } = limits;
  const [stretch99, squash99] = [stretch, squash].map(({ byArea, byCount }) =>
    byNumberToo ? Math.max(byArea, byCount) : byArea,
  );
  const wrong = [
    ...(stretch99 <= stretchPct + LIMIT_SLACK_PCT ? [] : [`stretch over ${stretchPct} %`]),
    ...(squash99 <= squashPct + LIMIT_SLACK_PCT ? [] : [`squash over ${squashPct} %`]),
    ...(turned === 0 ? [] : [`${turned} triangles inside out`]),
    ...(overlap.pairs === 0
      ? []
      : [`${overlap.pairs} pairs of triangles lie on each other, ${overlap.deepest} mm deep`]),
    ...(sheetMm === undefined || fitsSheet(piece.uvMm, sheetMm) ? [] : [`does not fit on ${sheetMm.join(' x ')} mm`]),
  ];
  ledger.agree('area', `${name}.areaMm2`, piece.areaMm2, area, tolerance);
  ledger.agree('stretch', `${name}.stretch99Pct`, piece.stretch99Pct, stretch99, tolerance);
  ledger.agree('squash', `${name}.squash99Pct`, piece.squash99Pct, squash99, tolerance);
  ledger.must(
    piece.overlaps > 0 === overlap.pairs > 0,
    `${name}.overlaps: the report says ${piece.overlaps}, recomputed ${overlap.pairs}`,
  );
  const passes = wrong.length === 0;
  // What is not measured here may make the report stricter, never milder.
  ledger.must(passes || !piece.isFeasible, `${name}: the report says it holds, but ${wrong.join(', ')}`);
  const figures = [
    `${full.length} triangles, ${area.toFixed(1)} mm2`,
    `stretch p99 ${told(stretch)}, max ${stretch.most.toFixed(3)} %`,
    `squash p99 ${told(squash)}, max ${squash.most.toFixed(3)} %`,
  ];
  return {
    passes: passes && piece.isFeasible,
    area,
    stretch99,
    squash99,
    between99: Math.max(stretch.between, squash.between),
    text: `${name}: ${passes ? (piece.isFeasible ? 'pass' : 'fail by the report') : `FAIL (${wrong.join('; ')})`}: ${figures.join('; ')}`,
  };
}

const told = ({ byArea, byCount }) => `${byArea.toFixed(3)} by area, ${byCount.toFixed(3)} by number`;

const longestSide = ([a, b, c]) => Math.max(distance(a, b), distance(b, c), distance(c, a));

/**
 * 99th percentiles: the least figure that triangles with 99 % of the area, or 99 % of all triangles, do not exceed. `between` is drawn
 * between the two nearest ranks, as many libraries do; it is told, not held against the limit.
 */
function shares(figures, weights) {
  if (figures.length === 0) return { byArea: 0, byCount: 0, between: 0, most: 0 };
  const order = figures.map((_, i) => i).sort((i, j) => figures[i] - figures[j]);
  const total = weights.reduce((sum, w) => sum + w, 0);
  let beyond = 0;
  let place = order.length - 1;
  // From the top, so that rounding of the whole sum does not matter.
  while (place > 0 && beyond + weights[order[place]] <= 0.01 * total) {
    beyond += weights[order[place]];
    place -= 1;
  }
  const rank = 0.99 * (order.length - 1);
  const low = figures[order[Math.floor(rank)]];
  return {
    byArea: figures[order[place]],
    byCount: figures[order[order.length - 1 - Math.floor(order.length / 100)]],
    between: low + (rank - Math.floor(rank)) * (figures[order[Math.ceil(rank)]] - low),
    most: figures[order.at(-1)],
  };
}

/** True when some turn of the piece, in steps of a twentieth of a degree, lies on the sheet. */
function fitsSheet(points, [wide, high]) {
  for (let step = 0; step < 3600; step += 1) {
    const angle = (step * Math.PI) / 3600;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const [x, y] = [points.map((p) => c * p[0] + s * p[1]), points.map((p) => c * p[1] - s * p[0])];
    if (spanOf(x) <= wide * (1 + 1e-6) && spanOf(y) <= high * (1 + 1e-6)) return true;
  }
  return false;
}

const spanOf = (list) =>
  list.reduce((most, x) => Math.max(most, x), -Infinity) - list.reduce((least, x) => Math.min(least, x), Infinity);
