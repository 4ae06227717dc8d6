/**
 * Names bytes by their content: SHA-256 (FIPS 180-4) as 64 hex digits, through the platform's own Web Crypto.
 * The same in browser, worker and Node.
 */
export async function contentHash(bytes: Uint8Array): Promise<string> {
  const digest = await globalThis.crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
