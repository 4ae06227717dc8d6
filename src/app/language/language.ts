import { setDecimalMark, type DecimalMark } from '../../base/figure-marks.ts';
import { speakFrom, type Tables } from './spoken.ts';

export type Language = 'en' | 'de';
/** What the maker chose; auto: as the system. */
export type LanguageWish = Language | 'auto';

/** What goes with a language. */
interface Manner {
  readonly direction: 'ltr' | 'rtl';
  readonly mark: DecimalMark;
  /** Its words; none for English, in which all tables are written. */
  readonly load?: () => Promise<Tables>;
}

/** Every language the window speaks, English first. To add one: DEVELOPERS.md. */
const MANNERS: Readonly<Record<Language, Manner>> = {
  en: { direction: 'ltr', mark: '.' },
  de: { direction: 'ltr', mark: ',', load: async () => (await import('../german/german.ts')).GERMAN },
};

export const LANGUAGES = Object.keys(MANNERS) as readonly Language[];

let inForce: Language = 'en';

/** The language in which words are read now. */
export const language = (): Language => inForce;

/** @param asked languages of the system in the order it likes them, as `de-AT`. @returns the first that is spoken here, else English. */
export function languageFor(wish: LanguageWish, asked: readonly string[]): Language {
  if (wish !== 'auto') return wish;
  const names = asked.map((tag) => tag.toLowerCase().split('-')[0]);
  return LANGUAGES.find((own) => own === names.find((name) => LANGUAGES.some((one) => one === name))) ?? 'en';
}

/**
 * Speaks a language from now on: words, decimal mark, and what the page says of itself. What is drawn already has to be drawn anew.
 * Rejects where its words cannot be fetched; the language before stays.
 * @param page the root of the document.
 */
export async function speak(wanted: Language, page: HTMLElement): Promise<void> {
  const { load, mark, direction } = MANNERS[wanted];
  const tables = (await load?.()) ?? null;
  inForce = wanted;
  speakFrom(tables);
  setDecimalMark(mark);
  page.lang = wanted;
  page.dir = direction;
}
