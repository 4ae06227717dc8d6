/** What every object has from the language itself. */
const SHARED = [
  Object.prototype,
  Array.prototype,
  Function.prototype,
  String.prototype,
  Number.prototype,
  Map.prototype,
  Promise.prototype,
];

const before = SHARED.map((one) => Reflect.ownKeys(one).length);
const values = SHARED.map((one) => Object.getOwnPropertyDescriptor(one, 'toString')?.value as unknown);

/** @throws where a reader has put something into what all objects share. */
export function expectUntouched(): void {
  for (const [i, one] of SHARED.entries()) {
    if (
      Reflect.ownKeys(one).length !== before[i] ||
      Object.getOwnPropertyDescriptor(one, 'toString')?.value !== values[i]
    )
      throw new Error(`what all objects share was changed: ${Reflect.ownKeys(one).map(String).join(' ')}`);
  }
}
