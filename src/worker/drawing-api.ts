import type { Result } from '../base/result.ts';
import type { SurfacePoint } from '../model/seams.ts';

/** A picked place: a corner of the sculpt on show, or a place in one of its triangles, mm, which may be meant to lie on an edge. */
export type Spot =
  | { readonly corner: number }
  | { readonly triangle: number; readonly point: readonly [number, number, number]; readonly edge?: number };

/** What is drawn across faces. */
export type AcrossWish =
  /** From place to place, each stretch as short as it can be. */
  | { readonly by: 'straight'; readonly spots: readonly Spot[] }
  /** One smooth curve through all places; closed where the last is the first. */
  | { readonly by: 'curve'; readonly spots: readonly Spot[] }
  /** Where a plane cuts the sculpt, mm; with a spacing also where planes at equal distances from it do. */
  | {
      readonly by: 'plane';
      readonly point: readonly [number, number, number];
      readonly normal: readonly [number, number, number];
      readonly spacingMm?: number;
    }
  /** A line of corners of the sculpt on show, pulled taut within a distance of where it runs. */
  | { readonly by: 'taut'; readonly corners: readonly number[]; readonly withinMm: number };

/** A line across faces, as the document keeps it and as it is drawn. */
export interface AcrossLine {
  /** A closed line ends with the point it begins with. */
  readonly points: readonly SurfacePoint[];
  /** The same in space, x y z, mm. */
  readonly xyz: Float32Array;
  readonly lengthMm: number;
  /** Of a line pulled taut: how far it strays from where it ran, mm. */
  readonly farthestMm?: number;
}

/** Lines across faces, drawn on the sculpt of the last compute. */
export interface Drawing {
  /**
   * @param isMirrored true to draw each line on the other side of the mirror too, where its faces have their like there.
   * @returns fails with `seams/no-path`, `seams/too-many-planes` or `seams/missed`.
   */
  drawAcross(wish: AcrossWish, isMirrored?: boolean): Promise<Result<readonly AcrossLine[]>>;
}
