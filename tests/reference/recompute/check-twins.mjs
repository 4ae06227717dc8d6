/** How far lines of a piece may lie from those of the template it is cut with turned over, mm; its bevels and folds, degrees. */
const LINES_MM = 0.05;
const ANGLES_DEG = 0.5;

/**
 * Pieces without a template of their own: that of their twin, turned over and laid on the piece by the report's own move, has to be the piece's, with
 * its marks and their numbers, its bevels, laps and folds.
 */
export function checkTwins({ pieces, seams }, ledger) {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const seamOf = new Map(seams.map((seam) => [seam.id, seam]));
  for (const piece of pieces) {
    if (piece.printedWith === undefined) continue;
    const from = byId.get(piece.printedWith);
    const name = `piece ${piece.id} printed with ${piece.printedWith}`;
    ledger.must(
      from?.twinOf === piece.id && piece.twinOf === from.id && from.printedWith === undefined,
      `${name}: they are no twins, or neither has a template`,
    );
    if (from?.twinMove === undefined) continue;
    for (const key of ['foam', 'thicknessMm', 'tracedSide', 'bendStyle'])
      ledger.must(from[key] === piece[key], `${name}: ${key} is ${piece[key]}, not ${from[key]}`);
    const { x, y, turnRad } = from.twinMove;
    const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
    const turned = ([px, py]) => [x - c * px - s * py, y - s * px + c * py];
    for (const [key, holes] of [
      ['outlineMm', 'holesMm'],
      ['otherOutlineMm', 'otherHolesMm'],
    ]) {
      const own = [piece[key], ...piece[holes]];
      const theirs = [from[key], ...from[holes]].map((ring) => ring.map(turned));
      const apart = Math.max(farthest(own, theirs), farthest(theirs, own));
      ledger.agree('twin', `${name}: ${key}`, apart, 0, LINES_MM);
    }
    checkTwinMarks(from, piece, turned, name, ledger);
    checkTwinEdges(from, piece, turned, name, seamOf, ledger);
    ledger.agree('count', `${name}: folds`, piece.folds.length, from.folds.length, 0);
    for (const fold of from.folds) {
      const ends = [fold.from, fold.to].map(turned);
      const isTwin = (other) =>
        [
          [other.from, other.to],
          [other.to, other.from],
        ].some((pair) => pair.every((end, i) => between(end, ends[i]) <= LINES_MM));
      const twin = piece.folds.find(isTwin);
      ledger.must(
        twin !== undefined && Math.abs(twin.angleDeg - fold.angleDeg) <= ANGLES_DEG,
        `${name}: a fold of ${fold.angleDeg} degrees has none that mirrors it`,
      );
    }
  }
}

function checkTwinMarks(from, piece, turned, name, ledger) {
  ledger.agree('count', `${name}: marks`, piece.marks.length, from.marks.length, 0);
  for (const mark of from.marks) {
    const at = turned(mark.at);
    const twin = piece.marks.find((other) => other.index === mark.index && between(other.at, at) <= LINES_MM);
    ledger.must(twin !== undefined, `${name}: mark ${mark.letter}${mark.index} has none that mirrors it`);
  }
}

/** Each edge lies on one of the twin's, from its other end, with its bevels and as it is joined. */
function checkTwinEdges(from, piece, turned, name, seamOf, ledger) {
  for (const edge of from.edges) {
    const points = pointsOf(from, edge).map(turned);
    const twin = piece.edges.find((other) => {
      const own = pointsOf(piece, other);
      return own.length === points.length && edge.from !== edge.to
        ? own.every((p, i) => between(p, points[points.length - 1 - i]) <= LINES_MM)
        : own.length === points.length && farthest([own], [points]) <= LINES_MM;
    });
    ledger.must(twin !== undefined, `${name}: edge ${edge.letter} has none that mirrors it`);
    if (twin === undefined) continue;
    ledger.agree('twin', `${name}: allowance at ${edge.letter}`, twin.allowanceMm, edge.allowanceMm, LINES_MM);
    const [a, b] = [seamOf.get(edge.seam), seamOf.get(twin.seam)];
    ledger.must(a.kind === b.kind, `${name}: ${edge.letter} is a ${a.kind}, ${twin.letter} a ${b.kind}`);
    if (a.kind === 'lap')
      ledger.must(
        (a.topSide === edge.side) === (b.topSide === twin.side),
        `${name}: ${edge.letter} and ${twin.letter} lap otherwise`,
      );
    if (a.standSide !== undefined || b.standSide !== undefined)
      ledger.must(
        (a.standSide === edge.side) === (b.standSide === twin.side),
        `${name}: ${edge.letter} and ${twin.letter} stand otherwise`,
      );
    if (edge.from === edge.to) continue;
    const leans = [...twin.bevelDeg].reverse();
    const apart = Math.max(...edge.bevelDeg.map((lean, i) => Math.abs(lean - leans[i])));
    ledger.must(apart <= ANGLES_DEG, `${name}: bevels of ${edge.letter} and ${twin.letter} are ${apart} degrees apart`);
  }
}

function pointsOf({ neutralOutlineMm, neutralHolesMm }, { ring, from, stationMm }) {
  const points = ring === 0 ? neutralOutlineMm : neutralHolesMm[ring - 1];
  return stationMm.map((_, i) => points[(from + i) % points.length]);
}

const between = ([ax, ay], [bx, by]) => Math.hypot(ax - bx, ay - by);

/** From the corners of rings to the nearest line of others, greatest. */
function farthest(rings, others) {
  const sides = others.flatMap((ring) => ring.map((p, i) => [p, ring[(i + 1) % ring.length]]));
  return Math.max(...rings.flat().map((p) => Math.min(...sides.map(([a, b]) => toSide(p, a, b)))));
}

function toSide([x, y], [ax, ay], [bx, by]) {
  const [dx, dy] = [bx - ax, by - ay];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / square)) : 0;
  return Math.hypot(ax + t * dx - x, ay + t * dy - y);
}
