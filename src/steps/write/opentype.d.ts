/** The part of opentype.js 2.0.0 that is used: it brings no types of its own. By its file, because Node and bundlers find different ones by its name. */
declare module 'opentype.js/dist/opentype.mjs' {
  /** Units of the font, y up. Quadratic curves have one control point, cubic ones two. */
  export type PathCommand =
    | { readonly type: 'M' | 'L'; readonly x: number; readonly y: number }
    | { readonly type: 'Q'; readonly x1: number; readonly y1: number; readonly x: number; readonly y: number }
    | {
        readonly type: 'C';
        readonly x1: number;
        readonly y1: number;
        readonly x2: number;
        readonly y2: number;
        readonly x: number;
        readonly y: number;
      }
    | { readonly type: 'Z' };
  export interface Font {
    readonly unitsPerEm: number;
    charToGlyph(character: string): { readonly path: { readonly commands: readonly PathCommand[] } };
  }
  export function parse(buffer: ArrayBuffer): Font;
}
