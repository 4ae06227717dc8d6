import { shortestWays, type Step } from './shortest-ways.ts';
import { distance, type Point, type Surface } from './surface.ts';

export interface RegionChoice {
  /** How many regions to begin with. */
  readonly count: number;
  /** What a fold of one radian costs, as a share of the diagonal: borders then come to lie in creases. */
  readonly foldCost: number;
  /** A fold under this costs nothing, radians: facets of a round thing are no creases. */
  readonly foldFree: number;
}

/** Rounds in which the seeds move to the middle of their regions (Lloyd 1982). */
const ROUNDS = 6;

/**
 * Parts the faces into regions round seeds that stand far from each other (farthest point first), with borders drawn to creases.
 * @returns the region of each face, numbered from 0; every region hangs together
 */
export function regionsOf(surface: Surface, choice: RegionChoice): number[] {
  const steps = faceSteps(surface, choice);
  let seeds = [highestFace(surface)];
  while (seeds.length < choice.count) {
    const { cost } = shortestWays(surface.faces.length, seeds, (f) => steps[f]);
    let farthest = 0;
    // Pieces of the surface without a seed are infinitely far and get theirs first.
    for (let f = 1; f < cost.length; f += 1) if (cost[f] > cost[farthest]) farthest = f;
    seeds.push(farthest);
  }
  let regions: number[] = [];
  for (let round = 0; round <= ROUNDS; round += 1) {
    const { start } = shortestWays(surface.faces.length, seeds, (f) => steps[f]);
    regions = [...start].map((seed) => seeds.indexOf(seed));
    if (round < ROUNDS) seeds = seeds.map((seed, r) => middleFace(surface, regions, r, seed));
  }
  return hangTogether(surface, smoothBorders(surface, regions));
}

function faceSteps(surface: Surface, { foldCost, foldFree }: RegionChoice): Step[][] {
  return surface.faces.map((_, f) =>
    surface.edgesOfFace[f].flatMap((e) => {
      const edge = surface.edges[e];
      if (edge.faces.length !== 2) return [];
      const to = edge.faces[0] === f ? edge.faces[1] : edge.faces[0];
      const sharp = Math.max(0, edge.fold - foldFree);
      return [
        { to, by: e, cost: distance(surface.centres[f], surface.centres[to]) + foldCost * surface.diagonal * sharp },
      ];
    }),
  );
}

function highestFace({ centres }: Surface): number {
  let best = 0;
  for (let f = 1; f < centres.length; f += 1) if (centres[f][1] > centres[best][1]) best = f;
  return best;
}

/** The face of a region nearest to the mean of its faces' middles. */
function middleFace({ centres }: Surface, regions: readonly number[], region: number, seed: number): number {
  const own = regions.flatMap((r, f) => (r === region ? [f] : []));
  if (own.length === 0) return seed;
  const mean = [0, 1, 2].map((k) => own.reduce((sum, f) => sum + centres[f][k], 0) / own.length) as unknown as Point;
  return own.reduce((best, f) => (distance(centres[f], mean) < distance(centres[best], mean) ? f : best), own[0]);
}

/** Most sweeps of smoothing; it settles long before. */
const SWEEPS = 12;

/** A face that has more of its border with one other region than with its own goes over to it: saw teeth become lines. */
function smoothBorders(surface: Surface, regions: readonly number[]): number[] {
  const smooth = [...regions];
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let changed = false;
    for (let f = 0; f < smooth.length; f += 1) {
      const shared = new Map<number, number>();
      for (const e of surface.edgesOfFace[f]) {
        const edge = surface.edges[e];
        const other = edge.faces.find((g) => g !== f);
        // A crease counts little: a border may stay there.
        if (other !== undefined) {
          shared.set(smooth[other], (shared.get(smooth[other]) ?? 0) + edge.length / (1 + 4 * edge.fold ** 2));
        }
      }
      let best = smooth[f];
      for (const [region, length] of shared) if (length > (shared.get(best) ?? 0) * 1.05) best = region;
      if (best !== smooth[f]) {
        smooth[f] = best;
        changed = true;
      }
    }
    if (!changed) break;
  }
  return smooth;
}

/** A part cut off from the rest of its region joins the neighbour it shares the longest border with. */
function hangTogether(surface: Surface, regions: readonly number[]): number[] {
  const joined = [...regions];
  const parts = partsOf(surface, joined).sort((a, b) => b.length - a.length);
  const seen = new Set<number>();
  for (const part of parts) {
    const region = joined[part[0]];
    if (!seen.has(region)) {
      seen.add(region);
      continue;
    }
    const shared = new Map<number, number>();
    for (const f of part) {
      for (const e of surface.edgesOfFace[f]) {
        const other = surface.edges[e].faces.find((g) => joined[g] !== region);
        if (other !== undefined) shared.set(joined[other], (shared.get(joined[other]) ?? 0) + surface.edges[e].length);
      }
    }
    const [best] = [...shared].sort((a, b) => b[1] - a[1]);
    for (const f of part) joined[f] = best[0];
  }
  return joined;
}

function partsOf(surface: Surface, regions: readonly number[]): number[][] {
  const isSeen = new Uint8Array(regions.length);
  const parts: number[][] = [];
  for (let seed = 0; seed < regions.length; seed += 1) {
    if (isSeen[seed] === 1) continue;
    isSeen[seed] = 1;
    const part = [seed];
    for (const f of part) {
      for (const e of surface.edgesOfFace[f]) {
        for (const g of surface.edges[e].faces) {
          if (isSeen[g] === 1 || regions[g] !== regions[f]) continue;
          isSeen[g] = 1;
          part.push(g);
        }
      }
    }
    parts.push(part);
  }
  return parts;
}
