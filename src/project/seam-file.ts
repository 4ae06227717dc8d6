import * as v from 'valibot';
import { readJson } from '../base/read-json.ts';
import { fail, ok, type Result } from '../base/result.ts';
import type { SeamMarks, SeamSetting } from '../model/seams.ts';
import { brokenPlace } from './broken-place.ts';
import { seamPathSchema } from './seam-path-schema.ts';
import { seamSettingSchema } from './seam-setting-schema.ts';

/** A seam file: which edges of which model are parted, and how the foam is joined there again. Numbers count the file's vertices from 0. */
export interface SeamFile {
  /** SHA-256 of the model the seams were drawn on, or null when the file does not say. */
  readonly modelHash: string | null;
  readonly marks: SeamMarks;
  /** Empty where the file does not say: seams stay as they are joined. */
  readonly joins: readonly SeamSetting[];
}

const number = v.pipe(v.number(), v.integer(), v.minValue(0));

const schema = v.object({
  version: v.literal(1),
  modelHash: v.optional(v.string()),
  edges: v.optional(v.array(v.strictTuple([number, number])), []),
  paths: v.optional(v.array(seamPathSchema), []),
  joins: v.optional(v.array(seamSettingSchema), []),
});

/** Reads a seam file. Fails with `seams/not-json` or `seams/broken`. */
export function readSeamFile(text: string, fileName: string): Result<SeamFile> {
  const raw = readJson(text, fileName, () =>
    fail(
      'seams/not-json',
      `${fileName} is not valid JSON: a seam file looks like {"version":1,"edges":[[0,1],[1,2]]}.`,
    ),
  );
  if (!raw.ok) return raw;
  const parsed = v.safeParse(schema, raw.value, { abortEarly: true });
  if (!parsed.success) {
    const [issue] = parsed.issues;
    return fail('seams/broken', `${fileName} is not a seam file: ${brokenPlace(issue)}.`);
  }
  const { modelHash, edges, paths, joins } = parsed.output;
  return ok({ modelHash: modelHash ?? null, marks: { edges, paths }, joins });
}
