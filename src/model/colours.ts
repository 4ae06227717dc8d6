import data from '../../shared/colours.json';

/** A paint of the maker's own list: what areas of the sculpt are painted with. */
export interface Colour {
  /** Unique in the list. */
  readonly id: string;
  readonly name: string;
  /** `#rrggbb`, lower case: as it is shown, never all that tells it apart. */
  readonly rgb: string;
  /** Whole number, >= 1. */
  readonly coats: number;
  /** Area of one coat that a litre covers, m². */
  readonly coverageM2PerL: number;
  /** `label`: the maker read coverage and times off the tin. `usual`: they are those of its kind (shared/colours.json). */
  readonly figures: 'label' | 'usual';
  /** From one coat to the next, and from the last until it can be handled and taped over, minutes. */
  readonly recoatMin: number;
  readonly handleMin: number;
  /** Ids of the cautions that belong to it. */
  readonly cautions: readonly string[];
}

/** A kind of paint, whose figures a new colour begins with. */
export type ColourKind = Omit<Colour, 'name' | 'rgb' | 'figures'>;

export const COLOUR_KINDS: readonly ColourKind[] = data.kinds;

/** Where the figures come from, whole sentences. */
export const COLOUR_SOURCES: readonly string[] = data.sources;

/** Colours in a list at most: more hatchings are not told apart on paper. */
export const MOST_COLOURS = 12;

/** Share of light that a colour throws back as the eye takes it, 0 to 1 (sRGB luminance, IEC 61966-2-1). */
export function lightnessOf({ rgb }: Pick<Colour, 'rgb'>): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const share = Number.parseInt(rgb.slice(i, i + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** @throws RangeError where a colour could not be used: that is our mistake; files are checked where they are read. */
export function checkColour(colour: Colour): Colour {
  const { id, rgb, coats, coverageM2PerL: m2, recoatMin, handleMin } = colour;
  const isSound = /^#[0-9a-f]{6}$/.test(rgb) && Number.isInteger(coats) && coats >= 1 && m2 > 0 && m2 < Infinity;
  if (!isSound || !(recoatMin >= 0 && handleMin >= 0)) throw new RangeError(`colour ${id} cannot be used`);
  return colour;
}
