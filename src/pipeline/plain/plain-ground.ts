import { fail, ok, type Result } from '../../base/result.ts';
import type { FoamSheet } from '../../model/foam-stock.ts';
import type { SourceModel } from '../../model/source-model.ts';
import type { PlainSource } from '../../project/plain-part.ts';
import type { Source } from '../sculpt-stage.ts';
import type { TrimSculpt } from '../trim-sculpt.ts';

/** What a part is made with, beside its own figures. */
export interface PlainGround {
  /** Its own, the usual one first. */
  readonly foams: readonly FoamSheet[];
  /** The sculpt it lies on; null where it lies on none, or that is not parted. */
  readonly on: TrimSculpt | null;
  /** Sheets of the wall it is let into, from the face inward, mm; empty where it is let into none. */
  readonly wallMm: readonly number[];
  /** Files by hash, and the models in them as they were read. */
  readonly sourceOf: (hash: string) => Source | undefined;
  readonly modelOf: (hash: string) => Result<SourceModel> | undefined;
}

/** The bytes of a file a part is made from; fails with `plain/no-source` where it is not here. */
export function bytesOf({ hash, fileName }: PlainSource, { sourceOf }: PlainGround): Result<Uint8Array> {
  const source = sourceOf(hash);
  return source === undefined ? noSource(fileName) : ok(source.bytes);
}

export const noSource = (fileName: string): Result<never> =>
  fail('plain/no-source', `The file ${fileName} is not here: choose it again.`);
