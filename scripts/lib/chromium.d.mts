/** Command line flags for a Chromium that is driven by a test. */
export const CHROMIUM_FLAGS: readonly string[];
/** The path of a Chromium on this machine, or undefined; throws when `$CHROMIUM` names a file that is not there. */
export function findChromium(env?: Record<string, string | undefined>, platform?: string): string | undefined;
