import { formatNumber } from '../../base/format-length.ts';
import type { Finding } from '../../base/finding.ts';
import { isInRings } from '../../geom/in-rings.ts';
import { coveredRegions, grownRegions, type Region } from '../../geom/polygon-boolean.ts';
import { ringArea, type Ring } from '../../geom/ring.ts';
import type { Vec2 } from '../../geom/vec.ts';
import { depthInside, widestSpot } from '../../geom/widest-spot.ts';
import type { ArtRegion } from '../../model/artwork.ts';
import { isRingInside } from './regions.ts';

/** Findings of one kind for a piece. */
const MOST_TOLD = 12;
/** A tip or an inlet of less than so many squares of the distance is no more than a corner. */
const SMALLEST_SHARE = 1;

/** What is lost where areas shrink: areas that are gone, necks that part, holes that break open, tips that are too thin. */
export function lossesInward(
  piece: string,
  regions: readonly ArtRegion[],
  rings: readonly (readonly Ring[])[],
  left: readonly Region[],
  distanceMm: number,
): readonly Finding[] {
  const told = new Told(piece, distanceMm);
  for (const [i] of regions.entries()) {
    const own = left.filter(({ outer }) => isRingInside(outer, rings[i][0]) && !liesInHole(outer, rings[i]));
    if (own.length === 0) {
      told.add('gone', middleOf(rings[i]), 'an area is nowhere wide enough and is gone');
      continue;
    }
    for (let k = 1; k < own.length; k += 1)
      told.add('parted', between(own[k], own[k - 1]), 'a neck is too narrow: the piece parts there');
    const holes = own.flatMap((region) => region.holes);
    const [outer, ...before] = rings[i];
    for (const hole of before) {
      if (
        holes.some((ring) => isRingInside(hole, ring) && before.filter((one) => isRingInside(one, ring)).length === 1)
      )
        continue;
      const others = before.filter((one) => one !== hole);
      told.add('broken', nearestOf(hole, [outer, ...others]), 'a hole breaks open: too little foam stands beside it');
    }
    const back = grownRegions(own.flatMap(ringsOf), distanceMm);
    for (const tip of without(rings[i], back.flatMap(ringsOf)))
      if (own.length === 1 && isLarge(tip, distanceMm) && !told.isNear(tip))
        told.add('tip', middleOf([tip.outer, ...tip.holes]), 'a part is too thin and is gone');
  }
  return told.findings();
}

/** What is lost where areas grow: holes and inlets that close, areas that run together. */
export function lossesOutward(
  piece: string,
  regions: readonly ArtRegion[],
  rings: readonly (readonly Ring[])[],
  grown: readonly Region[],
  distanceMm: number,
): readonly Finding[] {
  const told = new Told(piece, distanceMm);
  for (const region of grown) {
    const own = regions.map((_, i) => i).filter((i) => isRingInside(rings[i][0], region.outer));
    const inHole = (i: number): boolean => region.holes.some((hole) => isRingInside(rings[i][0], hole));
    const joined = own.filter((i) => !inHole(i));
    for (const [k, i] of joined.entries())
      if (k > 0)
        told.add(
          'joined',
          nearestOf(
            rings[i][0],
            joined.slice(0, k).map((j) => rings[j][0]),
          ),
          'two areas run together',
        );
  }
  const holesLeft = grown.flatMap(({ holes }) => holes);
  for (const [, ...holes] of rings) {
    for (const hole of holes) {
      const own = holesLeft.filter((ring) => isRingInside(ring, hole));
      if (own.length === 0) told.add('closed', middleOf([hole]), 'a hole closes');
      for (let k = 1; k < own.length; k += 1)
        told.add('closed', nearestOf(own[k], [own[k - 1]]), 'a hole closes in its narrowest place and parts');
    }
  }
  const source = rings.flat();
  const back = grownRegions(grown.flatMap(ringsOf), -distanceMm);
  for (const inlet of without(back.flatMap(ringsOf), source)) {
    if (!isLarge(inlet, distanceMm) || told.isNear(inlet)) continue;
    const middle = middleOf(ringsOf(inlet));
    const isHole = rings.some(([, ...holes]) => isInRings(holes, middle.x, middle.y));
    if (!isHole) told.add('closed', middle, 'an inlet or gap closes');
  }
  return told.findings();
}

