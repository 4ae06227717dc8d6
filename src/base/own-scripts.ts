/** What of the browser's trusted types is used (W3C Trusted Types). */
interface PolicyMaker {
  createPolicy(name: 'default', rules: { createScriptURL(address: string): string | null }): unknown;
}

/** Files that are started as threads or kept as the service worker: as they stand in the sources, and as the build names them. */
const OWN = /\/(?:(?:flatten-|sheet-search-)?worker(?:-[\w-]+)?\.js|(?:flatten-|sheet-search-)?worker\.ts|keeper\.js)$/;

/** Whether a script at this address is a thread or the service worker of this very app. `own`: an address of the app itself. */
export function isOwnScript(address: string, own: string): boolean {
  const { protocol, host, pathname, username, password } = new URL(address, own);
  const home = new URL(own);
  // The origin of blob: is that of this place, its protocol is not.
  const isHere = protocol === home.protocol && host === home.host;
  return isHere && OWN.test(pathname) && `${username}${password}` === '';
}

/**
 * Lets this window, or this thread, start the app's own threads and no other script. Under the content policy of the page nothing else turns
 * text into a script or its address: markup and code from text have no rule here, and so are refused. To be called once, before the first
 * thread is started; does nothing where the browser knows no trusted types.
 */
export function trustOwnScripts(): void {
  const { trustedTypes, location } = globalThis as { trustedTypes?: PolicyMaker; location?: { href: string } };
  if (location === undefined) return;
  const own = location.href;
  trustedTypes?.createPolicy('default', {
    createScriptURL: (address) => (isOwnScript(address, own) ? address : null),
  });
}
