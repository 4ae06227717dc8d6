import type { Translation } from '../language/spoken.ts';
import type { STOCK_WORDS } from '../stock-words.ts';

export const STOCK: Translation<typeof STOCK_WORDS> = {
  heading: 'Vorhandener Schaumstoff, und wie Platten belegt werden',
  why: 'Vorhandene Platten und Reststücke werden verbraucht, bevor gekauft wird.',
  nothing: 'Nichts vorhanden: Platten werden gekauft.',
  add: {
    sheet: 'Platten eintragen',
    offcut: 'Reststück eintragen',
    traced: 'Reststück nachzeichnen',
    drawing: 'Reststück aus einer SVG-Datei …',
  },
  names: { sheet: 'Platte', offcut: 'Reststück', traced: 'nachgezeichnetes Reststück' },
  name: 'Aufschrift',
  width: 'Breite',
  height: 'Höhe',
  count: 'Anzahl',
  remove: 'von der Liste nehmen',
  removeOf: (name) => `${name} von der Liste nehmen`,
  about: (size, n) => `${size}, ${n} vorhanden`,
  traced: (size) => `nachgezeichnet, ${size}`,

  shelf: {
    heading: 'Von anderen Aufträgen übrig:',
    of: (foam) => `${foam}, von anderen Aufträgen übrig`,
    sheet: (name, size, n) => `${name}, ${size}${n > 1 ? `, ${n} davon` : ''}`,
    take: 'hier verwenden',
    takeOf: (name) => `${name} hier verwenden`,
    forget: 'nicht mehr da',
    forgetOf: (name) => `${name} ist nicht mehr da`,
  },

  fill: {
    border: 'Rand, der frei bleibt',
    spacing: 'Abstand zwischen Stücken',
    cutBy: 'Geschnitten mit',
    cuts: { knife: 'Messer', laser: 'Laser', saw: 'Säge', own: 'eigener Abstand' },
    cutOption: (name, gap) => `${name}, ${gap}`,
    turns: 'Stücke dürfen liegen',
    turn: {
      any: 'in jeder Richtung',
      half: 'in Laufrichtung, hin oder her',
      none: 'nur wie der Pfeil sagt',
    },
    turnOver: 'auch mit der anderen Seite oben',
    buys: 'Platten dürfen gekauft werden',
    bought: (size) => `Eine gekaufte Platte misst ${size}.`,
  },

  clear: {
    heading: 'Freihalten',
    why: 'Aufdruck, Löcher und Dellen: Dort wird nichts geschnitten.',
    add: 'Stelle freihalten',
    place: (n) => `Stelle ${n}`,
    takeAway: 'entfernen',
    remove: (n) => `Stelle ${n} entfernen`,
  },

  outline: {
    label: (name) => `Umriss von ${name}, mit Raster`,
    corner: (n, of, x, y) => `Ecke ${n} von ${of}, ${x} quer, ${y} hoch`,
    corners: 'Ecke',
    across: 'Quer',
    up: 'Hoch',
    add: 'eine weitere danach',
    remove: 'herausnehmen',
    grid: (step) => `Linien im Abstand von ${step}.`,
    how: 'Eine Ecke ziehen, oder einen Punkt dazwischen für eine weitere. Pfeiltasten verschieben die gewählte, mit der Umschalttaste feiner; Plus fügt eine hinzu, Entf nimmt sie heraus.',
    faults: {
      few: 'Mindestens drei Ecken.',
      crossing: 'Der Umriss kreuzt sich: die Ecke zurückziehen, dann zählt er wieder.',
      flat: 'Darin liegt nichts: eine Ecke herausziehen, dann zählt er.',
      outside: 'Er reicht über den Rand der Platte: auf die Platte ziehen, dann zählt er.',
    },
  },
  drawing: {
    none: (file) => `${file} hat keine geschlossene Linie: das Reststück als einen Umriss in wahrer Größe zeichnen.`,
    taken: (file, size) => `Die größte geschlossene Linie in ${file} ist das Reststück, ${size}.`,
  },
};
