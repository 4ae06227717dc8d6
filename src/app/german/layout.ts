import { formatNumber } from '../../base/format-length.ts';
import type { LAYOUT_WORDS } from '../layout-words.ts';
import type { Translation } from '../language/spoken.ts';

export const LAYOUT: Translation<typeof LAYOUT_WORDS> = {
  begin: 'Anordnung verbessern',
  why: 'Sucht weniger Platten, dann eine kürzere letzte, bis angehalten wird. Was festgehalten ist, bleibt; schlechter wird es nie.',
  stop: 'Anhalten',
  take: 'Nehmen',
  again: 'Weiter suchen',
  put: 'weglegen',
  outdated: 'Der Auftrag hat sich geändert, die Suche ist beendet: neu beginnen.',
  same: 'Noch nichts Besseres.',
  nothing: 'Nichts Besseres gefunden.',
  broken: 'Die Suche brach vorzeitig ab: noch einmal suchen oder zuerst die Seite neu laden.',
  caption: 'Die Anordnung, wie sie ist und wie sie gefunden wurde',
  rows: {
    bought: 'Platten zu kaufen',
    sheets: 'Platten insgesamt',
    lastMm: 'Letzte belegt bis',
    densityPct: 'Genutzter Schaumstoff',
  },
  now: 'wie sie ist',
  found: 'gefunden',
  time: (seconds, moves) =>
    `${formatNumber(seconds)}\u00a0s, ${formatNumber(moves)}\u00a0${moves === 1 ? 'Versuch' : 'Versuche'}`,
  picture: (sheet) => `Platte ${sheet}, wie gefunden`,
  verbs: {
    begin: 'Anordnung verbessern',
    stop: 'Verbessern der Anordnung anhalten',
    take: 'gefundene Anordnung nehmen',
  },
  spoken: {
    begun: 'Eine bessere Anordnung wird gesucht.',
    stopped: 'Die Suche ist angehalten.',
    taken: 'Die Anordnung ist genommen.',
  },
};
