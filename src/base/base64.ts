/** How many bytes are turned into characters at once: far under any engine's limit on arguments. */
const CHUNK = 0x8000;

/** Bytes as base64 (RFC 4648, section 4), through the platform's own encoder. */
export function base64FromBytes(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += CHUNK) parts.push(String.fromCharCode(...bytes.subarray(at, at + CHUNK)));
  return btoa(parts.join(''));
}

/** The bytes of a base64 text, or null when it is none. */
export function bytesFromBase64(text: string): Uint8Array | null {
  let binary: string;
  try {
    binary = atob(text);
  } catch {
    return null;
  }
  return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}
