#!/usr/bin/env node
/**
 * Recomputes a proposal of seams from the model, the seam file and the report, without a line of the product: which triangles hang together,
 * how long the seams are, how far every triangle is stretched and squashed, whether a piece lies over itself or inside out.
 *
 *   node tests/reference/recompute/check-proposal.mjs MODEL SEAMS.json REPORT.json
 *
 * Prints a line for each piece. Exit 0: all as the report says and within its limits; 1: something is not, one line each; 2: wrong usage.
 */
import { createHash } from 'node:crypto';
import { readFileSync, realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { checkCoverage, sizedModel } from './check-model.mjs';
import { Ledger } from './ledger.mjs';
import { checkProposedPiece } from './check-proposed-piece.mjs';
import { distance } from './measure.mjs';
import { readModelFile } from './read-model.mjs';

/** Agreement asked of figures, relative above 1. */
const TOLERANCE = 1e-6;
/** Corners of a surface in the foam lie no farther from the sculpt than this many thicknesses. */
const FARTHEST_MOVE = 8;

/**
 * @param {Uint8Array} modelBytes
 * @param seamFile  parsed
 * @param report    parsed
 * @returns {{ faults: string[], checks: number, pieces: { passes: boolean, text: string }[], figures: object }}
 */
export function checkProposal(modelBytes, seamFile, report) {
  const ledger = new Ledger();
  const hash = createHash('sha256').update(modelBytes).digest('hex');
  ledger.must(report.modelHash === hash, 'the report is of another model');
  ledger.must((seamFile.modelHash ?? hash) === hash, 'the seam file is of another model');
  const model = sizedModel(readModelFile(modelBytes), report.scaleMmPerUnit);
  const pieces = report.pieces.map((piece) => withCorners(piece, model, ledger));
  checkCoverage(
    model,
    pieces.map((piece, id) => ({ id, flat: piece })),
    ledger,
  );
  checkSides(pieces, model, ledger);
  const seams = seamSet(seamFile, model, ledger);
  const found = floodFill(pieces, seams, ledger);
  const surface = checkSurface(pieces, model, report.thicknessMm, ledger);
  const lengthMm = found.seamEdges.reduce((sum, [a, b]) => sum + distance(surface.get(a), surface.get(b)), 0);
  // Without foam as research programs measure, else as it is told of made pieces.
  const limits = { ...report.limits, byNumberToo: report.thicknessMm === 0 };
  const verdicts = pieces.map((piece, i) => checkProposedPiece(piece, i, limits, TOLERANCE, ledger));
  const areaMm2 = verdicts.reduce((sum, { area }) => sum + area, 0);
  const figures = {
    pieces: found.count,
    lengthMm,
    areaMm2,
    lengthOverRootArea: lengthMm / Math.sqrt(areaMm2),
    stretch99Pct: Math.max(...verdicts.map(({ stretch99 }) => stretch99)),
    squash99Pct: Math.max(...verdicts.map(({ squash99 }) => squash99)),
    between99Pct: Math.max(...verdicts.map(({ between99 }) => between99)),
  };
  ledger.agree('count', 'pieceCount', report.pieceCount, found.count, 0);
  ledger.agree('length', 'seamLengthMm', report.seamLengthMm, lengthMm, TOLERANCE);
  ledger.agree('area', 'areaMm2', report.areaMm2, areaMm2, TOLERANCE);
  ledger.agree('length', 'lengthOverRootArea', report.lengthOverRootArea, figures.lengthOverRootArea, TOLERANCE);
  const passes = verdicts.every((verdict) => verdict.passes);
  ledger.must(report.feasible === passes, `the report says feasible ${report.feasible}, recomputed ${passes}`);
  return { faults: ledger.faults, checks: ledger.checks, pieces: verdicts, figures };
}

/** The piece with the model's own numbers of its corners: the lowest of those that coincide. */
function withCorners(piece, model, ledger) {
  const { sourceVertices, uvMm, surfaceMm } = piece;
  ledger.must(
    [uvMm ?? surfaceMm, surfaceMm].every((list) => list.length === sourceVertices.length),
    'lists of a piece differ in length',
  );
  ledger.must(
    piece.triangles.flat().every((v) => Number.isInteger(v) && v >= 0 && v < surfaceMm.length),
    'a triangle names a corner its piece does not have',
  );
  ledger.must(
    (uvMm ?? []).flat().every(Number.isFinite) && surfaceMm.flat().every(Number.isFinite),
    'a coordinate of a piece is no number',
  );
  return { ...piece, sourceVertices: sourceVertices.map((v) => model.lowest[v] ?? -2) };
}

/** Each side of a polygon belongs to one triangle, as often as polygons have it; a line across a polygon has one triangle on either hand. */
function checkSides(pieces, model, ledger) {
  const own = sideCounts(model.faces);
  const told = sideCounts(
    pieces.flatMap(({ triangles, sourceVertices }) => triangles.map((t) => t.map((v) => sourceVertices[v]))),
  );
  for (const [side, count] of own)
    ledger.must(told.get(side) === count, `side ${side} is taken ${told.get(side) ?? 0} times, not ${count}`);
  for (const [side, count] of told) {
    if (own.has(side)) continue;
    const back = side.split(' ').reverse().join(' ');
    ledger.must(!own.has(back) && told.get(back) === count, `a triangle beside ${side} is not used once`);
  }
}

/** How often polygons run from one corner to another. */
function sideCounts(faces) {
  const counts = new Map();
  for (const face of faces) {
    for (const [i, v] of face.entries()) {
      const side = `${v} ${face[(i + 1) % face.length]}`;
      counts.set(side, (counts.get(side) ?? 0) + 1);
    }
  }
  return counts;
}

const keyOf = (a, b) => (a < b ? `${a} ${b}` : `${b} ${a}`);

function seamSet(file, model, ledger) {
  ledger.must((file.paths ?? []).length === 0, 'seams across triangles cannot be recomputed here');
  return new Set((file.edges ?? []).map(([a, b]) => keyOf(model.lowest[a], model.lowest[b])));
}

/**
 * What hangs together without crossing a seam, against the pieces of the report. Foam that is joined must be joined on the flat piece: two
 * triangles beside an edge that is no seam have both its corners in common.
 */
function floodFill(pieces, seams, ledger) {
  const sides = new Map();
  const triangles = [];
  for (const [p, piece] of pieces.entries()) {
    for (const local of piece.triangles) {
      const t = triangles.length;
      triangles.push({ piece: p, next: [] });
      for (let k = 0; k < 3; k += 1) {
        const [a, b] = [local[k], local[(k + 1) % 3]];
        const [v, w] = [piece.sourceVertices[a], piece.sourceVertices[b]];
        const key = keyOf(v, w);
        sides.set(key, [...(sides.get(key) ?? []), { t, from: v, to: w, local: [a, b] }]);
      }
    }
  }
  const seamEdges = [];
  for (const key of seams) ledger.must(sides.has(key), `seam ${key} is no edge of the model`);
  for (const [key, both] of sides) {
    const isProper = both.length === 2 && both[0].from === both[1].to;
    if (!isProper) continue;
    const [one, other] = both;
    if (seams.has(key)) {
      seamEdges.push([one.from, one.to]);
      continue;
    }
    const isOne = triangles[one.t].piece === triangles[other.t].piece;
    ledger.must(isOne, `edge ${key} is no seam, but parts piece ${triangles[one.t].piece}`);
    ledger.must(
      isOne && one.local[0] === other.local[1] && one.local[1] === other.local[0],
      `edge ${key} is no seam, but the flat piece is torn there`,
    );
    triangles[one.t].next.push(other.t);
    triangles[other.t].next.push(one.t);
  }
  const label = new Int32Array(triangles.length).fill(-1);
  let count = 0;
  const pieceOfLabel = [];
  for (let seed = 0; seed < triangles.length; seed += 1) {
    if (label[seed] >= 0) continue;
    const open = [seed];
    label[seed] = count;
    pieceOfLabel.push(triangles[seed].piece);
    while (open.length > 0) {
      for (const t of triangles[open.pop()].next) {
        if (label[t] >= 0) continue;
        label[t] = count;
        open.push(t);
      }
    }
    count += 1;
  }
  ledger.must(count === pieces.length, `seams part the model into ${count} pieces, the report has ${pieces.length}`);
  ledger.must(new Set(pieceOfLabel).size === count, 'a piece of the report does not hang together');
  return { count, seamEdges };
}

/** Corners in space: the sculpt's own where the foam has no thickness, else near them, and one place for each corner of the sculpt. */
function checkSurface(pieces, model, thicknessMm, ledger) {
  const places = new Map();
  for (const [p, { surfaceMm, sourceVertices }] of pieces.entries()) {
    for (const [i, point] of surfaceMm.entries()) {
      const v = sourceVertices[i];
      const own = model.positions[v];
      if (own === undefined) {
        ledger.fault(`piece ${p + 1}: corner ${i} is none of the model`);
        continue;
      }
      const size = Math.max(1, ...own.map(Math.abs));
      const allowed = thicknessMm === 0 ? 1e-9 * size : FARTHEST_MOVE * thicknessMm;
      ledger.must(distance(point, own) <= allowed, `piece ${p + 1}: corner ${i} lies off the sculpt`);
      const seen = places.get(v);
      ledger.must(seen === undefined || distance(seen, point) <= 1e-9 * size, `corner ${v} lies in two places`);
      places.set(v, point);
    }
  }
  return places;
}

function main(words) {
  if (words.length !== 3) {
    process.stderr.write('usage: node tests/reference/recompute/check-proposal.mjs MODEL SEAMS.json REPORT.json\n');
    return 2;
  }
  const [model, seams, report] = words.map((path) => readFileSync(path));
  const { faults, checks, pieces, figures } = checkProposal(model, JSON.parse(seams), JSON.parse(report));
  for (const { text } of pieces) process.stdout.write(`${text}\n`);
  for (const fault of faults) process.stderr.write(`${fault}\n`);
  const held = pieces.filter(({ passes }) => passes).length;
  process.stdout.write(
    `${held} of ${pieces.length} pieces pass; seams ${figures.lengthMm.toFixed(2)} mm, ${figures.lengthOverRootArea.toFixed(4)} of the root of the area; ` +
      `p99 between ranks at most ${figures.between99Pct.toFixed(3)} %; ${checks} checks, ${faults.length} disagree\n`,
  );
  return faults.length === 0 && held === pieces.length ? 0 : 1;
}

const started = process.argv[1];
if (started !== undefined && realpathSync(started) === fileURLToPath(import.meta.url)) {
  process.exitCode = main(process.argv.slice(2));
}
