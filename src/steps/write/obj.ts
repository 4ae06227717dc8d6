import { plainText } from './plain-text.ts';
import type { Solid } from './solid.ts';

/** A piece on the surface it was laid flat from, with where its corners lie in the flat piece. */
export interface FlatSurface {
  readonly name: string;
  /** Packed x y z, mm: one for each vertex, or, with `isByCorner`, three for each triangle. */
  readonly points: ArrayLike<number>;
  readonly isByCorner: boolean;
  readonly triangles: Uint32Array;
  /** Packed x y per vertex, mm. */
  readonly flat: Float64Array;
}

/** Bodies as one OBJ, each an object of its own, mm. OBJ has no units: they stand in its first line. */
export function writeObj(solids: readonly Solid[], about: string): string {
  const lines = [`# ${oneLine(about)}`];
  let first = 1;
  for (const { name, points, triangles } of solids) {
    lines.push(`o ${objectName(name)}`);
    pushPoints(lines, 'v', points, 3);
    for (let i = 0; i < triangles.length; i += 3)
      lines.push(`f ${first + triangles[i]} ${first + triangles[i + 1]} ${first + triangles[i + 2]}`);
    first += points.length / 3;
  }
  return `${lines.join('\n')}\n`;
}

/**
 * Pieces on the sculpt as one OBJ whose texture coordinates are the flat pieces in mm, so that any program that reads OBJ can measure the
 * laying flat: a triangle's sides in `v` against its sides in `vt`.
 */
export function writeFlatObj(surfaces: readonly FlatSurface[], about: string): string {
  const lines = [`# ${oneLine(about)}`];
  let [firstPoint, firstFlat] = [1, 1];
  for (const { name, points, isByCorner, triangles, flat } of surfaces) {
    lines.push(`o ${objectName(name)}`);
    pushPoints(lines, 'v', points, 3);
    pushPoints(lines, 'vt', flat, 2);
    const corner = (h: number): string => `${firstPoint + (isByCorner ? h : triangles[h])}/${firstFlat + triangles[h]}`;
    for (let i = 0; i < triangles.length; i += 3) lines.push(`f ${corner(i)} ${corner(i + 1)} ${corner(i + 2)}`);
    firstPoint += points.length / 3;
    firstFlat += flat.length / 2;
  }
  return `${lines.join('\n')}\n`;
}

/** Decimals of a coordinate: a nanometre, so that strains can be computed from them to 1e-6 on triangles of a millimetre. */
const DECIMALS = 6;

function pushPoints(lines: string[], word: string, points: ArrayLike<number>, size: number): void {
  for (let i = 0; i < points.length; i += size) {
    const numbers = Array.from({ length: size }, (_, k) => plainNumber(points[i + k]));
    lines.push(`${word} ${numbers.join(' ')}`);
  }
}

function plainNumber(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`OBJ: coordinate ${value}`);
  const text = value.toFixed(DECIMALS).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

const oneLine = (words: string): string => plainText(words).replace(/\s+/g, ' ').trim();

/** Readers part names at spaces. */
const objectName = (name: string): string => oneLine(name).replace(/ /g, '-').replace(/#/g, '') || 'piece';
