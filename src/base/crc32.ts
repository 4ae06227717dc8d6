const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let code = n;
  for (let bit = 0; bit < 8; bit += 1) code = code & 1 ? 0xedb88320 ^ (code >>> 1) : code >>> 1;
  return code;
});

/** Cyclic redundancy code of ISO 3309, as PNG keeps it of a chunk's kind and data (PNG, third edition, 5.5 and annex D). */
export function crc32(bytes: Uint8Array): number {
  let code = 0xffffffff;
  for (const byte of bytes) code = CRC_TABLE[(code ^ byte) & 0xff] ^ (code >>> 8);
  return (code ^ 0xffffffff) >>> 0;
}
