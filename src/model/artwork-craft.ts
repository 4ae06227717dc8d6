/** How corners of an outline come out that was moved outward. */
export type OffsetCorners = 'round' | 'sharp';

/** How pieces are cut from artwork as it is. */
export interface ArtworkCut {
  /** Of the sheet it is cut from, mm, > 0. */
  readonly thicknessMm: number;
  /** How many of each piece, 1 or more; 1 when left out. */
  readonly quantity?: number;
  /** Also as many that are mirrored left to right. */
  readonly isMirroredToo?: boolean;
}

/** How an insert is let into a pocket. */
export interface InlayWish {
  /** Gap all round in the finished work, mm, >= 0. */
  readonly clearanceMm: number;
  /** Which of the two gives way for it; `both`: half each. */
  readonly from: 'pocket' | 'insert' | 'both';
  /** What the cut takes away where the machine runs on the line itself, mm, >= 0; 0 for a blade, or where the machine allows for it. */
  readonly kerfMm: number;
  readonly corners: OffsetCorners;
}

/** The edge of raised artwork: upright, leaning from the ground up, degrees from square, or rounded over so many mm. */
export type RaisedEdge =
  | { readonly kind: 'square' }
  | { readonly kind: 'bevel'; readonly leanDeg: number }
  | { readonly kind: 'rounded'; readonly widthMm: number };

/**
 * Where on its height a layer's own upright edge stands on the smooth one: at its lower face, so that foam is only taken off; or half-way up, so that
 * as much is taken off above as is missing below, to first order.
 */
export type RaisedRule = 'edge' | 'middle';

/** A badge of several sheets. */
export interface RaisedWish {
  readonly layers: number;
  readonly thicknessMm: number;
  readonly edge: RaisedEdge;
  readonly rule: RaisedRule;
}

/** So many, or so far apart, mm, fitted to a whole count. */
export type RepeatCount = { readonly count: number } | { readonly spacingMm: number };

/** How artwork is repeated along a line, mm. */
export interface AlongWish {
  readonly repeat: RepeatCount;
  /** Free at the start and at the end of an open line; on a closed one the first stands so far from its start. */
  readonly startMm: number;
  readonly endMm: number;
  /** Of an open line: a copy on both ends, on the first alone, or half a spacing off both. */
  readonly ends: 'both' | 'first' | 'none';
  /** Turned with the line, or upright as drawn. */
  readonly stand: 'along' | 'upright';
}

/** How artwork is repeated on a strip that is bent round a barrel. */
export interface RoundWish {
  readonly repeat: RepeatCount;
  /** Where a wished spacing is meant: on the face that is seen, on the flat strip, or on the barrel. */
  readonly spacedOn: 'outside' | 'flat' | 'inside';
  /** Outside diameter of the barrel, which the foam lies on, mm. */
  readonly barrelMm: number;
  readonly thicknessMm: number;
  /** k, 0 to 1. */
  readonly neutralFraction: number;
  /** Of the strip, mm. */
  readonly stripMm: number;
  /** Drawn into the face, or cut out of other foam and glued on. */
  readonly as: 'engrave' | 'placement';
}

/** How artwork is scattered over an area. */
export interface ScatterWish {
  /** Free between the circles round any two, mm, >= 0. */
  readonly leastMm: number;
  /** Free between the circle round each and the edge of the area, mm, >= 0. */
  readonly edgeMm: number;
  /** Sizes run evenly from 1 - this to 1 + this, 0 to 0.9. */
  readonly sizeShare: number;
  /** Turned by up to so much either way, radians, 0 to pi. */
  readonly turnRad: number;
  readonly seed: number;
}

/** One thing that is done with artwork. `along` and `scatter` go over another drawing. */
export type ArtworkCraft =
  | ({ readonly kind: 'cut' } & ArtworkCut)
  | { readonly kind: 'offset'; readonly distanceMm: number; readonly corners: OffsetCorners }
  | ({ readonly kind: 'inlay' } & InlayWish)
  | ({ readonly kind: 'raised' } & RaisedWish)
  /** Left out, the strip is as wide as the artwork is high and as much again. */
  | ({ readonly kind: 'round' } & Omit<RoundWish, 'stripMm'> & { readonly stripMm?: number })
  | ({ readonly kind: 'along' } & AlongWish)
  | ({ readonly kind: 'scatter' } & ScatterWish);
