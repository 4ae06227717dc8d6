/** Width and height of an upright rectangle, mm. */
export interface Size2 {
  readonly width: number;
  readonly height: number;
}

/** A rectangle to be packed. */
export interface PackSize extends Size2 {
  /** True where it must stand as it is. */
  readonly isFixed?: boolean;
}

/** Where one rectangle lies: lower left corner in its bin, mm; `turned` when its width and height are exchanged. */
export interface Packed {
  readonly bin: number;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

interface Shelf {
  readonly bin: number;
  readonly y: number;
  readonly height: number;
  filled: number;
}

/** How rectangles stand before they are sorted onto shelves. */
const STANCES = ['as drawn', 'lying', 'upright'] as const;
type Stance = (typeof STANCES)[number];

/** Room for rounding where a rectangle is exactly as large as its place, mm. */
const SNUG_MM = 1e-9;

/**
 * Packs rectangles into equal bins on shelves: highest first, each on the first shelf that holds it (first fit by decreasing height;
 * Coffman, Garey, Johnson, Tarjan 1980). Six ways of standing them up are tried; fewest bins win, then the lowest fill of the last bin,
 * then the fewest turns.
 * @param sizes each must fit the bin, see {@link fitsBin}; else RangeError.
 * @param bin   room inside the borders, mm.
 * @param gap   least distance between two rectangles, mm, >= 0.
 * @returns one place for each size, in the same order.
 */
export function packShelves(sizes: readonly PackSize[], bin: Size2, gap: number): readonly Packed[] {
  for (const size of sizes)
    if (!fitsBin(size, bin)) throw new RangeError(`${size.width} × ${size.height} mm does not fit the bin`);
  let best: { packed: readonly Packed[]; score: readonly number[] } | null = null;
  for (const stance of STANCES) {
    for (const mayTurn of [false, true]) {
      const packed = fillShelves(sizes, bin, gap, stance, mayTurn);
      const score = scoreOf(sizes, packed);
      if (best === null || isBetter(score, best.score)) best = { packed, score };
    }
  }
  return best?.packed ?? [];
}

/** True when the rectangle fits the bin as it stands or, where it may be, turned. */
export function fitsBin(size: PackSize, bin: Size2): boolean {
  return stands(size, bin) || (size.isFixed !== true && stands(turn(size), bin));
}

/** Height that is filled in each bin, mm. */
export function filledHeights(sizes: readonly Size2[], packed: readonly Packed[]): readonly number[] {
  const heights: number[] = [];
  for (const [i, { bin, y, turned }] of packed.entries()) {
    heights[bin] = Math.max(heights[bin] ?? 0, y + (turned ? sizes[i].width : sizes[i].height));
  }
  return heights;
}

function fillShelves(
  sizes: readonly PackSize[],
  bin: Size2,
  gap: number,
  stance: Stance,
  mayTurn: boolean,
): readonly Packed[] {
  const turned = sizes.map((size) => isTurned(size, bin, stance));
  const stood = sizes.map((size, i) => (turned[i] ? turn(size) : size));
  const order = sizes
    .map((_, i) => i)
    .sort((a, b) => stood[b].height - stood[a].height || stood[b].width - stood[a].width || a - b);
  const shelves: Shelf[] = [];
  const tops: number[] = [];
  const result: Packed[] = new Array<Packed>(sizes.length);
  for (const i of order) {
    const ways = mayTurn && sizes[i].isFixed !== true ? [false, true] : [false];
    let found: Packed | null = null;
    for (const shelf of shelves) {
      for (const other of ways) {
        const size = other ? turn(stood[i]) : stood[i];
        const x = shelf.filled === 0 ? 0 : shelf.filled + gap;
        if (x + size.width > bin.width + SNUG_MM || size.height > shelf.height + SNUG_MM) continue;
        found = { bin: shelf.bin, x, y: shelf.y, turned: turned[i] !== other };
        shelf.filled = x + size.width;
        break;
      }
      if (found !== null) break;
    }
    if (found === null) {
      let index = tops.findIndex((top) => top + gap + stood[i].height <= bin.height + SNUG_MM);
      if (index < 0) index = tops.length;
      const y = tops[index] === undefined ? 0 : tops[index] + gap;
      tops[index] = y + stood[i].height;
      shelves.push({ bin: index, y, height: stood[i].height, filled: stood[i].width });
      found = { bin: index, x: 0, y, turned: turned[i] };
    }
    result[i] = found;
  }
  return result;
}

function isTurned(size: PackSize, bin: Size2, stance: Stance): boolean {
  if (size.isFixed === true) return false;
  const wish = stance === 'lying' ? size.height > size.width : stance === 'upright' ? size.width > size.height : false;
  return stands(wish ? turn(size) : size, bin) ? wish : !wish;
}

function scoreOf(sizes: readonly Size2[], packed: readonly Packed[]): readonly number[] {
  const heights = filledHeights(sizes, packed);
  return [heights.length, heights.at(-1) ?? 0, packed.filter((place) => place.turned).length];
}

function isBetter(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, i) => Math.abs(value - b[i]) > SNUG_MM);
  return at >= 0 && a[at] < b[at];
}

function stands(size: Size2, bin: Size2): boolean {
  return size.width <= bin.width + SNUG_MM && size.height <= bin.height + SNUG_MM;
}

function turn({ width, height }: Size2): Size2 {
  return { width: height, height: width };
}
