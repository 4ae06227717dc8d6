import type { GUIDE_WORDS } from '../help/guide-words.ts';
import type { HELP_WORDS } from '../help/help-words.ts';
import type { KEY_WORDS } from '../help/key-words.ts';
import type { TranslationInPart } from '../language/spoken.ts';
import { count } from './count.ts';

export const HELP: TranslationInPart<typeof HELP_WORDS> = {
  mark: '?',
  ask: 'Was dieses Feld bedeutet',
  note: 'Was das Feld bedeutet',
  close: 'schließen',
  back: 'zurück zum Feld',
  inWords: 'Wörter des Handwerks',
  foot: {
    heading: 'Hilfe',
    fields: 'Auf ein Feld zeigen oder darin stehen: Das ? am Rand sagt, was es bedeutet. F1 tut es mit der Tastatur.',
    keys: 'Alle Tasten',
    words: 'Wörter des Handwerks',
    guide: 'Der Zehn-Minuten-Auftrag',
  },
  verbs: {
    keys: 'alle Tasten zeigen',
    words: 'Wörter des Handwerks',
    guide: 'der Zehn-Minuten-Auftrag: beginnen oder fortsetzen',
    leave: 'den Zehn-Minuten-Auftrag verlassen',
    term: (word) => `${word}: was das ist`,
  },
  sheet: {
    keys: 'Alle Tasten',
    words: 'Wörter des Handwerks',
    close: 'zurück zur Werkbank',
    print: 'Dieses Blatt drucken',
    find: 'Ein Wort suchen',
    none: 'Kein Wort des Handwerks gleicht diesem.',
    count: (n) => count(n, 'Wort', 'Wörter'),
  },
};

export const KEYS: TranslationInPart<typeof KEY_WORDS> = {
  why: 'Die Tasten stehen hier, wie das Fenster sie jetzt, mit diesem Auftrag, versteht.',
  off: 'Einzelne Buchstaben sind unten auf dem Auftragsblatt ausgeschaltet.',
  none: 'davon ist noch nichts im Auftrag',
  situations: {
    any: 'Immer',
    seam: 'Mit gewählter Naht',
    open: 'Mit gewählter offener Kante',
    piece: 'Mit gewähltem Stück',
    area: 'Mit gemeinter Fläche eines Stücks',
    part: 'Mit gewähltem Teil',
    knife: 'Mit dem Messer in der Hand',
    walk: 'Beim Gehen an den Kanten',
    path: 'Beim Legen eines Wegs',
    dart: 'Beim Ziehen eines Abnähers',
    move: 'Mit einer Naht in der Hand',
    plane: 'Mit einer Ebene in der Hand',
    view: 'Mit dem Bild im Fokus',
    sheet: 'Mit einem Stück in der Hand auf seiner Platte',
    help: 'Hilfe',
  },
  fixed: {
    find: 'die Suche: jeder Handgriff und jedes Wort des Handwerks',
    back: 'ein Schritt zurück; nichts geht verloren',
    'help-keys': 'dieses Blatt',
    undo: 'rückgängig',
    redo: 'wiederholen',
    'save-project': 'Auftrag speichern',
    open: 'Datei öffnen',
    field: 'was das Feld bedeutet, in dem man steht; noch einmal geht in die Notiz',
    walkOn: 'zur nächsten Ecke',
    walkPart: 'zur nächsten Ecke und dabei trennen',
    walkTurn: 'die Kante, auf der man kam, trennen oder verbinden',
    enter: 'hier entlang trennen',
    move: 'verschieben',
    moveFar: 'weiter verschieben',
  },
  turns: {
    'turn-left': 'nach links drehen',
    'turn-right': 'nach rechts drehen',
    up: 'von weiter oben sehen',
    down: 'von weiter unten sehen',
    nearer: 'näher',
    farther: 'weiter weg',
    front: 'von vorn',
    back: 'von hinten',
    left: 'von links',
    right: 'von rechts',
    top: 'von oben',
    bottom: 'von unten',
  },
  plane: {
    forth: 'vom Auge weg',
    back: 'zum Auge hin',
    'lean-left': 'nach links neigen',
    'lean-right': 'nach rechts neigen',
    'lean-up': 'nach oben neigen',
    'lean-down': 'nach unten neigen',
  },
  onSheet: {
    left: 'gegen den Uhrzeigersinn drehen',
    right: 'im Uhrzeigersinn drehen',
    flip: 'wenden',
    hold: 'festhalten, wo es liegt',
    half: 'eine halbe Drehung',
  },
  caps: {
    ArrowLeft: '←',
    ArrowRight: '→',
    ArrowUp: '↑',
    ArrowDown: '↓',
    Escape: 'Esc',
    Enter: 'Eingabe',
    Space: 'Leertaste',
    Shift: 'Umschalt',
    Control: 'Strg',
    Comma: ',',
    Period: '.',
  },
};

