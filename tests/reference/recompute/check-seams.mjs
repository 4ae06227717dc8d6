import { distance } from './measure.mjs';

/**
 * Walks every seam along both its sides and recomputes lengths, misalignment, bevels and the edges they lie on.
 * @param report  the whole report
 * @param rings   per piece its rings as local vertices (from the check of the piece), null where a ring is unknown
 * @param {number} tolerance relative
 */
export function checkSeams(report, rings, tolerance, ledger) {
  const sidesOfSeam = new Map();
  for (const [p, piece] of report.pieces.entries()) {
    checkCover(piece, ledger);
    for (const edge of piece.edges) {
      const ring = rings[p][edge.ring];
      if (!ring) continue;
      const side = walkEdge(report, piece, edge, ring, tolerance, ledger);
      sidesOfSeam.set(edge.seam, [...(sidesOfSeam.get(edge.seam) ?? []), side]);
    }
  }
  const thick = new Map(report.layers?.map((layer) => [layer.id, layer]));
  for (const seam of report.seams) {
    const sides = (sidesOfSeam.get(seam.id) ?? []).sort((a, b) => a.side - b.side);
    const expected = seam.kind === 'open' ? 1 : 2;
    ledger.agree('count', `seam ${seam.id}: sides`, sides.length, expected, 0);
    if (sides.length === expected) checkSeam(seam, sides, tolerance, ledger);
  }
  // Pieces of two thicknesses, and pieces that stand on others, are not cut about the line they keep their length on.
  const unlike = new Set(report.seams.filter((seam) => seam.sideBevelDeg || 'standSide' in seam).map(({ id }) => id));
  for (const [p, piece] of report.pieces.entries()) {
    for (const edge of piece.edges) {
      const name = `piece ${p} edge ${edge.seam}`;
      checkOffsets(piece, edge, thick.get(piece.layer), name, ledger, !unlike.has(edge.seam));
    }
  }
}

/** Every step of every ring belongs to exactly one edge. */
function checkCover(piece, ledger) {
  const lengths = [piece.neutralOutlineMm, ...(piece.neutralHolesMm ?? [])].map((ring) => ring.length);
  const taken = lengths.map((n) => new Uint8Array(n));
  for (const edge of piece.edges) {
    const n = lengths[edge.ring];
    for (let i = 0; i < stepsOf(edge, n); i += 1) taken[edge.ring][(edge.from + i) % n] += 1;
  }
  ledger.must(
    taken.every((ring) => ring.every((uses) => uses === 1)),
    `piece ${piece.id}: its edges do not cover its border exactly once`,
  );
}

const stepsOf = (edge, ringLength) => ((edge.to - edge.from + ringLength - 1) % ringLength) + 1;

/** One side of a seam in the order of the seam: source vertices, points in space, flat arc length from its start, marks. */
function walkEdge(report, piece, edge, ring, tolerance, ledger) {
  const name = `piece ${piece.id} edge ${edge.seam}/${edge.side}`;
  const steps = stepsOf(edge, ring.length);
  const run = Array.from({ length: steps + 1 }, (_, i) => ring[(edge.from + i) % ring.length]);
  const station = [0];
  for (let i = 1; i <= steps; i += 1) {
    station.push(station[i - 1] + distance(piece.flat.uvMm[run[i - 1]], piece.flat.uvMm[run[i]]));
  }
  ledger.agree('count', `${name}: stations`, edge.stationMm.length, steps + 1, 0);
  for (const [i, s] of edge.stationMm.entries())
    ledger.agree('station', `${name} station ${i}`, s, station[i], tolerance);
  for (const list of ['bevelDeg', 'faceOffsetMm', 'backOffsetMm'])
    ledger.agree('count', `${name}: ${list}`, edge[list].length, steps + 1, 0);
  const total = station[steps];
  const order = run.map((_, i) => (edge.reversed ? steps - i : i));
  const ends = stepEnds(piece, run, edge.reversed);
  return {
    side: edge.side,
    piece: piece.id,
    sources: order.map((i) => piece.flat.sourceVertices[run[i]]),
    ends,
    own: arcOf(ends),
    arc: order.map((i) => (edge.reversed ? total - station[i] : station[i])),
    bevels: edge.bevelDeg,
    marks: piece.marks
      .filter((mark) => mark.seam === edge.seam && mark.side === edge.side)
      .sort((a, b) => a.stationMm - b.stationMm),
  };
}

