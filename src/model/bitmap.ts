/** How grey adds up at an edge: as drawing programs blend it, by the numbers of the file, or as light does before a camera. */
export type PictureLight = 'drawn' | 'photo';

/** Size of pixels as a file says it, px to the mm across and down, > 0. */
export interface PictureDensity {
  readonly x: number;
  readonly y: number;
  /** Where it stands in the file. */
  readonly saidBy: 'pHYs' | 'JFIF' | 'EXIF';
}

/**
 * A picture in grey. Its places are counted in px from the upper left corner, y down: the middle of the first pixel is 0.5, 0.5.
 */
export interface Bitmap {
  /** Whole, >= 1. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** 0 black to 1 white, row by row from the top; what is see-through lies on white. Linear in light for `photo`, else as the file counts. */
  readonly grey: Float32Array;
  readonly light: PictureLight;
  readonly density: PictureDensity | null;
}

/**
 * What of a picture is inside a shape: at or over `level`. One pixel wider than the picture on each side, and nothing on its rim is inside, so that all
 * lines close.
 */
export interface InkField {
  readonly widthPx: number;
  readonly heightPx: number;
  /** (`widthPx` + 2) x (`heightPx` + 2) values, row by row from the top. */
  readonly ink: Float32Array;
  readonly level: number;
}
