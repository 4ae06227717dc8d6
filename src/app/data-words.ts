import { spokenName } from '../base/spoken-name.ts';
import { spoken } from './language/spoken.ts';

/**
 * Names and sentences out of data files: cautions, kinds of glue and paint, samples. They are kept in English, in projects and on paper; here is
 * what they are in another language, by their English text. English needs none.
 */
export const DATA_WORDS = spoken<Readonly<Record<string, string>>>('data', {});

/** A shape, a size or a choice by its name in files, as `regular_polygon`, in the words of the window. */
export const shapeText = (name: string): string => DATA_WORDS[`shape ${spokenName(name)}`] ?? spokenName(name);

/** A name or sentence as the window says it; what is not known, as what a maker has named, stays as it is. */
export const dataText = (text: string): string => DATA_WORDS[text] ?? text;
