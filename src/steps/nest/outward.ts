import { grownRegions, type Region } from '../../geom/polygon-boolean.ts';
import { doesRingCross } from '../../geom/ring-cross.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';

/** Outlines of no more corners are only grown: what just fits a sheet still does. */
const FEW_CORNERS = 16;

/**
 * An outline with fewer corners that lies nowhere inside the given one grown by a distance, and nowhere more than twice the tolerance outside it:
 * moved out by the distance and the tolerance, then simplified within the tolerance (Douglas and Peucker 1973).
 * @param ring         counter-clockwise, packed x y, mm; what is inside it counts as filled.
 * @param growMm       >= 0: half of what is to stay between two pieces.
 * @param toleranceMm  > 0.
 */
export function simplifiedOutward(ring: Ring, growMm: number, toleranceMm: number): Ring {
  if (ring.length <= 2 * FEW_CORNERS) return growMm > 0 ? grownRegions([ring], growMm)[0].outer : ring;
  const [grown] = grownRegions([ring], growMm + toleranceMm);
  const simple = simplified(grown.outer, toleranceMm);
  return simple.length < 6 || doesRingCross(simple) || ringArea(simple) <= 0 ? grown.outer : simple;
}

/**
 * The same of an area with holes: they close in by as much.
 * @param leastHoleMm2  smaller ones are filled: nothing would go in.
 */
export function simplifiedRegion(
  { outer, holes }: Region,
  growMm: number,
  toleranceMm: number,
  leastHoleMm2: number,
): readonly Ring[] {
  const around = simplifiedOutward(outer, growMm, toleranceMm);
  const left = holes
    .filter((hole) => -ringArea(hole) >= leastHoleMm2)
    .flatMap((hole) => grownRegions([turnedRound(hole)], -(growMm + toleranceMm)))
    .map((region) => region.outer)
    .filter((hole) => ringArea(hole) >= leastHoleMm2)
    .map((hole) => {
      const simple = simplified(hole, toleranceMm);
      return turnedRound(simple.length < 6 || doesRingCross(simple) || ringArea(simple) <= 0 ? hole : simple);
    });
  return [around, ...left];
}

const turnedRound = (ring: Ring): Ring => ring.map((_, k) => ring[ring.length - 2 - 2 * (k >> 1) + (k & 1)]);

/** Corners kept so that no other lies farther than the tolerance from the line between those kept. */
function simplified(ring: Ring, tolerance: number): Ring {
  const n = ring.length / 2;
  const kept = new Uint8Array(n);
  const far = farthestFrom(ring, 0);
  kept[0] = 1;
  kept[far] = 1;
  const open: (readonly [number, number])[] = [
    [0, far],
    [far, n],
  ];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span;
    let [worst, at] = [tolerance, -1];
    for (let i = from + 1; i < to; i += 1) {
      const away = distanceToLine(ring, i, from, to % n);
      if (away > worst) [worst, at] = [away, i];
    }
    if (at < 0) continue;
    kept[at] = 1;
    open.push([from, at], [at, to]);
  }
  return ring.filter((_, k) => kept[k >> 1] === 1);
}

function farthestFrom(ring: Ring, from: number): number {
  let [best, at] = [-1, from];
  for (let i = 0; i < ring.length / 2; i += 1) {
    const away = Math.hypot(ring[2 * i] - ring[2 * from], ring[2 * i + 1] - ring[2 * from + 1]);
    if (away > best) [best, at] = [away, i];
  }
  return at;
}

function distanceToLine(ring: Ring, i: number, from: number, to: number): number {
  const [ux, uy] = [ring[2 * to] - ring[2 * from], ring[2 * to + 1] - ring[2 * from + 1]];
  const [px, py] = [ring[2 * i] - ring[2 * from], ring[2 * i + 1] - ring[2 * from + 1]];
  const square = ux * ux + uy * uy;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, (px * ux + py * uy) / square));
  return Math.hypot(px - t * ux, py - t * uy);
}
