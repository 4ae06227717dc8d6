import { distance, flatArea, ringArea, singularValues, spaceArea, spreadOf, symmetricDirichlet } from './measure.mjs';
import { countOverlaps } from './overlaps.mjs';

/** Common ground of two triangles under this share of the piece is rounding, not an overlap. */
const TOUCH_SHARE = 1e-9;

/**
 * Recomputes one piece from its flat coordinates and the surface: stretch, squash, energy, areas, flips, overlaps, rings.
 * @param piece      as in the report
 * @param {number} tolerance relative
 * @returns the piece's rings as local vertices in the order of the report, for the walk along its seams
 */
export function checkPiece(piece, tolerance, ledger) {
  const { uvMm, neutralMm, sourceVertices, triangles } = piece.flat;
  const name = `piece ${piece.id}`;
  ledger.must(
    uvMm.length === neutralMm.length && uvMm.length === sourceVertices.length,
    `${name}: flat lists differ in length`,
  );
  ledger.agree('count', `${name}.triangles`, piece.triangles, triangles.length, 0);
  const flats = triangles.map((triangle) => triangle.map((v) => uvMm[v]));
  const spaces = triangles.map((triangle) => triangle.map((v) => neutralMm[v]));
  const surface = spaces.reduce((sum, space) => sum + (isEmpty(space) ? 0 : spaceArea(space)), 0);
  ledger.agree('area', `${name}.surfaceAreaMm2`, piece.surfaceAreaMm2, surface, tolerance);
  checkStretch(piece, name, flats, panelsOf(piece, name, spaces, ledger), tolerance, ledger);
  const signed = flats.map(flatArea);
  ledger.agree('count', `${name}.flipped`, piece.flipped, signed.filter((area) => !(area > 0)).length, 0);
  const flatTotal = signed.reduce((sum, area) => sum + area, 0);
  if (piece.flatAreaMm2 !== undefined) {
    ledger.agree('area', `${name}.flatAreaMm2`, piece.flatAreaMm2, flatTotal, tolerance);
  }
  const overlaps = countOverlaps(flats, TOUCH_SHARE * flatTotal);
  ledger.must(
    overlaps === 0 ? piece.overlaps === 0 || touches(flats) : piece.overlaps > 0,
    `${name}.overlaps: the report says ${piece.overlaps}, recomputed ${overlaps}`,
  );
  if (piece.shrinkage !== undefined) checkWarmed(piece, name, tolerance, ledger);
  return checkRings(piece, name, tolerance, ledger);
}

/**
 * Panels of a grooved piece are laid flat on their hinges, and a flat one keeps its plane at corners of many planes; neither is farther off than
 * sharp corners run out. Others are as the surface is.
 */
function panelsOf(piece, name, spaces, ledger) {
  const { cornersMm } = piece.flat;
  if (cornersMm === undefined) return spaces;
  ledger.must(
    piece.bendStyle === 'grooved' || piece.folds.length === 0,
    `${name}: corners of its own in a piece that is bent and has no hinges`,
  );
  // A fold of half a turn but 40 degrees pushes its panels apart by less than three thicknesses.
  const reach = 3 * piece.thicknessMm;
  ledger.must(cornersMm.length === 3 * spaces.length, `${name}: panels and triangles differ in number`);
  return spaces.map((space, t) =>
    space.map((p, k) => {
      const corner = cornersMm[3 * t + k];
      ledger.must(distance(p, corner) <= 8 * reach, `${name}: corner ${k} of triangle ${t} lies far from its surface`);
      return corner;
    }),
  );
}

