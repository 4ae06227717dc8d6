import { language } from '../language/language.ts';

/** The clock of a whole day; English days as they are said where millimetres are. */
const MANNERS = { en: 'en-GB', de: 'de-DE' } as const;

/** When something was, as a list says it: the time of day, with the day where that is not today. @param atMs  since 1970 */
export function whenSaid(atMs: number, nowMs = Date.now()): string {
  const [at, now] = [new Date(atMs), new Date(nowMs)];
  const isToday = at.toDateString() === now.toDateString();
  return new Intl.DateTimeFormat(MANNERS[language()], {
    ...(isToday ? {} : { weekday: 'short', day: 'numeric', month: 'short' }),
    ...(at.getFullYear() === now.getFullYear() ? {} : { year: 'numeric' }),
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(at);
}
