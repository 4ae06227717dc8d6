import type { SeamOfPieces } from './shop-choices.ts';
import data from '../../shared/clays.json';

/** A clay that dries in air, as its label says. */
export interface Clay {
  readonly id: string;
  readonly name: string;
  /** Thickest layer that dries through, mm, > 0. */
  readonly layerMm: number;
  /** How long such a layer dries before the next, or before it is sanded, hours. */
  readonly dryH: number;
  /** What it loses in length when it dries, per cent, 0 to under 50. */
  readonly shrinkPct: number;
  /** Ids of the cautions that belong to working it dry. */
  readonly cautions: readonly string[];
}

export const CLAYS: readonly Clay[] = data.clays.map((clay) => checkClay(clay));

/** What is taken where the maker chose none. */
export const FIRST_CLAY: Clay = CLAYS[0];

/** Where the figures come from, whole sentences. */
export const CLAY_SOURCES: readonly string[] = data.sources;

/** Thickest build-up and widest fillet taken, mm: more is a body of foam under a skin of clay. */
export const MOST_CLAY_MM = 60;

/** A seam that is filled with clay to a round hollow of this radius, mm. */
export interface ClayFillet extends SeamOfPieces {
  readonly radiusMm: number;
}

/** A shape built up in clay over an area. */
export interface ClayShape {
  /** Over the face of the foam, mm. */
  readonly heightMm: number;
}

/** @throws RangeError where a clay could not be used. */
export function checkClay(clay: Clay): Clay {
  const { layerMm, dryH, shrinkPct } = clay;
  if (!(layerMm > 0 && dryH >= 0 && shrinkPct >= 0 && shrinkPct < 50))
    throw new RangeError(`clay ${clay.id} cannot be used`);
  return clay;
}

/** Layers that dry through, of a thickness, mm. */
export const clayLayers = (thicknessMm: number, layerMm: number): number =>
  thicknessMm <= 0 ? 0 : Math.max(1, Math.ceil(thicknessMm / layerMm - 1e-9));

/** What is bought for what is there when it is dry: it loses that share of its length each way. */
export const wetVolume = (dry: number, shrinkPct: number): number => dry / (1 - shrinkPct / 100) ** 3;
