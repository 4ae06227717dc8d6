/** One work of others that is part of the app or the command line. */
export interface BundledWork {
  readonly name: string;
  readonly version: string;
  /** SPDX short name of its terms. */
  readonly licence: string;
  readonly usedIn: readonly ('app' | 'cli')[];
  readonly text: string;
}
/** What the last build holds of others' work, by name, with the full texts. */
export function readLicences(): BundledWork[];
