import * as v from 'valibot';
import { patchBetween, patched } from '../base/json-patch.ts';
import { fail, ok, type Result } from '../base/result.ts';
import { sharedWith } from '../base/share-equal.ts';
import { firstById, firstByName } from './first-by.ts';
import {
  documentOf,
  LONGEST_NAME,
  MOST_VERSIONS,
  versionsOf,
  type Document,
  type KeptVersion,
} from './kept-version.ts';
import type { Project } from './project.ts';

/** Steps of one version's patch at most; where there would be more, the document is written whole. */
const MOST_CHANGES = 10_000;

const path = v.pipe(v.string(), v.regex(/^(\/[^~]*(~[01][^~]*)*)?$/));

/** What a project file holds of its kept versions: each by what differs from the document in the file, as JSON Patch (RFC 6902). */
export const versionsSchema = v.pipe(
  v.array(
    v.object({
      id: v.string(),
      name: v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(LONGEST_NAME)),
      keptAt: v.pipe(v.string(), v.isoTimestamp()),
      changes: v.pipe(
        v.array(
          v.variant('op', [
            v.object({ op: v.picklist(['add', 'replace']), path, value: v.unknown() }),
            v.object({ op: v.literal('remove'), path }),
          ]),
        ),
        v.maxLength(MOST_CHANGES),
      ),
    }),
  ),
  v.maxLength(MOST_VERSIONS),
  v.checkItems(
    (one, index, list) => firstById(one, index, list) && firstByName(one, index, list),
    'a version with an id and a name of its own',
  ),
);

export type WrittenVersion = v.InferOutput<typeof versionsSchema>[number];

/**
 * The kept versions of a project as its file holds them.
 * @param inOrder  a document with its fields in the order of the file.
 */
export function writtenVersions(
  project: Project,
  inOrder: (document: Document) => Document = (document) => document,
): readonly WrittenVersion[] {
  const now = inOrder(documentOf(project));
  return versionsOf(project).map(({ id, name, keptAt, document }) => {
    const own = inOrder(document);
    const changes = patchBetween(now, own);
    const whole = [{ op: 'replace' as const, path: '', value: own }];
    return { id, name, keptAt, changes: [...(changes.length > MOST_CHANGES ? whole : changes)] };
  });
}

/**
 * Versions as they are written, each put together from the document as the file holds it.
 * @param raw       that document, not yet checked.
 * @param document  the same, checked: versions share what they have in common with it, and with the one before them.
 * @param check     reads and checks one document; `name` tells which it is.
 * Fails with what `check` fails with, or `project/broken`.
 */
export async function readVersions(
  written: readonly WrittenVersion[],
  raw: unknown,
  document: Project,
  check: (raw: unknown, name: string) => Promise<Result<Project>> | Result<Project>,
): Promise<Result<readonly KeptVersion[]>> {
  const versions: KeptVersion[] = [];
  let before = documentOf(document);
  for (const { id, name, keptAt, changes } of written) {
    const made = patched(raw, changes);
    if (!made.ok)
      return fail(
        'project/broken',
        `The kept version “${name}” does not go with the project in this file: open an older copy of it.`,
      );
    const checked = await check(made.value, name);
    if (!checked.ok) return checked;
    const own = sharedWith(document, sharedWith(before, documentOf(checked.value)));
    versions.push({ id, name, keptAt, document: own });
    before = own;
  }
  return ok(versions);
}
