import { pointAt3, sub3, length3 } from '../../geom/vec.ts';
import type { MatchMark, TracedSide } from '../../model/foam-piece.ts';
import type { FoamRules } from '../../model/foam-settings.ts';
import type { SeamChain, SeamSide } from '../../model/seams.ts';
import { nearestOnRings, pointOnMoved } from './cut-lines.ts';
import { stationsAlong } from './edge-offsets.ts';
import type { EdgeRun } from './edge-runs.ts';
import { hingedEnds, type HingeShapes } from './hinge-shapes.ts';
import { markStations } from './match-marks.ts';
import type { PatchBend } from './part-bends.ts';
import { tracedLines, type PieceShape } from './piece-shape.ts';
import {
  placeAt,
  placeOn,
  stationAt,
  type ChainPlace,
  type MarkPlace,
  type Stations,
  type WalkedSide,
} from './seam-walk.ts';

/** Length of a chain on a surface up to each of its vertices, mm. */
export function trueStations(chain: SeamChain, positions: Float64Array): Stations {
  const stations = new Float64Array(chain.vertices.length);
  for (let i = 1; i < stations.length; i += 1) {
    stations[i] =
      stations[i - 1] +
      length3(sub3(pointAt3(positions, chain.vertices[i]), pointAt3(positions, chain.vertices[i - 1])));
  }
  return stations;
}

/** Length of one side of a seam up to each vertex of the chain as the panels of a grooved piece have it, mm. */
export function hingedStations(bend: PatchBend, shapes: HingeShapes, side: SeamSide, which: 0 | 1): Stations {
  const ends = hingedEnds(bend, shapes, side, which);
  const stations = new Float64Array(side.localVertices.length);
  for (let i = 1; i < stations.length; i += 1) {
    stations[i] = stations[i - 1] + length3(sub3(pointAt3(ends, 3 * i - 2), pointAt3(ends, 3 * i - 3)));
  }
  return stations;
}

/**
 * Where a seam's match marks stand, in the chain's order; an open edge meets nothing and has none.
 * @param sides each side as it is walked. Spacing is kept on the longest of flat and true lengths, step by step: a flat side that came out
 *              longer than the seam on the prop would else have its marks too far apart.
 * @param across which places of both sides come together.
 * @param longestMm length of the longest of this seam and those that mirror it, mm.
 */
export function markPlaces(
  chain: SeamChain,
  sides: readonly WalkedSide[],
  rules: FoamRules,
  across: (place: ChainPlace) => MarkPlace,
  longestMm: number,
): readonly MarkPlace[] {
  if (chain.kind === 'open' || sides.length === 0) return [];
  const stations = longestStations(sides.flatMap(({ flat, own }) => [flat, own]));
  const isRound = chain.vertices[0] === chain.vertices[chain.vertices.length - 1];
  return markStations(stations[stations.length - 1], chain.closed || isRound, rules, longestMm).map((s) =>
    across(placeAt(stations, s)),
  );
}

/** Length of a seam as its marks are counted along it: the longest of flat and true lengths, step by step, mm; 0 where no piece could be made. */
export const markedLength = (sides: readonly WalkedSide[]): number =>
  sides.length === 0 ? 0 : (longestStations(sides.flatMap(({ flat, own }) => [flat, own])).at(-1) ?? 0);

/** What rounding may add to a length, mm. */
const ROUNDING_MM = 1e-6;

/** Whether marks stand no farther apart than they may, on the longest of flat and true lengths. */
export function areMarksNear(sides: readonly WalkedSide[], places: readonly MarkPlace[], rules: FoamRules): boolean {
  if (sides.length === 0) return true;
  const stations = longestStations(sides.flatMap(({ flat, own }) => [flat, own]));
  const whole = stations[stations.length - 1];
  const at = places.map((place) => stationAt(stations, placeOn(place, 0)));
  return [...at, whole].every((s, i) => s - (i === 0 ? 0 : at[i - 1]) <= rules.markSpacingMm + ROUNDING_MM);
}

/** Stations that take the longest of every step. */
function longestStations(walks: readonly Stations[]): Stations {
  const longest = new Float64Array(walks[0].length);
  for (let i = 1; i < longest.length; i += 1) {
    longest[i] = longest[i - 1] + Math.max(...walks.map((stations) => stations[i] - stations[i - 1]));
  }
  return longest;
}

/** Arc length of one side of a seam on the flat neutral line, at each vertex of the chain in the chain's order, mm. */
export function sideStations(shape: PieceShape, run: EdgeRun): Stations {
  const along = stationsAlong(shape.neutral[run.ring], run);
  if (!run.reversed) return along;
  const whole = along[along.length - 1];
  return along.map((_, i) => whole - along[along.length - 1 - i]);
}

/**
 * The ticks of one piece: each stands on the line that is traced, across from its like on the other side.
 * @param places per chain.
 */
export function pieceMarks(
  shape: PieceShape,
  runs: readonly EdgeRun[],
  chains: readonly SeamChain[],
  places: readonly (readonly MarkPlace[])[],
  traced: TracedSide,
): readonly MatchMark[] {
  const lines = tracedLines(shape, traced);
  const rings = [lines.outline, ...lines.holes];
  return runs.flatMap((run) => {
    const chain = chains[run.chain];
    const stations = sideStations(shape, run);
    const neutral = shape.neutral[run.ring];
    const offsets = shape.offsets[run.ring][traced];
    return places[run.chain].map((mark, i) => {
      const place = placeOn(mark, run.side);
      const j = run.reversed ? run.count - 1 - place.edge : place.edge;
      const share = run.reversed ? 1 - place.share : place.share;
      const { at, outward } = pointOnMoved(neutral, offsets, (run.from + j) % (neutral.length / 2), share);
      return {
        seam: chain.id,
        letter: chain.letter,
        index: mark.number ?? i + 1,
        side: run.side,
        stationMm: stationAt(stations, place),
        // Where a line was cleaned away near a corner the tick moves to what is left of it.
        at: nearestOnRings(rings, at),
        outward,
      };
    });
  });
}
