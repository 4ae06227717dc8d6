import { parseLength } from '../base/format-length.ts';
import type { ListedPart } from '../project/parts-file.ts';
import { WrongUsage } from './exit.ts';

/** Figures of a part as the options of its kind's command are read. */
export type FigureValues = Readonly<Record<string, string | boolean | string[]>>;

/** Options that may be given several times; in a parts file they are rows of texts, or one. */
const SEVERAL = new Set(['rule', 'place', 'wind', 'staves', 'check']);

/** Here a unit is part of what is meant: how far apart instead of how many, or a name. */
const KEEPS_UNIT = new Set(['repeat', 'pipe', 'known']);

/** Names of fields that are another option of the kind's command: `place` says where the part stands. */
export const RENAMED = { seats: 'place', 'photo-places': 'place' } as const;

/** What options tell a command beside its figures, and what a part has from its foam. */
const NO_FIGURES = ['out', 'json', 'list', 'help', 'version'];
const OF_FOAM = ['sheets', 'sheet-size', 'thickness', 'neutral'];

/**
 * The figures of a part by the names of options. Lengths may have a unit: `1/4 in` is 6.35.
 * @param renamed  names that mean another option here, as `place` is where the part stands.
 * @throws WrongUsage for what is no figure.
 */
export function figureValues(
  { figures }: Pick<ListedPart, 'figures'>,
  renamed: Readonly<Record<string, string>> = {},
): FigureValues {
  const values: Record<string, string | boolean | string[]> = {};
  for (const [name, figure] of Object.entries(figures)) {
    if (NO_FIGURES.includes(name)) throw new WrongUsage(`--${name} is no figure of a part.`);
    if (OF_FOAM.includes(name)) throw new WrongUsage(`--${name} comes from its foam: say which with --foam.`);
    const option = renamed[name] ?? name;
    const read = (value: string | number): string => (typeof value === 'number' ? String(value) : inMm(option, value));
    if (typeof figure === 'boolean') {
      if (figure) values[option] = true;
    } else if (SEVERAL.has(option)) values[option] = [figure].flat().map(read);
    else values[option] = [figure].flat().map(read).join(',');
  }
  return values;
}

function inMm(option: string, text: string): string {
  if (KEEPS_UNIT.has(option) || !/(mm|cm|m|in|inch|inches|")\s*$/i.test(text)) return text;
  const mm = parseLength(text, 'mm');
  return mm === null ? text : String(mm);
}

/** A sentence about options as one about fields: `--dowel` is the field "dowel". */
export const aboutFields = (text: string, renamed: Readonly<Record<string, string>> = {}): string =>
  text.replace(/--([a-z][a-z-]*)/g, (_, name: string) => {
    const field = Object.entries(renamed).find(([, option]) => option === name)?.[0] ?? name;
    return `"${field}"`;
  });
