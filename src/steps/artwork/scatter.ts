import { seededRandom } from '../../base/random.ts';
import { formatNumber } from '../../base/format-length.ts';
import { fail, ok, type Result } from '../../base/result.ts';
import { boxOfPoints, joinBoxes, type Ring } from '../../geom/ring.ts';
import { depthInside } from '../../geom/widest-spot.ts';
import type { Artwork } from '../../model/artwork.ts';
import type { ScatterWish } from '../../model/artwork-craft.ts';
import { boxOfArtwork, copiedArtwork, middleOfBox, type CopyPlace } from './copied-artwork.ts';
import { MOST_COPIES } from './repeat-along.ts';

export interface Scattered {
  readonly artwork: Artwork;
  readonly places: readonly CopyPlace[];
  /** Round the artwork in its own size, mm. */
  readonly radiusMm: number;
  /** Nowhere is there room for a circle larger than the smallest by more than this, mm. */
  readonly roomLeftMm: number;
}

/** Squares that are looked at together, and comparisons of one with the area's edges. */
const MOST_CELLS = 200_000;
const MOST_COMPARED = 4e8;
/** The search ends with squares of this share of the least spacing. */
const FINEST_SHARE = 0.004;

/**
 * Artwork scattered over areas until no more fits, as dart throwing with squares that are halved where there may still be room (Ebeida, Mitchell,
 * Patney, Davidson and Owens 2012, "A simple algorithm for maximal Poisson-disk sampling in high dimensions"): a square is dropped when the room at its
 * middle and its half diagonal together are too little, since room changes by no more than the way. A copy that would be too large where it falls is
 * made smaller, down to the smallest size.
 * @returns fails with `artwork/scatter-area` where nothing fits or there is no area, `artwork/too-many`.
 */
export function scatter(motif: Artwork, area: Artwork, wish: ScatterWish): Result<Scattered> {
  const radiusMm = radiusOf(motif);
  const rings = area.pieces
    .flatMap(({ regions }) => regions)
    .flatMap(({ outline, holes }) => [outline.ring, ...holes.map(({ ring }) => ring)]);
  if (rings.length === 0)
    return fail('artwork/scatter-area', 'The drawing to scatter over bounds no area: close its lines, or fill them.');
  const [small, large] = [radiusMm * (1 - wish.sizeShare), radiusMm * (1 + wish.sizeShare)];
  const field = new Field(rings, wish.leastMm, wish.edgeMm, large);
  const found = filled(field, small, large, 2 * small + wish.leastMm, seededRandom(wish.seed));
  if (!found.ok) return found;
  const random = seededRandom(wish.seed + 0x5ca77e4);
  const places = field.circles.map(({ x, y, radius }): CopyPlace => ({
    at: { x, y },
    turnRad: (2 * random() - 1) * wish.turnRad,
    scale: radius / radiusMm,
  }));
  if (places.length === 0)
    return fail(
      'artwork/scatter-area',
      `Not one copy, ${formatNumber(2 * small, 1)} mm across, fits ${formatNumber(wish.edgeMm, 1)} mm inside the area: keep less free at its edge, or make the artwork smaller.`,
    );
  return ok({ artwork: copiedArtwork(motif, places), places, radiusMm, roomLeftMm: found.value });
}