/**
 * Ends in space of each step on the surface the piece keeps its length on, in the order of the seam: a grooved piece has its edges where its
 * panels end.
 */
function stepEnds({ flat }, run, isReversed) {
  const steps = run.slice(1).map((w, i) => {
    const v = run[i];
    if (flat.cornersMm === undefined) return [flat.neutralMm[v], flat.neutralMm[w]];
    for (const [t, triangle] of flat.triangles.entries()) {
      const k = triangle.indexOf(v);
      if (k >= 0 && triangle[(k + 1) % 3] === w)
        return [flat.cornersMm[3 * t + k], flat.cornersMm[3 * t + ((k + 1) % 3)]];
    }
    throw new Error(`no triangle beside ${v}-${w}`);
  });
  return isReversed ? steps.reverse().map(([from, to]) => [to, from]) : steps;
}

/** Length run along such steps. */
function arcOf(steps) {
  const arc = [0];
  for (const [from, to] of steps) arc.push(arc.at(-1) + distance(from, to));
  return arc;
}

function checkSeam(seam, sides, tolerance, ledger) {
  const name = `seam ${seam.id}`;
  const [first, second] = sides;
  ledger.must(
    sides.every((side, i) => side.side === i && seam.pieces[i] === side.piece),
    `${name}: its pieces are ${seam.pieces}, its edges lie on ${sides.map((side) => side.piece)}`,
  );
  if (seam.trueLengthMm !== undefined)
    ledger.agree('length', `${name}.trueLengthMm`, seam.trueLengthMm, first.own.at(-1), tolerance);
  const totals = sides.map((side) => side.arc.at(-1));
  totals.forEach((total, i) => ledger.agree('length', `${name}.lengthMm[${i}]`, seam.lengthMm[i], total, tolerance));
  // A point of an edge tells the mean of the bevels on both its sides, so the seam's own range may be wider.
  const bevels = sides.flatMap((side) => side.bevels);
  ledger.must(
    seam.bevelDeg.min <= Math.min(...bevels) + 1e-9 && seam.bevelDeg.max >= Math.max(...bevels) - 1e-9,
    `${name}: its bevels of ${Math.min(...bevels)} to ${Math.max(...bevels)} lie outside ${seam.bevelDeg.min} to ${seam.bevelDeg.max}`,
  );
  if (second === undefined) return;
  ledger.must(
    first.sources.length === second.sources.length && first.sources.every((v, i) => v === second.sources[i]),
    `${name}: its two sides do not run along the same vertices`,
  );
  ledger.agree(
    'length',
    `${name}.differenceMm`,
    Math.abs(seam.differenceMm),
    Math.abs(totals[0] - first.own.at(-1) - totals[1] + second.own.at(-1)),
    tolerance,
  );
  const apart = first.arc.map((s, i) => s - first.own[i] - second.arc[i] + second.own[i]);
  const worst = apart.reduce((most, d) => Math.max(most, Math.abs(d)), 0);
  ledger.agree('misalignment', `${name}.worstMisalignmentMm`, seam.worstMisalignmentMm, worst, tolerance);
  checkMarks(seam, name, first, second, apart, ledger);
}

/** Widest gap without a mark, mm; and the least, under which ticks would print on each other. */
const MARK_SPACING_MM = 80;

/**
 * How far two places on one step of a seam are apart along it, and how far those at an equal share would be, mm: nothing where both sides keep
 * their length at one depth.
 */
function apartAlong(firstEnds, secondEnds, a, b) {
  const step = Math.max(0, Math.min(firstEnds.length - 1, Math.floor((a + b) / 2)));
  const [from, to] = firstEnds[step];
  const length = distance(from, to);
  const across = (share, mateShare) =>
    [0, 1, 2].reduce((sum, k) => {
      const own = from[k] + share * (to[k] - from[k]);
      const mate = secondEnds[step][0][k] + mateShare * (secondEnds[step][1][k] - secondEnds[step][0][k]);
      return sum + ((own - mate) * (to[k] - from[k])) / length;
    }, 0);
  return [Math.abs(across(a - step, b - step)), Math.abs(across(a - step, a - step))];
}

