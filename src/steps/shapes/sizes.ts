import type { SizeValues } from '../../model/shape-size.ts';

/** Sizes of one shape, read by name; a size that the shape has not, or that was not given, is our own mistake. */
export class Sizes {
  constructor(readonly values: SizeValues) {}

  has(name: string): boolean {
    return this.values[name] !== undefined;
  }

  /** A number in the unit of its field. */
  num(name: string): number {
    const value = this.values[name];
    if (typeof value !== 'number') throw new Error(`size ${name} is no number`);
    return value;
  }

  row(name: string): readonly number[] {
    const value = this.values[name];
    if (!Array.isArray(value)) throw new Error(`size ${name} is no row`);
    return value as readonly number[];
  }

  word(name: string): string {
    const value = this.values[name];
    if (typeof value !== 'string') throw new Error(`size ${name} is no word`);
    return value;
  }
}
