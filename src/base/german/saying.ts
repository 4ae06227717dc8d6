/**
 * A sentence of the core and what it is in German. `{1}` to `{9}` stand for what is kept as it is: figures, letters of seams, names. `{a}` to `{f}`
 * stand for words, which must be known (`phrases.ts`) or be sentences themselves, or nothing is said. ` mm` behind a digit is the unit of the job.
 */
export type Saying = readonly [english: string, german: string];

/** What can be said of each code, one for each pattern of its text. */
export type Sentences = Readonly<Record<string, readonly Saying[]>>;
