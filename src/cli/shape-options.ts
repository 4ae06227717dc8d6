import { WrongUsage } from './exit.ts';

export interface ShapeChoices {
  /** Left out where all are listed. */
  readonly shape?: string;
  /** Names and texts of sizes in the order they were given. */
  readonly sizes: readonly (readonly [name: string, text: string])[];
  readonly list: boolean;
  readonly json: boolean;
  /** Folder for the pieces as SVG and DXF; left out where none are written. */
  readonly out?: string;
}

const OPTIONS: readonly string[] = ['json', 'list', 'out'];

/**
 * `NAME size=value …`. A word without `=` goes on with the value before it, so that `width=4 1/2 in` needs no quotes.
 * @param words   what stands after `shape`.
 * @param values  options that were given.
 */
export function shapeChoicesFrom(words: readonly string[], values: Readonly<Record<string, unknown>>): ShapeChoices {
  const stray = Object.keys(values).find((name) => !OPTIONS.includes(name));
  if (stray !== undefined) throw new WrongUsage(`--${stray} is no option of shape.`);
  const [shape, ...rest] = words;
  const [list, json] = [values.list === true, values.json === true];
  const sizes: [string, string][] = [];
  for (const word of rest) {
    const at = word.indexOf('=');
    if (at > 0) sizes.push([word.slice(0, at).trim(), word.slice(at + 1)]);
    else if (sizes.length > 0 && at < 0) sizes[sizes.length - 1][1] += ` ${word}`;
    else throw new WrongUsage(`a size is given as name=value, not as ${word}.`);
  }
  if (!list && (shape as string | undefined) === undefined)
    throw new WrongUsage('shape needs a name: shape --list gives them all.');
  if (list && sizes.length > 0) throw new WrongUsage('--list takes no sizes.');
  const out = typeof values.out === 'string' ? values.out : undefined;
  if (list && out !== undefined) throw new WrongUsage('--list writes no files: leave --out out.');
  return { ...(shape === undefined ? {} : { shape }), sizes, list, json, ...(out === undefined ? {} : { out }) };
}
