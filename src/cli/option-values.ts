import { decimal } from '../base/decimal.ts';
import { WrongUsage } from './exit.ts';

/** `{ key: value }`, or nothing where the value was not given. */
export const given = <K extends string, V>(key: K, value: V | undefined): Partial<Record<K, V>> =>
  (value === undefined ? {} : { [key]: value }) as Partial<Record<K, V>>;

/** One of the words an option takes. @param kind what stands before them in the sentence that refuses another. @throws WrongUsage */
export function oneOf<const T extends string>(
  name: string,
  word: string | undefined,
  choices: readonly T[],
  kind = '',
): T | undefined {
  if (word === undefined) return undefined;
  const found = choices.find((choice) => choice === word);
  if (found === undefined)
    throw new WrongUsage(`--${name} takes ${kind}${choices.join(', ')}, not ${word === '' ? 'nothing' : word}.`);
  return found;
}

export { decimal };

/** A number within limits, decimal point or comma. @throws WrongUsage */
export function number(
  name: string,
  word: string | undefined,
  limits: { least?: number; over?: number; most: number },
): number | undefined {
  if (word === undefined) return undefined;
  const value = decimal(word.replace(',', '.'));
  const { least, over, most } = limits;
  if (
    !Number.isFinite(value) ||
    value > most ||
    (least !== undefined && value < least) ||
    (over !== undefined && value <= over)
  ) {
    const range = over === undefined ? `from ${least ?? 0} to ${most}` : `over ${over}, at most ${most}`;
    throw new WrongUsage(`--${name} takes a number ${range}, not ${word === '' ? 'nothing' : word}.`);
  }
  return value;
}
