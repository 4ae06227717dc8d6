/** A document of a project file before it is checked. */
export type RawDocument = Readonly<Record<string, unknown>>;

/** Brings a document of one version to the next; what it does not touch stays as it is. Never fails: what is broken is told by the check that follows. */
export type Migration = (document: RawDocument) => RawDocument;

/** The one table of migrations, each by the version it begins at. Version 1 is the first there is, so that nothing is to be brought on yet. */
export const MIGRATIONS: ReadonlyMap<number, Migration> = new Map();

/** Version in which documents are written. */
export const SCHEMA_VERSION = 1;

/** A document brought on to the newest version, step by step. One of a version that nothing leads on from stays as it is. */
export function migrated(document: RawDocument, table: ReadonlyMap<number, Migration> = MIGRATIONS): RawDocument {
  let now = document;
  for (let version = versionOf(now); version < SCHEMA_VERSION; version += 1) {
    const migrate = table.get(version);
    if (migrate === undefined) break;
    now = { ...migrate(now), schemaVersion: version + 1 };
  }
  return now;
}

const versionOf = ({ schemaVersion }: RawDocument): number =>
  typeof schemaVersion === 'number' ? schemaVersion : SCHEMA_VERSION;
