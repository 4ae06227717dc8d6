// A layout of a strip task, checked from the numbers of both files alone.

export interface LaidTask {
  readonly length: number;
  readonly places: readonly {
    readonly item: number;
    readonly copy: number;
    readonly turnDeg: number;
    readonly x: number;
    readonly y: number;
  }[];
}

interface StripFile {
  readonly strip_height: number;
  readonly items: readonly {
    readonly id: number;
    readonly demand: number;
    readonly allowed_orientations: readonly number[];
    readonly shape: { readonly data: readonly (readonly [number, number])[] };
  }[];
}

type Point = readonly [x: number, y: number];

/** How far, beside the height of the strip, a corner may lie inside another piece or outside the strip: the rounding of the file's numbers. */
const ROUNDING_SHARE = 1e-9;

/** @returns one sentence for each fault: a piece missing, turned as it may not be, outside the strip or over another; a density that is not so. */
export function laidOutFaults(task: StripFile, laid: LaidTask, densityPct: number): readonly string[] {
  const faults: string[] = [];
  const slack = ROUNDING_SHARE * task.strip_height;
  const rings = laid.places.map(({ item, turnDeg, x, y }) => {
    const { shape, allowed_orientations: allowed } = task.items.find(({ id }) => id === item) ?? task.items[0];
    if (!allowed.includes(turnDeg)) faults.push(`item ${item} is turned by ${turnDeg}`);
    return moved(shape.data, turnDeg, x, y);
  });
  for (const { id, demand } of task.items) {
    const copies = new Set(laid.places.filter(({ item }) => item === id).map(({ copy }) => copy));
    if (copies.size !== demand) faults.push(`item ${id} lies ${copies.size} times, not ${demand}`);
  }
  if (laid.places.length !== task.items.reduce((sum, { demand }) => sum + demand, 0))
    faults.push('pieces too many or few');
  for (const [i, ring] of rings.entries()) {
    if (ring.some(([x, y]) => x < -slack || y < -slack || x > laid.length + slack || y > task.strip_height + slack))
      faults.push(`piece ${i} is outside the strip`);
    for (let j = i + 1; j < rings.length; j += 1)
      if (doOverlap(ring, rings[j], slack)) faults.push(`pieces ${i} and ${j} overlap`);
  }
  const area = rings.reduce((sum, ring) => sum + Math.abs(areaOf(ring)), 0);
  const density = (100 * area) / (laid.length * task.strip_height);
  if (Math.abs(density - densityPct) > 0.006) faults.push(`the density is ${density.toFixed(3)} %`);
  return faults;
}

function moved(data: readonly Point[], turnDeg: number, x: number, y: number): readonly Point[] {
  const [[x0, y0], [x1, y1]] = [data[0], data[data.length - 1]];
  const points = x0 === x1 && y0 === y1 ? data.slice(0, -1) : data;
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  return points.map(([px, py]) => [px * cos - py * sin + x, px * sin + py * cos + y]);
}

const areaOf = (ring: readonly Point[]): number =>
  ring.reduce((sum, [x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    return sum + (x * ny - nx * y) / 2;
  }, 0);

/**
 * True when two outlines overlap by more than a hair: each is cut by lines through every corner of both, and in every strip between two such lines
 * their shares of the height are held against each other (both are unions of trapezoids there).
 */
function doOverlap(a: readonly Point[], b: readonly Point[], slack: number): boolean {
  const xs = [...new Set([...a, ...b].map(([x]) => x))].sort((p, q) => p - q);
  for (const [p, q] of pairsOfSides(a, b)) {
    const x = crossing(p, q);
    if (x !== null) xs.push(x);
  }
  xs.sort((p, q) => p - q);
  for (let i = 0; i + 1 < xs.length; i += 1) {
    if (xs[i + 1] - xs[i] <= slack) continue;
    const middle = (xs[i] + xs[i + 1]) / 2;
    const [own, other] = [spans(a, middle), spans(b, middle)];
    for (const [low, high] of own)
      for (const [from, to] of other) if (Math.min(high, to) - Math.max(low, from) > 4 * slack) return true;
  }
  return false;
}

type Side = readonly [Point, Point];

function* pairsOfSides(a: readonly Point[], b: readonly Point[]): Generator<readonly [Side, Side]> {
  for (const [i, p] of a.entries())
    for (const [j, q] of b.entries())
      yield [
        [p, a[(i + 1) % a.length]],
        [q, b[(j + 1) % b.length]],
      ];
}

/** Where two sides cross, along x; null where they do not. */
function crossing([[ax, ay], [bx, by]]: Side, [[cx, cy], [dx, dy]]: Side): number | null {
  const area = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx);
  if (area === 0) return null;
  const t = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / area;
  const u = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / area;
  return t >= 0 && t <= 1 && u >= 0 && u <= 1 ? ax + t * (bx - ax) : null;
}

/** Where an upright line runs inside an outline. */
function spans(ring: readonly Point[], x: number): readonly (readonly [number, number])[] {
  const ys: number[] = [];
  for (const [i, [ax, ay]] of ring.entries()) {
    const [bx, by] = ring[(i + 1) % ring.length];
    if (ax < x !== bx < x) ys.push(ay + ((by - ay) * (x - ax)) / (bx - ax));
  }
  ys.sort((p, q) => p - q);
  return Array.from({ length: ys.length >> 1 }, (_, i) => [ys[2 * i], ys[2 * i + 1]] as const);
}
