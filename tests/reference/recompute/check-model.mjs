import { distance, dot, minus } from './measure.mjs';

/**
 * The model as the report must have seen it: coincident corners joined, sizes in mm.
 * @param {{ positions: number[][], faces: number[][] }} file
 * @param {number} scale mm per unit of the file
 */
export function sizedModel(file, scale) {
  const used = new Set(file.faces.flat());
  const lowest = joinNear(file.positions, used);
  return {
    positions: file.positions.map((p) => p.map((x) => x * scale)),
    lowest,
    faces: file.faces.map((face) => face.map((v) => lowest[v])),
    isFlat: file.faces.every((face) => isFlat(face.map((v) => file.positions[v]))),
  };
}

/** Area of a flat polygon along its normal: half the sum of the cross products of its corners. */
function areaVector(points) {
  const sum = [0, 0, 0];
  for (const [i, p] of points.entries()) {
    const [a, b] = [minus(p, points[0]), minus(points[(i + 1) % points.length], points[0])];
    sum[0] += (a[1] * b[2] - a[2] * b[1]) / 2;
    sum[1] += (a[2] * b[0] - a[0] * b[2]) / 2;
    sum[2] += (a[0] * b[1] - a[1] * b[0]) / 2;
  }
  return sum;
}

/** True when no corner leaves the polygon's plane by more than rounding. */
function isFlat(points) {
  if (points.length === 3) return true;
  const area = areaVector(points);
  const size = Math.hypot(...area);
  return points.every((p) => Math.abs(dot(minus(p, points[0]), area)) <= 1e-9 * size * Math.sqrt(size));
}

/** For each corner the lowest number within the larger of 1e-6 of the diagonal and two float32 steps at the largest coordinate. */
function joinNear(positions, used) {
  const list = [...used].sort((a, b) => a - b);
  const low = [0, 1, 2].map((k) => list.reduce((x, v) => Math.min(x, positions[v][k]), Infinity));
  const high = [0, 1, 2].map((k) => list.reduce((x, v) => Math.max(x, positions[v][k]), -Infinity));
  const largest = Math.max(...low.map(Math.abs), ...high.map(Math.abs));
  const reach = Math.max(1e-6 * distance(low, high), 2 * 2 ** (Math.floor(Math.log2(largest)) - 23));
  const cells = new Map();
  const lowest = positions.map((_, v) => v);
  for (const v of list) {
    const cell = positions[v].map((x, k) => Math.floor((x - low[k]) / reach));
    let found = v;
    for (let i = 0; i < 27; i += 1) {
      const key = `${cell[0] + (i % 3) - 1} ${cell[1] + (Math.floor(i / 3) % 3) - 1} ${cell[2] + Math.floor(i / 9) - 1}`;
      for (const w of cells.get(key) ?? []) {
        if (distance(positions[v], positions[w]) <= reach) found = Math.min(found, lowest[w]);
      }
    }
    lowest[v] = found;
    const key = cell.join(' ');
    cells.set(key, [...(cells.get(key) ?? []), v]);
  }
  return lowest;
}

/** Counts, area and size of the whole model. */
export function checkModelFacts(model, reported, ledger) {
  const { faces, positions } = model;
  const used = new Set(faces.flat());
  const edges = new Set(
    faces.flatMap((face) =>
      face.map((v, i) => {
        const w = face[(i + 1) % face.length];
        return v < w ? `${v} ${w}` : `${w} ${v}`;
      }),
    ),
  );
  ledger.agree('count', 'model.vertices', reported.vertices, used.size, 0);
  ledger.agree('count', 'model.edges', reported.edges, edges.size, 0);
  ledger.agree('count', 'model.euler', reported.euler, used.size - edges.size + faces.length, 0);
  const triangles = faces.reduce((sum, face) => sum + face.length - 2, 0);
  ledger.agree('count', 'model.triangles', reported.triangles, triangles, 0);
  if (model.isFlat) {
    const area = faces.reduce((sum, face) => sum + Math.hypot(...areaVector(face.map((v) => positions[v]))), 0);
    ledger.agree('area', 'model.areaMm2', reported.areaMm2, area, 1e-9);
  }
  for (let k = 0; k < 3; k += 1) {
    const along = [...used].map((v) => positions[v][k]);
    const low = along.reduce((x, y) => Math.min(x, y), Infinity);
    const size = along.reduce((x, y) => Math.max(x, y), -Infinity) - low;
    ledger.agree('size', `model.boxMm.min[${k}]`, reported.boxMm.min[k], low, 1e-9);
    ledger.agree('size', `model.boxMm.size[${k}]`, reported.boxMm.size[k], size, 1e-9);
  }
}