/** Marks stand in pairs where the two sides come together, and not too far apart; the slip between them is what the report says. */
function checkMarks(seam, name, first, second, apart, ledger) {
  ledger.agree('count', `${name}: marks in pairs`, first.marks.length, second.marks.length, 0);
  const breaks = [{ s: 0, slip: 0 }];
  for (const [i, mark] of first.marks.entries()) {
    const mate = second.marks[i];
    if (mate === undefined) return;
    ledger.agree('count', `${name}: mark ${i} number`, mark.index, mate.index, 0);
    ledger.must(
      first.marks.filter(({ index }) => index === i + 1).length === 1,
      `${name}: its marks are numbered ${first.marks.map(({ index }) => index)}`,
    );
    const [a, b] = [placeOn(first.arc, mark.stationMm), placeOn(second.arc, mate.stationMm)];
    const [along, ofEqualShares] = apartAlong(first.ends, second.ends, a, b);
    ledger.agree(
      'mark',
      `${name}: mark ${mark.index} on its two sides`,
      Math.max(along, ofEqualShares),
      ofEqualShares,
      // Where a seam runs on smoothly at one end of a long step and turns at the other, straight across is not one and the same, mm.
      0.15,
    );
    const ownSlip = atPlace(first.own, a) - atPlace(second.own, b);
    breaks.push({ s: mark.stationMm, slip: mark.stationMm - mate.stationMm - ownSlip });
  }
  const ends = [...breaks.map(({ s }) => s), first.arc.at(-1)];
  const gaps = ends.slice(1).map((s, i) => s - ends[i]);
  ledger.must(
    gaps.every((gap) => gap <= MARK_SPACING_MM + 1e-6),
    `${name}: ${Math.max(...gaps)} mm without a mark`,
  );
  if (seam.worstSlipMm === undefined) return;
  let slip = 0;
  for (const [i, s] of first.arc.entries()) {
    const last = breaks.findLast((mark) => mark.s <= s + 1e-9);
    slip = Math.max(slip, Math.abs(apart[i] - last.slip));
  }
  for (let i = 1; i < breaks.length; i += 1) slip = Math.max(slip, Math.abs(breaks[i].slip - breaks[i - 1].slip));
  ledger.agree('misalignment', `${name}.worstSlipMm`, seam.worstSlipMm, slip, 1e-6);
}

/** Length run at a place that `placeOn` tells. */
function atPlace(arc, place) {
  const step = Math.max(0, Math.min(arc.length - 2, Math.floor(place)));
  return arc[step] + (place - step) * (arc[step + 1] - arc[step]);
}

/** Where on the walk an arc length falls: number of the vertex before it and the share of the step beyond. */
function placeOn(arc, s) {
  const step = Math.max(
    0,
    Math.min(
      arc.length - 2,
      arc.findLastIndex((x) => x <= s),
    ),
  );
  const length = arc[step + 1] - arc[step];
  return step + (length > 0 ? (s - arc[step]) / length : 0);
}

/** Bevels beyond this are drawn less steep than they are, degrees: no tool cuts them. */
const STEEPEST_HELD_DEG = 74;

/**
 * Offsets from the bevel. Over the whole thickness t the two edges stand t tan(bevel) apart; the line the piece keeps its length on,
 * k t from the back, parts that into (1 - k) t tan(bevel) outward at the face and k t tan(bevel) inward at the back. Where the bevel
 * changes along the edge a point tells the mean of both sides, of angles and of distances, so only the share is held there.
 */
function checkOffsets(piece, edge, layer, name, ledger, isShared) {
  if (edge.allowanceMm !== 0 || layer === undefined) return;
  const k = piece.neutralFraction ?? layer.neutralFraction;
  const { bevelDeg, faceOffsetMm, backOffsetMm } = edge;
  for (const [i, bevel] of bevelDeg.entries()) {
    if (isShared)
      ledger.agree('offset', `${name} point ${i}: share`, k * faceOffsetMm[i] + (1 - k) * backOffsetMm[i], 0, 1e-9);
    const isEven = [i - 1, i + 1].every((j) => bevelDeg[j] === undefined || Math.abs(bevelDeg[j] - bevel) < 1e-9);
    if (!isEven || Math.abs(bevel) > STEEPEST_HELD_DEG) continue;
    const lean = piece.thicknessMm * Math.tan((bevel * Math.PI) / 180);
    ledger.agree('offset', `${name} point ${i}: lean`, faceOffsetMm[i] - backOffsetMm[i], lean, 1e-6);
  }
}