export const GUIDE: TranslationInPart<typeof GUIDE_WORDS> = {
  offer:
    'Zum ersten Mal hier? Zehn Schritte an diesem Auftrag, etwa zehn Minuten, enden mit einer Schablone in der Hand.',
  begin: 'Beginnen',
  takeUp: 'Fortsetzen',
  notNow: 'jetzt nicht',
  heading: 'Der Zehn-Minuten-Auftrag',
  progress: (done, of) => `${done} von ${of} erledigt`,
  step: (at, of, title) => `Schritt ${at} von ${of}: ${title}`,
  tickedStep: (at, title) => `Schritt ${at}, erledigt: ${title}`,
  mouse: 'Maus oder Finger:',
  keys: 'Tasten:',
  show: 'Zeigen, wo',
  on: 'So lassen, nächster Schritt',
  leave: 'Für jetzt verlassen',
  again: 'Von vorn',
  spoken: (title, next) => `Erledigt: ${title}. Als Nächstes: ${next}.`,
  finished:
    'Alle zehn sind erledigt. Auf den breiten Linien schneiden und in der Reihenfolge kleben, die das Blatt angibt.',
  close: 'schließen',
  steps: {
    size: {
      title: 'Auf den eigenen Kopf bringen',
      why: 'Ein Requisit ist nur so richtig wie seine Größe.',
      mouse:
        '„Größe ändern“ drücken, die längste Seite wählen und eintragen, wie lang sie werden soll. Oder unter „Körper und Kern“ ein Maßband anlegen und den Kopfumfang eintragen.',
      keys: '1 geht zur Zeile, Tab zu „Größe ändern“, Eingabe; Länge eintragen, Eingabe.',
    },
    apart: {
      title: 'Ansehen, wo es geteilt wird',
      why: 'Jedes Stück wird geschnitten, jede Linie zwischen zweien ist eine Naht zum Kleben.',
      mouse: 'Den Schieber unter dem Bild auf „zerlegt“ ziehen, dann die Ansicht drehen: ins Leere greifen und ziehen.',
      keys: 'A zieht die Stücke auseinander, W setzt sie wieder zusammen.',
    },
    seam: {
      title: 'Eine Naht verschieben oder hinzufügen',
      why: 'Wo eine Naht zu sehen sein darf, weiß niemand besser als wer sie trägt.',
      mouse:
        'Eine Naht auf eine andere Kante ziehen. Oder in der Zeile „Kante für Kante“ drücken und eine Kante anklicken: Dort wird getrennt.',
      keys: 'E geht mit den Pfeiltasten an Kanten entlang, P trennt die Kante, auf der man kam, Esc beendet. Rückgängig ist Strg Z.',
    },
    foam: {
      title: 'Den Schaumstoff wählen',
      why: 'Die Dicke ändert die Form jedes Stücks, nicht nur seinen Rand.',
      mouse: 'Eine andere Dicke anklicken oder eintragen, was das Lineal an der Platte zeigt.',
      keys: '3 geht zur Zeile, Tab zu den Dicken, Pfeiltasten wählen.',
    },
    stretch: {
      title: 'Die Dehnung ansehen',
      why: 'Wo die Farbe kräftig ist, muss der Schaumstoff nachgeben. Unter 3 Prozent ist nichts zu spüren.',
      mouse:
        'In der Zeile zur Passung unter den Farben „Dehnung“ wählen, dann auf das Bild zeigen, um den Wert dort zu lesen.',
      keys: 'K färbt das Bild nach Dehnung, K noch einmal nimmt es weg.',
    },
    fit: {
      title: 'Trocken zusammensetzen',
      why: 'Das Fenster schließt jede Naht, bevor ein Tropfen Kleber gekauft ist.',
      mouse: 'Über dem Bild „fertiges Requisit“ wählen oder in der Zeile zur Passung unter den Farben „Spalte“.',
      keys: 'D färbt die Spalte der Passprobe; V geht von Ansicht zu Ansicht.',
    },
    sheets: {
      title: 'Auf den Platten ansehen',
      why: 'So viel Schaumstoff wird gekauft, und das bleibt übrig.',
      mouse:
        'Den Schieber auf „auf der Platte“ ziehen oder in der Zeile eine Platte anklicken. Dort lassen sich Stücke ziehen.',
      keys: 'S legt die Stücke auf ihre Platten.',
    },
    paper: {
      title: 'Sagen, welches Papier da ist',
      why: 'Ein zu schmaler Rand verliert Linien an der Kante der Seite.',
      mouse: 'Das Papier wählen und seinen Rand eintragen, oder eine Seite anklicken, um sie anzusehen.',
      keys: '6 geht zur Zeile, Tab zum Papier, Pfeiltasten wählen.',
    },
    pdf: {
      title: 'Die Schablonen speichern',
      why: 'Eine Datei, in wahrer Größe, mit jedem Stück und wie es geklebt wird.',
      mouse: '„Schablonen speichern, PDF“ drücken.',
      keys: '/ drücken und pdf eingeben, dann Eingabe.',
    },
    square: {
      title: 'Das Maßquadrat ablesen',
      why: 'Drucker dehnen. Um wie viel, weiß nur das Lineal.',
      mouse:
        'Seite 1 mit 100 Prozent drucken, „einen Drucker ausmessen“ wählen und eintragen, was das Lineal am Quadrat zeigt, in beiden Richtungen.',
      keys: '6 geht zur Zeile, Tab zum Drucker; „einen Drucker ausmessen“ wählen und beide Werte eintragen.',
    },
  },
};
