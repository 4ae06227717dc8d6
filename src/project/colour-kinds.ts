import { COLOUR_KINDS, MOST_COLOURS, type Colour, type ColourKind } from '../model/colours.ts';

/** Kinds of paint that can be chosen; their figures are those of shared/colours.json. */
export const KNOWN_COLOUR_KINDS: readonly ColourKind[] = COLOUR_KINDS;

/** A colour of the list as it is shown. */
export type KnownColour = Colour;

/** Colours in a list at most. */
export const COLOURS_AT_MOST = MOST_COLOURS;