/** Of the circle about the middle of its box that holds all of it, mm. */
function radiusOf(artwork: Artwork): number {
  const { x, y } = middleOfBox(boxOfArtwork(artwork));
  let most = 0;
  for (const { regions, lines } of artwork.pieces) {
    for (const points of [...regions.map(({ outline }) => outline.ring), ...lines.map((line) => line.points)])
      for (let i = 0; i < points.length; i += 2) most = Math.max(most, Math.hypot(points[i] - x, points[i + 1] - y));
  }
  // Curves may stand so far outside of their straight parts.
  return most + artwork.deviationMm;
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Circles so far, and the room at any place: the radius of the largest circle that keeps its distances there, which may be under 0. */
class Field {
  readonly circles: Circle[] = [];
  readonly rings: readonly Ring[];
  readonly edges: number;
  readonly #leastMm: number;
  readonly #edgeMm: number;
  readonly #cellMm: number;
  readonly #near = new Map<string, Circle[]>();

  constructor(rings: readonly Ring[], leastMm: number, edgeMm: number, largest: number) {
    [this.rings, this.#leastMm, this.#edgeMm] = [rings, leastMm, edgeMm];
    this.#cellMm = 2 * largest + leastMm;
    this.edges = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  }

  room(x: number, y: number): number {
    let room = depthInside(this.rings, x, y) - this.#edgeMm;
    const [column, row] = [Math.floor(x / this.#cellMm), Math.floor(y / this.#cellMm)];
    for (let r = row - 1; r <= row + 1; r += 1) {
      for (let c = column - 1; c <= column + 1; c += 1)
        for (const one of this.#near.get(`${c} ${r}`) ?? [])
          room = Math.min(room, Math.hypot(one.x - x, one.y - y) - one.radius - this.#leastMm);
    }
    return room;
  }

  put(circle: Circle): void {
    this.circles.push(circle);
    const key = `${Math.floor(circle.x / this.#cellMm)} ${Math.floor(circle.y / this.#cellMm)}`;
    const list = this.#near.get(key);
    if (list === undefined) this.#near.set(key, [circle]);
    else list.push(circle);
  }
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly half: number;
}

/** Puts circles until there is no room. @returns how much room there may still be beyond the smallest, mm. */
function filled(field: Field, small: number, large: number, pitchMm: number, random: () => number): Result<number> {
  const tooMany = (): Result<never> =>
    fail('artwork/too-many', `That makes more than ${MOST_COPIES} copies: take a greater distance, or a smaller area.`);
  const box = field.rings.map(boxOfPoints).reduce(joinBoxes);
  const half = pitchMm / Math.SQRT2 / 2;
  const [columns, rows] = [
    Math.ceil((box.maxX - box.minX) / (2 * half)),
    Math.ceil((box.maxY - box.minY) / (2 * half)),
  ];
  if (!(columns * rows <= MOST_CELLS) || columns * rows * field.edges > MOST_COMPARED) return tooMany();
  const mayHold = ({ x, y, half: own }: Cell): boolean => field.room(x, y) + own * Math.SQRT2 >= small;
  let cells: Cell[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const cell = { x: box.minX + (2 * column + 1) * half, y: box.minY + (2 * row + 1) * half, half };
      if (mayHold(cell)) cells.push(cell);
    }
  }
  const put = (x: number, y: number): void => {
    const room = field.room(x, y);
    const wished = small + (large - small) * random();
    if (room >= small) field.put({ x, y, radius: Math.min(room, wished) });
  };
  for (let own = half; cells.length > 0 && own * Math.SQRT2 > FINEST_SHARE * pitchMm; own /= 2) {
    shuffle(cells, random);
    for (const { x, y } of cells) {
      put(x + own * (2 * random() - 1), y + own * (2 * random() - 1));
      if (field.circles.length > MOST_COPIES) return tooMany();
    }
    const quarter = own / 2;
    cells = cells.filter(mayHold).flatMap(({ x, y }) =>
      [
        { x: x - quarter, y: y - quarter, half: quarter },
        { x: x + quarter, y: y - quarter, half: quarter },
        { x: x - quarter, y: y + quarter, half: quarter },
        { x: x + quarter, y: y + quarter, half: quarter },
      ].filter(mayHold),
    );
    if (cells.length > MOST_CELLS) return tooMany();
  }
  for (const { x, y } of cells) put(x, y);
  return ok(
    cells
      .map(({ x, y, half: own }) => field.room(x, y) + own * Math.SQRT2 - small)
      .reduce((most, one) => Math.max(most, one), 0),
  );
}

function shuffle(cells: Cell[], random: () => number): void {
  for (let i = cells.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    [cells[i], cells[j]] = [cells[j], cells[i]];
  }
}