type Loss = 'gone' | 'parted' | 'broken' | 'tip' | 'joined' | 'closed';

class Told {
  readonly #counts = new Map<Loss, number>();
  readonly #findings: Finding[] = [];
  readonly #piece: string;
  readonly #distanceMm: number;

  constructor(piece: string, distanceMm: number) {
    [this.#piece, this.#distanceMm] = [piece, distanceMm];
  }

  add(loss: Loss, { x, y }: Vec2, text: string): void {
    const count = (this.#counts.get(loss) ?? 0) + 1;
    this.#counts.set(loss, count);
    if (count > MOST_TOLD) return;
    this.#findings.push({
      code: `artwork/offset-${loss}`,
      severity: 'warning',
      text: `In ${this.#piece} at x ${formatNumber(x, 1)}, y ${formatNumber(y, 1)} mm ${text}. A distance of ${formatNumber(this.#distanceMm, 2)} mm keeps only what is wider than ${formatNumber(2 * this.#distanceMm, 2)} mm: take a smaller one, or draw it wider there.`,
      value: this.#distanceMm,
      unit: 'mm',
      where: { piece: this.#piece, point: [x, y, 0] },
    });
  }

  /** Whether an area lies where something was told already: it is the same loss. */
  isNear(area: Region): boolean {
    const rings = ringsOf(area);
    return this.#findings.some(({ where: { point } }) =>
      point === undefined ? false : depthInside(rings, point[0], point[1]) > -2 * this.#distanceMm,
    );
  }

  findings(): readonly Finding[] {
    const more = [...this.#counts].flatMap(([loss, count]): Finding[] =>
      count <= MOST_TOLD
        ? []
        : [
            {
              code: `artwork/offset-${loss}`,
              severity: 'warning',
              text: `And ${count - MOST_TOLD} more places like these in ${this.#piece}.`,
              value: count - MOST_TOLD,
              where: { piece: this.#piece },
            },
          ],
    );
    return [...this.#findings, ...more];
  }
}

const ringsOf = ({ outer, holes }: Region): readonly Ring[] => [outer, ...holes];

const isLarge = ({ outer }: Region, distanceMm: number): boolean => ringArea(outer) > SMALLEST_SHARE * distanceMm ** 2;

const liesInHole = (ring: Ring, [, ...holes]: readonly Ring[]): boolean =>
  holes.some((hole) => isRingInside(ring, hole));

/** Areas less what others cover. */
const without = (areas: readonly Ring[], others: readonly Ring[]): readonly Region[] =>
  coveredRegions([
    ...areas,
    ...others.map((ring) => ring.map((_, k) => ring[ring.length - 2 - 2 * (k >> 1) + (k & 1)])),
  ]);

/** The middle of the widest place of an area. */
const middleOf = (rings: readonly Ring[]): Vec2 => widestSpot(rings, 0.05);

const between = (a: Region, b: Region): Vec2 => nearestOf(a.outer, ringsOf(b));

/** Half-way between a ring and the nearest place of others, by the corners of both. */
function nearestOf(ring: Ring, others: readonly Ring[]): Vec2 {
  let best = { distance: Infinity, x: ring[0], y: ring[1] };
  const look = (one: Ring, many: readonly Ring[]): void => {
    for (let i = 0; i < one.length; i += 2) {
      const distance = Math.abs(depthInside(many, one[i], one[i + 1]));
      if (distance < best.distance) best = { distance, x: one[i], y: one[i + 1] };
    }
  };
  look(ring, others);
  for (const other of others) look(other, [ring]);
  return best;
}
