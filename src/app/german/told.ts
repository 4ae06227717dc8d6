import type { Translation } from '../language/spoken.ts';
import type { TOLD_WORDS } from '../told-words.ts';
import { gluingText } from '../../base/german/gluing.ts';
import { PLACES, wayText } from '../../base/german/places.ts';
import { PROGRESS } from './progress.ts';
import { sayInGerman } from '../../base/german/sentences/say.ts';

export const TOLD: Translation<typeof TOLD_WORDS> = { sentence };

function sentence(text: string): string {
  const way = wayText(text);
  if (way !== null) return way;
  if (Object.hasOwn(PLACES, text)) return PLACES[text];
  if (Object.hasOwn(PROGRESS, text)) return PROGRESS[text];
  return gluingText(text) ?? sayInGerman(text) ?? text;
}
