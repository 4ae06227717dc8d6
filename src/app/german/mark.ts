import { formatNumber } from '../../base/format-length.ts';
import type { Translation } from '../language/spoken.ts';
import type { MARK_WORDS } from '../mark-words.ts';
import { edges } from './count.ts';

export const MARK: Translation<typeof MARK_WORDS> = {
  verbs: {
    followRound: 'rundum folgen',
    followRidge: 'dem Grat folgen',
    pickCorner: 'diese Ecke nehmen',
    partAlong: 'hier entlang trennen',
    lay: { edges: 'an Kanten entlang', straight: 'gerade hinüber', curve: 'glatte Kurve' },
    atPlane: 'an der Ebene trennen',
    atPlanes: 'in gleichen Abständen trennen',
    straighten: 'begradigen',
    move: 'verschieben',
    holdNext: 'weiter hinten anfassen',
    mirror: 'spiegeln, was markiert wird',
    noMirror: 'nur eine Seite markieren',
    hold: 'festhalten',
    letGo: 'loslassen',
    keepClear: 'von Nähten freihalten',
    prefer: 'für Nähte bevorzugen',
    split: 'durch eine Linie teilen',
    round: (name) => `rund um ${name} trennen`,
    roundHere: 'rundherum trennen',
    dart: 'Abnäher ziehen',
    drawing: 'Zeichnung auf das Modell legen',
    layBy: { seen: 'wie gesehen', round: 'herumgelegt' },
    hole: 'in einem runden Loch enden lassen',
    point: 'in einer Spitze enden lassen',
  },
  tools: {
    dart: 'Auf eine offene Kante oder eine Naht drücken und in das Stück hineinziehen. Mit der Tastatur: an den Kanten gehen (E) und auf dem Weg hinein die Umschalttaste halten.',
    round:
      'Eine Kante anklicken: Der Schaumstoff wird an der Kantenlinie getrennt, die durch sie läuft, einmal rundum. Zum Zeichnen ziehen.',
    ridge:
      'Einen Grat oder eine Kehle anklicken: Getrennt wird so weit, wie die Kante schärfer bleibt als der Winkel. Zum Zeichnen ziehen.',
    path: 'Ecken anklicken: Die Linie läuft an Knicken und glatten Kanten von einer zur nächsten. Die letzte noch einmal anklicken oder Eingabe drücken, um dort zu trennen.',
    straight:
      'Stellen anklicken: Die Linie läuft gerade über die Flächen von einer zur nächsten. Die letzte noch einmal anklicken oder Eingabe drücken, um dort zu trennen.',
    curve:
      'Stellen anklicken: Eine glatte Kurve läuft durch alle. Die letzte noch einmal anklicken oder Eingabe drücken, um dort zu trennen.',
    split:
      'Zwei oder mehr Ecken des Stücks anklicken: Die Linie läuft an beiden Enden bis zu seinen Kanten weiter. Eingabe trennt dort.',
  },
  move: {
    edges: 'Pfeiltasten führen die Naht von Ecke zu Ecke.',
    path: 'Pfeiltasten verschieben die Naht an der Marke: 1 mm, mit der Umschalttaste 10.',
    spoken: 'In der Hand. Pfeiltasten verschieben, N fasst weiter hinten an, Escape lässt los.',
  },
  drawing: {
    size: 'Größe',
    sizeLabel: 'Größe der Zeichnung in Prozent',
    turn: 'gedreht',
    turnLabel: 'Drehung der Zeichnung in Grad, gegen den Uhrzeigersinn',
    facts: (name, width, height) => `${name}, ${width} × ${height}.`,
    place: 'Die Stelle auf dem Modell anklicken, an die ihre Mitte gehört.',
    how: {
      seen: 'Sie liegt so, wie die Stelle zu sehen war. Eine andere Stelle anklicken oder mit den Pfeiltasten verschieben: 1 mm, mit der Umschalttaste 10. Eingabe trennt an ihr.',
      round:
        'Sie liegt um die Oberfläche herum und behält ihre Längen. Eine andere Stelle anklicken oder mit den Pfeiltasten verschieben: 1 mm, mit der Umschalttaste 10. Eingabe trennt an ihr.',
    },
    missed: (percent) => `${percent} davon liegen neben dem Modell.`,
    closed: (mm) => `Sie schließt sich dort nicht von selbst: Ein Stück von ${mm} schließt sie.`,
    needsSculpt: (file) => `${file} ist eine Zeichnung: zuerst ein Modell öffnen, dann auflegen.`,
    unreadable: (file) => `${file} ist nicht lesbar: noch einmal wählen.`,
    needs3d:
      'Eine Zeichnung wird im 3D-Bild aufgelegt, das dieser Browser nicht zeichnen kann: Linien an einer Ebene oder an Kanten ziehen.',
  },
  darts: {
    heading: 'Abnäher und wie sie enden',
    name: (letter, length) => `Abnäher ${letter}, ${length}`,
    ends: (letter) => `Wie Abnäher ${letter} endet`,
    point: 'in einer Spitze',
    hole: 'in einem runden Loch',
    diameter: 'weit',
    pulled: (length, stretch, squash) =>
      `${length} lang. Das Stück dehnt sich um ${stretch} und staucht sich um ${squash}.`,
  },
  straightened: 'die Naht begradigen',
  within: 'höchstens',
  every: 'alle',
  bothSides: 'Spiegeln: Markiert wird auf beiden Seiten',
  paint: 'Nähte dort',
  paints: { free: 'Nähte wie sonst', clear: 'frei von Nähten', prefer: 'für Nähte bevorzugt' },
  areaNames: { clear: (piece) => `${piece}, frei von Nähten`, prefer: (piece) => `${piece}, bevorzugt` },
  sharper: 'schärfer als',
  degrees: 'Kleinster Winkel des Grats in Grad',
  group: 'Gruppe der Datei',
  partRound: 'Rundherum trennen',
  spoken: {
    noHold: 'Diese Naht hat zwischen ihren Enden keine Ecke zum Anfassen.',
    noDartHere: 'Ein Abnäher beginnt an einer offenen Kante oder einer Naht: dort drücken und in das Stück ziehen.',
    dart: 'Der Abnäher bleibt.',
    drawn: (n) => (n === 1 ? 'An einer Linie getrennt.' : `An ${n} Linien getrennt.`),
    kept: (n) => (n === 1 ? 'Die gewählte Stelle bleibt.' : `Die ${n} gewählten Stellen bleiben.`),
    toCorners: (n) =>
      n === 1
        ? 'Die gewählte Stelle bleibt, an die nächste Ecke verschoben.'
        : `Die ${n} gewählten Stellen bleiben, jede an der nächsten Ecke.`,
    straightened: (mm) => `Begradigt. Sie liegt höchstens ${formatNumber(mm, 1)} mm von ihrer alten Stelle.`,
    mirrored: (isOn) => (isOn ? 'Markiert wird auf beiden Seiten.' : 'Markiert wird auf einer Seite.'),
    noRidge: 'So scharf ist diese Kante nicht.',
    picked: (n) => `${n === 1 ? 'Erste Ecke' : `Ecke ${n}`} gewählt.`,
    backOne: 'Eine Ecke zurück.',
    placed: (n) => `${n === 1 ? 'Erste Stelle' : `Stelle ${n}`} gewählt.`,
    backOnePlace: 'Eine Stelle zurück.',
    line: (n) => `Eine Linie aus ${n === 1 ? 'einer Kante' : edges(n)}.`,
    nothingRound: 'Daneben liegt nichts, wovon zu trennen wäre.',
  },
};
