import type { Vec2 } from '../geom/vec.ts';
import type { PictureLight } from './bitmap.ts';

/** A place of a picture, px from its upper left corner, y down, and where it truly is, mm, y up. */
export interface KnownPlace {
  readonly px: Vec2;
  readonly mm: Vec2;
}

/** How far a known place is from where the picture, set straight, has it. */
export interface PlaceResidual extends KnownPlace {
  readonly residualMm: number;
  readonly residualPx: number;
}

/** A length the maker knows, held against the traced picture. */
export interface CheckedLength {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly givenMm: number;
  readonly foundMm: number;
}

/** What a camera with square pixels that looks through the picture's middle would have seen, beside what was given. */
export interface CameraCheck {
  /** Width to height: as given, and as such a camera implies; null where the picture does not tell. */
  readonly givenAspect: number;
  readonly impliedAspect: number | null;
  /** Standard deviation that points known to half a pixel leave. */
  readonly aspectDeviation: number | null;
  /** Of such a camera, px; null for a picture without perspective. */
  readonly focalPx: number | null;
}

/** A photograph set straight. */
export interface PhotoReport {
  readonly places: readonly PlaceResidual[];
  /** Root of the mean square of all residuals, mm. */
  readonly rmsMm: number;
  /** Four places settle the map, so that their residuals are nought and tell nothing. */
  readonly isExact: boolean;
  readonly camera: CameraCheck | null;
}

/** How a picture came to lines, and how near these are to it. */
export interface PictureTrace {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly light: PictureLight;
  /** Grey as programs show it, 0 black to 100 white. */
  readonly thresholdPct: number;
  readonly isThresholdGiven: boolean;
  readonly isTwoTone: boolean;
  readonly scaledBy: 'points' | 'width' | 'height' | 'dpi' | 'file' | 'photo';
  /** Across and down, or null for a photograph set straight, where it changes from place to place. */
  readonly mmPerPx: readonly [number, number] | null;
  /** What was allowed, and what was reached: greatest distance between curves and the line of the grey level, mm. */
  readonly limitMm: number;
  readonly deviationMm: number;
  /** How far corners stand out of that line at most, mm: a picture rounds them off, and their sides were brought to each other. */
  readonly cornerMm: number;
  readonly corners: number;
  readonly straightParts: number;
  readonly curves: number;
  /** Lines no curve could follow within the limit: their places are joined straight. */
  readonly joinedLines: number;
  /** Spots and pinholes left out, each smaller than `specksMm2`. */
  readonly specks: number;
  readonly specksMm2: number;
  readonly checks: readonly CheckedLength[];
  readonly photo: PhotoReport | null;
}