/**
 * Every triangle of the pieces lies in a polygon of the file, and every polygon is used up exactly once: counted in triangles, and where a seam
 * crosses it in area.
 */
export function checkCoverage(model, pieces, ledger) {
  const facesOfVertex = new Map();
  model.faces.forEach((face, f) => face.forEach((v) => facesOfVertex.set(v, [...(facesOfVertex.get(v) ?? []), f])));
  const left = model.faces.map((face) => face.length - 2);
  const partAreas = new Map();
  const wholeAreas = new Map();
  const add = (areas, f, points) => areas.set(f, (areas.get(f) ?? 0) + dot(areaVector(points), unitNormal(model, f)));
  for (const piece of pieces) {
    for (const [t, triangle] of piece.flat.triangles.entries()) {
      const corners = triangle.map((v) => piece.flat.sourceVertices[v]);
      if (corners.includes(-1)) {
        const points = triangle.map((v) => piece.flat.sourcePoints?.[v] ?? { vertex: piece.flat.sourceVertices[v] });
        const under = new Set(points.flatMap((point) => cornersUnder(model, point)));
        const face = facesOfVertex.get([...under][0])?.find((f) => [...under].every((v) => model.faces[f].includes(v)));
        const places = points.map((point) => placeOfPoint(model, point));
        if (face === undefined || !(dot(areaVector(places), unitNormal(model, face)) > 0))
          ledger.fault(`piece ${piece.id}, triangle ${t} lies in no polygon of the model as it should`);
        else add(partAreas, face, places);
        continue;
      }
      const face = facesOfVertex.get(corners[0])?.find((f) => left[f] > 0 && runsRound(model.faces[f], corners));
      if (face === undefined) ledger.fault(`piece ${piece.id}, triangle ${t}: ${corners} is no triangle of the model`);
      else {
        left[face] -= 1;
        add(
          wholeAreas,
          face,
          corners.map((v) => model.positions[v]),
        );
      }
    }
  }
  const unused = left.filter((n, f) => n !== 0 && !partAreas.has(f)).length;
  ledger.must(unused === 0, `${unused} polygons of the model are not covered by the pieces`);
  for (const [f, area] of partAreas) {
    const own = Math.hypot(...areaVector(model.faces[f].map((v) => model.positions[v])));
    if (model.isFlat) ledger.agree('area', `polygon ${f}`, area + (wholeAreas.get(f) ?? 0), own, 1e-9);
  }
}

const cornersUnder = (model, point) =>
  'vertex' in point ? [point.vertex] : model.faces[point.face].filter((_, i) => point.bary[i] !== 0);

const placeOfPoint = (model, point) => ('vertex' in point ? model.positions[point.vertex] : pointOnFace(model, point));

function unitNormal(model, f) {
  const area = areaVector(model.faces[f].map((v) => model.positions[v]));
  const size = Math.hypot(...area);
  return area.map((x) => x / size);
}

/** True when the three corners stand in the polygon in this order, which keeps the outside outside. */
function runsRound(face, corners) {
  const places = corners.map((v) => face.indexOf(v));
  if (places.includes(-1)) return false;
  const [a, b, c] = places;
  return (a < b && b < c) || (b < c && c < a) || (c < a && a < b);
}

/** How far a vertex may be moved before the move is blunted, in distances. */
const LONGEST_MOVE = 8;

/**
 * The neutral surface: every vertex of every piece is the model's vertex moved so that each of the planes round it moved as far as the
 * surface lies from the model. Held to rounding where planes can all be kept: up to three of them, and well apart. Where the surface is the
 * model, the vertices must be the model's own.
 * @param layer  of the pieces, as in the report; `modelPlace` counts the model's place in it from the back, 0 in a wall of several sheets
 * @returns how many vertices were held against their planes
 */