/** What is cut, shrunk along the grain and across it, is the finished outline. */
function checkWarmed(piece, name, tolerance, ledger) {
  const grain = ((piece.grainDeg ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(grain), Math.sin(grain)];
  const warmed = ([x, y]) => {
    const along = (c * x + s * y) * (1 - piece.shrinkage.alongPct / 100);
    const across = (c * y - s * x) * (1 - piece.shrinkage.acrossPct / 100);
    return [c * along - s * across, s * along + c * across];
  };
  ledger.must(
    piece.grainDeg !== undefined || piece.shrinkage.alongPct === piece.shrinkage.acrossPct,
    `${name}: shrinks more one way than the other, and has no grain`,
  );
  const rings = [
    ['outlineMm', [piece.cutOutlineMm], [piece.outlineMm]],
    ['holesMm', piece.cutHolesMm, piece.holesMm],
    ['otherOutlineMm', [piece.cutOtherOutlineMm], [piece.otherOutlineMm]],
    ['otherHolesMm', piece.cutOtherHolesMm, piece.otherHolesMm],
  ];
  for (const [key, cut, finished] of rings) {
    const misses = cut.flatMap((ring, r) => ring.map((p, i) => distance(warmed(p), finished[r][i])));
    ledger.agree('warmed', `${name}.${key}: farthest off when warmed`, Math.max(0, ...misses), 0, tolerance);
  }
}

/** True when triangles share ground too small to be held against a report that counts it exactly. */
const touches = (flats) => countOverlaps(flats, 0) > 0;

function checkStretch(piece, name, flats, spaces, tolerance, ledger) {
  const areas = spaces.map((space) => (isEmpty(space) ? 0 : spaceArea(space)));
  const total = areas.reduce((sum, area) => sum + area, 0);
  ledger.must(total > 0, `${name} has no area`);
  // A triangle without area on the prop has no stretch.
  const values = flats.map((flat, t) => (areas[t] > 0 ? singularValues(flat, spaces[t]) : [1, 1]));
  const energy = values.reduce((sum, [a, b], t) => sum + areas[t] * symmetricDirichlet(a, b), 0) / total;
  if (piece.energy !== undefined) ledger.agree('energy', `${name}.energy`, piece.energy, energy, tolerance);
  if (piece.scaleRatio !== undefined) {
    const ratio = Math.max(...values.map(([a]) => a)) / Math.min(...values.map(([, b]) => b));
    ledger.agree('scaleRatio', `${name}.scaleRatio`, piece.scaleRatio, ratio, tolerance);
  }
  for (const [key, percent] of [
    ['stretchPct', values.map(([a]) => 100 * (a - 1))],
    ['squashPct', values.map(([, b]) => 100 * (1 - b))],
  ]) {
    const own = spreadOf(
      percent.filter((_, t) => areas[t] > 0),
      areas.filter((area) => area > 0),
    );
    const reported = piece[key];
    // Tolerance is of the length ratio, so a hundredfold of it in per cent.
    for (const figure of ['max', 'mean'])
      ledger.agree(key, `${name}.${key}.${figure}`, reported[figure] / 100, own[figure] / 100, tolerance);
    if (Math.abs(reported.p99 - own.p99) > 100 * tolerance && !isP99(reported.p99, percent, areas, tolerance))
      ledger.agree(key, `${name}.${key}.p99`, reported.p99 / 100, own.p99 / 100, tolerance);
  }
}

/** Under this share of its longest side squared a triangle has no area. */
const EMPTY_SHARE = 1e-12;

function isEmpty(space) {
  const longest = Math.max(...space.map((p, k) => distance(p, space[(k + 1) % 3])));
  return spaceArea(space) <= EMPTY_SHARE * longest ** 2;
}

/** Whether a value is the p99 as far as rounding of the summed area can tell: where the 99th part falls between two triangles. */
function isP99(value, percent, areas, tolerance) {
  const total = areas.reduce((sum, area) => sum + area, 0);
  const upTo = (limit) => areas.reduce((sum, area, t) => sum + (percent[t] <= limit ? area : 0), 0) / total;
  const step = 100 * tolerance;
  return (
    percent.some((x) => Math.abs(x - value) <= step) &&
    upTo(value + step) >= 0.99 - 1e-9 &&
    upTo(value - step) < 0.99 + 1e-9
  );
}

/** Rings of the neutral outline are the borders of the flat triangles; areas and size of the cut outline are its own. */
function checkRings(piece, name, tolerance, ledger) {
  const loops = borderLoops(piece.flat.triangles);
  const rings = [piece.neutralOutlineMm, ...(piece.neutralHolesMm ?? [])];
  const slits = rings.filter((ring) => ring.length === 2).length;
  ledger.agree('count', `${name}: rings`, rings.length, loops.length + slits, 0);
  const vertices = rings.map((ring, r) => {
    const found = ring.length === 2 ? matchSlit(ring, piece.flat) : matchLoop(ring, loops, piece.flat.uvMm);
    ledger.must(found !== null, `${name}: ring ${r} of the neutral outline is no border of the flat triangles`);
    return found;
  });
  ledger.must(ringArea(rings[0]) > 0, `${name}: the neutral outline runs clockwise`);
  // The two sides of a slit over a bulge lie on each other, and its ring turns the other way; that is an overlap, told as such.
  ledger.must(
    piece.overlaps > 0 || rings.slice(1).every((ring) => ringArea(ring) <= 1e-9 * ringArea(rings[0])),
    `${name}: a hole runs counter-clockwise`,
  );
  const area = [piece.outlineMm, ...piece.holesMm].reduce((sum, ring) => sum + ringArea(ring), 0);
  ledger.agree('area', `${name}.areaMm2`, piece.areaMm2, area, tolerance);
  for (let k = 0; k < 2; k += 1) {
    const along = piece.outlineMm.map((p) => p[k]);
    ledger.agree('size', `${name}.boxMm[${k}]`, piece.boxMm[k], Math.max(...along) - Math.min(...along), tolerance);
  }
  return vertices;
}

/** A cut along a single edge inside a piece: its two ends, which an edge of a triangle joins; null when none does. */
function matchSlit(ring, { uvMm, triangles }) {
  for (const triangle of triangles) {
    for (const [k, v] of triangle.entries()) {
      const w = triangle[(k + 1) % 3];
      if (distance(uvMm[v], ring[0]) <= 1e-9 && distance(uvMm[w], ring[1]) <= 1e-9) return [v, w];
    }
  }
  return null;
}

/** Borders of the triangles as rings of local vertices, the surface on their left. */
export function borderLoops(triangles) {
  const edges = new Set(triangles.flatMap((t) => t.map((v, k) => `${v} ${t[(k + 1) % 3]}`)));
  const next = new Map();
  for (const triangle of triangles) {
    for (const [k, v] of triangle.entries()) {
      const w = triangle[(k + 1) % 3];
      if (!edges.has(`${w} ${v}`)) next.set(v, w);
    }
  }
  const loops = [];
  while (next.size > 0) {
    const loop = [];
    for (let [v] = next.keys(); next.has(v);) {
      loop.push(v);
      const following = next.get(v);
      next.delete(v);
      v = following;
    }
    loops.push(loop);
  }
  return loops;
}

/** The loop whose flat points are the ring's, turned so that both begin alike; null when there is none. */
function matchLoop(ring, loops, uv) {
  for (const loop of loops) {
    if (loop.length !== ring.length) continue;
    for (let start = 0; start < loop.length; start += 1) {
      if (distance(uv[loop[start]], ring[0]) > 1e-9) continue;
      const turned = [...loop.slice(start), ...loop.slice(0, start)];
      if (turned.every((v, i) => distance(uv[v], ring[i]) <= 1e-9)) return turned;
    }
  }
  return null;
}
