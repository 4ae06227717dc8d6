import type { Fail, Result } from '../../base/result.ts';
import type { Work } from '../../base/work.ts';
import type { RawModel } from './raw-model.ts';

/** How many bytes of text are read between two pauses. */
const STRIDE = 1 << 18;

/** Longest name taken from a file, bytes. */
export const NAME_BYTES = 1000;

/** A reader that goes through a text piece by piece. */
export interface TextReader {
  readonly isAtEnd: boolean;
  /** Place of the next byte to read. */
  readonly at: number;
  /** Reads whole statements until the place is reached or passed; a fault ends the reading. */
  readTo(place: number): Fail | null;
  finish(): Result<RawModel>;
}

/**
 * Reads a text to its end, with pauses on the way.
 * @param from  first byte after a byte order mark.
 * @param length  of the whole file, bytes.
 */
export async function readText(
  reader: TextReader,
  from: number,
  length: number,
  work: Work,
): Promise<Result<RawModel>> {
  for (let to = from; !reader.isAtEnd;) {
    await work.pause(reader.at / length, 'reading the model');
    to = Math.max(to, reader.at) + STRIDE;
    const fault = reader.readTo(to);
    if (fault !== null) return fault;
  }
  return reader.finish();
}
