import { spoken } from './language/spoken.ts';

/**
 * What changes of the document are called, by their English names, which commands carry and histories keep. English needs none: a name that is
 * not here is said as it is.
 */
export const LABEL_WORDS = spoken<Readonly<Record<string, string>>>('label', {});

/** A change as the window names it. */
export const labelText = (label: string): string => LABEL_WORDS[label] ?? label;
