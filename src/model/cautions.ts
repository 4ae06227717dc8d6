import data from '../../shared/cautions.json';

/** What the maker is doing when the caution belongs beside it. */
export const CAUTION_WORK = ['cut', 'sand', 'heat', 'glue', 'paint', 'laser', 'insert', 'wear'] as const;
export type CautionWork = (typeof CAUTION_WORK)[number];

export interface Caution {
  readonly id: string;
  readonly work: readonly CautionWork[];
  readonly title: string;
  readonly text: string;
  readonly sources: readonly string[];
}

export const CAUTIONS: readonly Caution[] = checkCautions(data.cautions as readonly Caution[]);

/** Stands after every list of cautions. */
export const CAUTION_ENDING: string = data.ending;

/** The sentences for this work and no other, each with its title, then the ending; none for no work. */
export function cautionTexts(...work: readonly CautionWork[]): readonly string[] {
  const texts = CAUTIONS.filter((caution) => caution.work.some((kind) => work.includes(kind))).map(
    ({ title, text }) => `${title}: ${text}`,
  );
  return texts.length === 0 ? [] : [...texts, CAUTION_ENDING];
}

/** The sentences of these cautions, in the order of the list, then the ending; none for none. */
export function cautionsById(ids: readonly string[]): readonly string[] {
  const texts = CAUTIONS.filter(({ id }) => ids.includes(id)).map(({ title, text }) => `${title}: ${text}`);
  return texts.length === 0 ? [] : [...texts, CAUTION_ENDING];
}

/** Every caution has words, a source and known work, ids unique. @throws Error: a broken list is our mistake. */
export function checkCautions(cautions: readonly Caution[]): readonly Caution[] {
  const ids = new Set<string>();
  for (const { id, work, title, text, sources } of cautions) {
    if (title === '' || !text.endsWith('.') || sources.length === 0)
      throw new Error(`caution ${id} lacks words or a source`);
    if (work.length === 0 || work.some((kind) => !CAUTION_WORK.includes(kind)))
      throw new Error(`caution ${id}: unknown work`);
    if (ids.has(id)) throw new Error(`caution ${id} is listed twice`);
    ids.add(id);
  }
  return cautions;
}
