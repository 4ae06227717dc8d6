/** Digits of a code: no I, L, O, U, so that nothing on paper reads as 1, 0 or V. */
const DIGITS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/**
 * A code of four characters that changes when any of the values does: one chance in a million that a change goes unseen. Numbers count to
 * a thousandth, which is finer than a printer's line.
 * @param values whatever is printed on a template, in a fixed order.
 */
export function revisionCode(values: readonly unknown[]): string {
  let hash = FNV_START;
  for (const character of JSON.stringify(values, rounded)) {
    hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), FNV_PRIME);
  }
  // The upper bits of this hash mix slowly: fold them in.
  const mixed = (hash ^ (hash >>> 15)) >>> 0;
  return [15, 10, 5, 0].map((shift) => DIGITS[(mixed >>> shift) & 31]).join('');
}

/** FNV-1a, 32 bits (Fowler, Noll, Vo; public domain). */
const FNV_START = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

function rounded(_key: string, value: unknown): unknown {
  if (ArrayBuffer.isView(value)) return Array.from(value as Float64Array, thousandths);
  return typeof value === 'number' ? thousandths(value) : value;
}

/** Whole thousandths, without a negative zero. */
const thousandths = (x: number): number => Math.round(x * 1000) + 0;
