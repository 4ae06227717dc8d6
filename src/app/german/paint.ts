import { formatPlain } from '../../base/format-length.ts';
import type { Translation } from '../language/spoken.ts';
import type { PAINT_WORDS } from '../paint-words.ts';

export const PAINT: Translation<typeof PAINT_WORDS> = {
  waiting: 'wartet auf Stücke',
  making: 'wird ausgearbeitet',
  none: 'noch keine Farben',
  answer: (colours, steps) =>
    `${colours === 0 ? 'Keine Farben' : colours === 1 ? 'Eine Farbe' : `${colours} Farben`}, ${steps === 1 ? 'ein Schritt' : `${steps} Schritte`}`,
  show: 'Farben zeigen',
  hide: 'Farben ausblenden',
  sealed: 'Es wird ringsum versiegelt und gestrichen, wie unter „Was gebraucht wird“ gesagt.',
  colours: {
    heading: (names) => (names.length === 0 ? 'Farben' : `Farben: ${names.join(', ')}`),
    why: 'Das Etikett der Dose geht vor: eintragen, was es sagt.',
    add: 'Farbe hinzufügen',
    fresh: (n) => `Farbe ${n}`,
    name: 'Name',
    shade: 'Farbton am Bildschirm',
    kind: 'Auftrag',
    kinds: { brushed: 'mit dem Pinsel', sprayed: 'gesprüht' },
    label: (coats, m2, figures) =>
      `${coats === 1 ? 'Ein Anstrich' : `${coats} Anstriche`}, ${formatPlain(m2)} m² je Liter, ${figures === 'label' ? 'laut Etikett' : 'wie üblich'}`,
    coats: 'Anstriche',
    coverage: 'Ein Liter reicht je Anstrich für',
    recoat: 'Bis zum nächsten Anstrich',
    handle: 'Bis abgeklebt werden kann',
    figures: {
      label: 'Diese Werte stehen auf dem Etikett.',
      usual: 'Diese Werte sind für solche Farben üblich und stehen nicht auf dem Etikett.',
    },
    remove: 'entfernen',
    removeOf: (name) => `${name} entfernen`,
    base: 'Alles, was keine eigene Farbe hat',
    noBase: 'behält die Anstriche',
  },
  areas: {
    heading: 'Flächen',
    none: 'Eine Stelle auf einem Stück anklicken, um eine Fläche zu meinen, dann in der Zeile unter der Werkbank ihre Farbe wählen.',
    colour: 'Farbe',
    colourOf: (area) => `Farbe von ${area}`,
    asRest: 'wie der Rest',
    clay: 'Mit Masse aufgebaut',
    clayOf: (area) => `Mit Masse aufgebaut: ${area}`,
    named: { panel: (piece, at) => `${piece}, Feld ${at}`, spot: (piece) => `${piece}, Fläche` },
    first: 'Zuerst auf dem Auftragsblatt eine Farbe hinzufügen.',
  },
  fillet: { field: 'Mit Masse ausgekehlt, Radius' },
  clay: {
    heading: 'Modelliermasse',
    layer: 'Dickste Lage, die durchtrocknet',
    dry: 'Eine solche Lage trocknet',
    shrink: 'Sie schwindet um',
    how: 'Eine Fläche wird in der Liste der Flächen aufgebaut; eine innere Ecke wird ausgekehlt, wenn ihre Naht gewählt ist.',
    sum: (wet, days) => `${wet} davon, nass; ${formatPlain(days)} Tage Trocknen.`,
  },
  table: {
    caption: 'Was jede Farbe braucht',
    colour: 'Farbe',
    area: 'Fläche',
    coats: 'Anstriche',
    volume: 'Menge',
    base: (name) => `${name}, der Grund`,
  },
  steps: 'Schritte bis zur fertigen Oberfläche',
  mind: 'Achtung',
  units: { m2: 'm²', min: 'min', h: 'h', pct: '%' },
};
