import { coveredRegions } from '../../src/geom/polygon-boolean.ts';
import { ringArea, ringLength, type Ring } from '../../src/geom/ring.ts';
import { isSimpleArea } from '../../src/geom/ring-simple.ts';
import type { FoamPiece, FoamSeam } from '../../src/model/foam-piece.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';

/** Lines that touch or cross by no more than this bound a clean area to any knife, mm. */
const TOUCH_MM = 1e-3;

/** What a piece is told that excuses lines which cross: it lies over itself, or is smaller than its bevels. */
const EXCUSES = /^foam\/(overlap|side-gone|side-parted)$/;

/** What is wrong with the pieces of foam and their seams. */
export function pieceFaults({ pieces, seams, findings, layers }: Outcome): string[] {
  if (pieces === null) return [];
  const ids = new Set(pieces.map(({ id }) => id));
  const faults: string[] = [];
  if (ids.size !== pieces.length) faults.push('two pieces have one id');
  pieces.forEach(({ number }, i) => {
    if (number !== i + 1) faults.push(`piece ${i + 1} has the number ${number}`);
  });
  for (const piece of pieces) {
    const flags = findings.filter(({ code, where }) => where.piece === piece.id && EXCUSES.test(code));
    faults.push(...edgeFaults(piece), ...outlineFaults(piece, flags.length > 0));
  }
  // What cannot be laid flat is no piece, and a seam with it has one side alone.
  const isWhole = layers.every(({ flats }) => flats?.every((flat) => flat !== null) === true);
  for (const seam of seams ?? []) faults.push(...seamFaults(seam, ids, isWhole));
  return faults;
}

function outlineFaults(piece: FoamPiece, isFlagged: boolean): string[] {
  const { name, outline, holes, otherOutline, otherHoles, areaMm2 } = piece;
  const faults: string[] = [];
  const rings = ringArea(outline) + holes.reduce((sum, hole) => sum + ringArea(hole), 0);
  if (Math.abs(rings - areaMm2) > 1e-9 * Math.abs(rings) + 1e-9)
    faults.push(`${name} tells ${areaMm2} mm², its lines go round ${rings}`);
  if (isFlagged) return faults;
  for (const [side, own] of [
    ['traced', [outline, ...holes]],
    ['other', [otherOutline, ...otherHoles]],
  ] as const) {
    const why = crossing(own);
    if (why !== null) faults.push(`${name}: lines of its ${side} side cross unsaid: ${why}`);
  }
  return faults;
}

/**
 * Why rings bound no one clean area; null where they do. Slits without width and lines that touch are clean: no place is covered twice or the wrong
 * way round.
 */
export function crossing(all: readonly Ring[]): string | null {
  const rings = all.filter((ring) => ring.length >= 6);
  if (rings.length === 0) return 'no ring';
  if (isSimpleArea(rings)) return null;
  const area = rings.reduce((sum, ring) => sum + ringArea(ring), 0);
  if (!(area > 0)) return `an area of ${area} mm²`;
  const slack = TOUCH_MM * rings.reduce((sum, ring) => sum + ringLength(ring), 0);
  const regions = coveredRegions(rings);
  const covered = regions.reduce(
    (sum, { outer, holes }) => sum + ringArea(outer) + holes.reduce((less, hole) => less + ringArea(hole), 0),
    0,
  );
  if (Math.abs(covered - area) > slack) return `they cover ${covered} mm² and go round ${area}`;
  // Where lines touch in one place the area falls in two there, and each is clean; a crumb is rounding.
  return null;
}

function edgeFaults({ name, edges, neutralOutline, neutralHoles }: FoamPiece): string[] {
  const faults: string[] = [];
  const rings = [neutralOutline, ...neutralHoles];
  const runs = rings.map(() => 0);
  for (const { ring, from, to, stationMm, bevelDeg, faceOffsetMm, backOffsetMm, letter } of edges) {
    const count = (rings[ring]?.length ?? 0) / 2;
    if (!(from >= 0 && from < count && to >= 0 && to < count)) {
      faults.push(`${name}: edge ${letter} runs from ${from} to ${to} of ${count}`);
      continue;
    }
    const steps = to > from ? to - from : to - from + count;
    runs[ring] += steps;
    for (const list of [stationMm, bevelDeg, faceOffsetMm, backOffsetMm])
      if (list.length !== steps + 1)
        faults.push(`${name}: edge ${letter} has ${list.length} figures for ${steps} parts`);
    if (stationMm.some((mm, i) => i > 0 && mm < stationMm[i - 1])) faults.push(`${name}: edge ${letter} runs back`);
    if (bevelDeg.some((deg) => Math.abs(deg) > 90)) faults.push(`${name}: edge ${letter} leans beyond a right angle`);
  }
  runs.forEach((steps, ring) => {
    if (2 * steps !== rings[ring].length)
      faults.push(`${name}: edges take ${steps} of ${rings[ring].length / 2} parts of ring ${ring}`);
  });
  return faults;
}

function seamFaults(
  { letter, kind, pieces, lengthMm, tracedLengthMm }: FoamSeam,
  ids: ReadonlySet<string>,
  isWhole: boolean,
): string[] {
  const faults: string[] = [];
  for (const id of pieces) if (!ids.has(id)) faults.push(`seam ${letter} names the piece ${id}, which is none`);
  const sides = kind === 'open' ? 1 : 2;
  if (pieces.length !== sides && (isWhole || pieces.length !== 1))
    faults.push(`seam ${letter}, ${kind}, has ${pieces.length} pieces`);
  for (const mm of [...lengthMm, ...tracedLengthMm]) if (!(mm >= 0)) faults.push(`seam ${letter} is ${mm} mm long`);
  return faults;
}