export function checkNeutral(model, pieces, layer, ledger) {
  const planesOfAll = model.isFlat ? planesOfVertices(model) : null;
  const seenOnSurface = new Map();
  let held = 0;
  for (const piece of pieces) {
    const { neutralMm, sourceVertices } = piece.flat;
    const fraction = piece.neutralFraction ?? layer.neutralFraction;
    ledger.must(
      fraction === layer.neutralFraction ||
        piece.bendStyle === 'grooved' ||
        piece.foam !== layer.foam ||
        isOnePanel(piece.flat),
      `piece ${piece.id} keeps its length at ${fraction}, its foam at ${layer.neutralFraction}`,
    );
    // A piece of another foam than its sheet lies with the same surface on the model where the sheet is the whole wall.
    const { thicknessMm } = piece.foam === layer.foam ? layer : piece;
    const backMm = layer.backMm - layer.modelPlace * (thicknessMm - layer.thicknessMm);
    const moveMm = backMm + fraction * thicknessMm;
    const planes = moveMm === 0 ? null : planesOfAll;
    const seen = seenOnSurface.get(moveMm) ?? new Map();
    seenOnSurface.set(moveMm, seen);
    for (const [i, point] of neutralMm.entries()) {
      const source = sourceVertices[i];
      const place = `piece ${piece.id}, flat.neutralMm[${i}]`;
      if (source < 0) {
        if (moveMm === 0) agreePoint(place, point, pointOnFace(model, piece.flat.sourcePoints[i]), ledger);
        continue;
      }
      ledger.must(model.lowest[source] === source, `${place}: vertex ${source} is not the lowest number of its corner`);
      const before = seen.get(source);
      if (before === undefined) seen.set(source, point);
      else ledger.must(distance(before, point) === 0, `${place}: vertex ${source} was moved differently in two pieces`);
      if (moveMm === 0) agreePoint(place, point, model.positions[source], ledger);
      else if (planes !== null && before === undefined) {
        const move = minus(point, model.positions[source]);
        const own = planes.get(source);
        if (!canAllBeKept(own) || Math.hypot(...move) > (LONGEST_MOVE - 0.01) * Math.abs(moveMm)) continue;
        held += 1;
        for (const normal of own) ledger.agree('offset', place, dot(normal, move), moveMm, 1e-6);
      }
    }
  }
  return held;
}

/** Turn between triangles of a piece under which it is flat, and as long at any depth of its foam, radians: a quarter of a degree each way. */
const FLAT_RAD = 0.009;

/** Whether a piece is flat on the prop. */
function isOnePanel({ neutralMm, triangles }) {
  const vectors = triangles.map((t) => areaVector(t.map((v) => neutralMm[v])));
  const largest = vectors.reduce((most, v) => (Math.hypot(...v) > Math.hypot(...most) ? v : most));
  const cosine = (v) => dot(v, largest) / (Math.hypot(...v) * Math.hypot(...largest));
  // Of slivers only the side they look to is known.
  const least = 1e-6 * Math.hypot(...largest);
  return vectors.every((v) => Math.hypot(...v) <= least || cosine(v) >= Math.cos(FLAT_RAD));
}

function agreePoint(place, reported, own, ledger) {
  for (let k = 0; k < 3; k += 1) ledger.agree('position', place, reported[k], own[k], 1e-9);
}

function pointOnFace(model, { face, bary }) {
  const corners = model.faces[face].map((v) => model.positions[v]);
  return [0, 1, 2].map((k) => corners.reduce((sum, p, i) => sum + bary[i] * p[k], 0));
}

/** Unit normals round each vertex, each plane once. */
function planesOfVertices({ faces, positions }) {
  const planes = new Map();
  for (const face of faces) {
    const normal = areaVector(face.map((v) => positions[v]));
    const length = Math.hypot(...normal);
    if (length === 0) continue;
    const unit = normal.map((x) => x / length);
    for (const v of face) {
      const list = planes.get(v) ?? [];
      if (list.every((other) => distance(other, unit) > 1e-7)) planes.set(v, [...list, unit]);
    }
  }
  return planes;
}

/** Up to three planes that meet at no small angle. */
function canAllBeKept(planes) {
  if (planes === undefined || planes.length > 3) return false;
  const [a, b, c] = planes;
  if (c === undefined) return b === undefined || Math.abs(dot(a, b)) < 0.9998;
  const cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
  return Math.abs(dot(cross, c)) > 1e-2;
}
