import { formatLength, formatNumber } from '../../base/format-length.ts';
import { settingText } from '../../base/lean-words.ts';
import type { Translation } from '../language/spoken.ts';
import type { WORDS } from '../words.ts';
import { edges, pages, pieces, seams, sheets } from './count.ts';
import { MARK } from './mark.ts';
import { LEAN } from '../../base/german/lean.ts';

/** `flach`, `Grat 34°` where the surface turns outward, `Kehle 12°` where it turns inward. */
const foldWords = (deg: number): string =>
  Math.abs(deg) < 0.5 ? 'flach' : `${deg > 0 ? 'Grat' : 'Kehle'} ${formatNumber(Math.abs(deg))}°`;

const BENDS = { rolled: 'gerollt', grooved: 'genutet', kerfed: 'geschlitzt' };
const HANDS = { left: 'linke Hand', right: 'rechte Hand' };
/** As the places of the slider are called within a sentence. */
const SIDES: Readonly<Record<string, string>> = {
  front: 'vorn',
  back: 'hinten',
  left: 'links',
  right: 'rechts',
  top: 'oben',
  bottom: 'unten',
  above: 'oben',
  below: 'unten',
};

export const WINDOW: Translation<typeof WORDS> = {
  name: 'Foamloft',
  waiting: 'zuerst ein Modell öffnen',
  sheetLabel: 'Auftragsblatt',

  lines: {
    size: 'Was es ist und wie groß',
    seams: 'Wo es geteilt wird',
    foam: 'Welcher Schaumstoff',
    fit: 'Ob es passt und schließt',
    sheets: 'Wie es auf den Platten liegt',
    paper: 'Papier',
    cuts: 'Zuschnittliste',
    gluing: 'Reihenfolge des Klebens',
    finish: 'Farben und Oberfläche',
    takes: 'Was gebraucht wird',
    files: 'Dateien',
    parts: 'Teile',
  },
  marks: {
    so: 'entschieden',
    missing: 'noch zu entscheiden',
    wrong: 'hier stimmt etwas nicht',
    wait: 'wird ausgearbeitet',
  },

  head: {
    jobName: 'Name des Auftrags',
    revision: (n) => `Stand ${n}`,
    saved: {
      saved: 'in diesem Browser aufbewahrt',
      saving: 'wird aufbewahrt …',
      refused: 'nicht aufbewahrt: den Auftrag als Datei speichern',
    },
    open: 'Datei öffnen …',
    keep: 'Auftrag speichern',
    find: 'Alle Handgriffe',
    back: (name) => `zurück zu ${name}`,
    kit: 'Beispiele zum Ausprobieren:',
    kitLabel: 'Beispielaufträge',
    undo: 'Rückgängig',
    redo: 'Wiederholen',
  },

  size: {
    unread: 'noch kein Modell',
    unknown: 'Größe noch unbekannt',
    tall: (height) => `${height} hoch`,
    across: (width, depth) => `${width} breit, ${depth} tief`,
    picture: (thing) => `Das Modell von vorn mit Höhe und Breite, daneben ${thing}`,
    familiar: { hand: 'eine 200 mm lange Hand', head: 'ein 230 mm hoher Kopf', door: 'eine 2 m hohe Tür' },
    familiarShort: {
      hand: (height) => `Hand, ${height}`,
      head: (height) => `Kopf, ${height}`,
      door: (height) => `Tür, ${height}`,
    },
    readAs: {
      mm: 'Als Millimeter gelesen.',
      cm: 'Als Zentimeter gelesen.',
      m: 'Als Meter gelesen.',
      in: 'Als Zoll gelesen.',
    },
    measured: 'Größe nach zwei gemessenen Ecken.',
    byBody: (measure) => `Folgt dem Körper: ${measure}.`,
    fromAxis: (axis) => (axis === 'longest' ? 'Größe nach der längsten Seite.' : `Größe längs ${axis}.`),
    change: 'Größe ändern',
    keep: 'Größe behalten',
    ask: (longest) =>
      `Die Datei enthält Zahlen ohne Einheit. Ihre längste Seite ist ${longest}. Welche Größe ist gemeint?`,
    unit: 'Einheit der Datei',
    units: { mm: 'mm', cm: 'cm', m: 'Meter', in: 'Zoll' },
    orKnown: 'oder eine bekannte Länge:',
    axes: { longest: 'längste Seite', x: 'längs x', y: 'längs y', z: 'längs z' },
    is: 'misst',
    measure: 'oder zwei Ecken am Modell wählen',
    measureVerb: 'zwischen zwei Ecken messen',
    between: 'von Ecke zu Ecke',
    up: 'Was in der Datei oben ist',
  },

  seams: {
    waiting: 'zuerst die Größe festlegen',
    counts: (n, parts) => `${seams(n)}, ${pieces(parts)}`,
    sharper: 'Kanten schärfer als',
    partEdges: (n) => (n === 0 ? 'keine übrig' : `${edges(n)} trennen`),
    by: 'Schaumstoff trennen',
    reach: { round: 'rundum folgen', ridge: 'dem Grat folgen' },
    tools: { part: 'Kante für Kante', path: 'an einem Weg', dart: 'Abnäher ziehen', walk: 'im Gehen' },
    partAlong: (length) => `${length} weit trennen`,
  },
  tools: {
    part: 'Eine Kante anklicken, um dort zu trennen, eine Naht, um sie wieder zu verbinden. Ziehen zeichnet eine Linie an Kanten entlang.',
    path: MARK.tools.path,
    dart: MARK.tools.dart,
    drawing: MARK.drawing.place,
    measure: 'Zwei Ecken anklicken, deren Abstand bekannt ist.',
    move: MARK.move.path,
    walk: 'Pfeiltasten gehen von Ecke zu Ecke, P trennt die Kante, auf der man kam, die Umschalttaste mit einem Pfeil trennt im Gehen. R wählt Ecken für einen Weg.',
  },

  foam: {
    answer: (thickness) => `EVA-Schaumstoff ${thickness}`,
    answerOfWall: (thicknesses) =>
      `EVA-Schaumstoff aus ${thicknesses.length} Platten, von außen: ${thicknesses.join(', ')}`,
    stock: 'Platten im Bestand, Dicke im Vergleich',
    sheet: 'Platte',
    size: (width, height) => `${width} × ${height}`,
    measured: 'Gemessene Dicke',
    modelIs: 'Das Modell ist vom Schaumstoff die',
    surfaces: { face: 'Sichtseite', middle: 'Mitte', back: 'Rückseite' },
    finer: 'Biegen, Anzeichnen und Schrumpfen',
    neutral: 'Lage der neutralen Schicht, vom Inneren einer Biegung',
    neutralWhy:
      'Die Schicht im Schaumstoff, die beim Biegen ihre Länge behält. 0,5, bis ein eigener Streifen gebogen und gemessen ist.',
    traced: 'Schablonen werden angezeichnet auf der',
    sides: { face: 'Sichtseite', back: 'Rückseite, gespiegelt gedruckt' },
    wall: {
      heading:
        'Platten der Wand, die äußerste zuerst. Die gewählte liegt auf der Werkbank, und was darunter steht, gilt für sie.',
      name: (sheet, all, thickness) =>
        `${sheet}, ${thickness}${sheet === 1 ? ', außen' : sheet === all ? ', innen' : ''}`,
      add: { outside: 'Platte außen hinzufügen', inside: 'Platte innen hinzufügen' },
      move: { outside: 'nach außen', inside: 'nach innen' },
      stagger: 'Nähte neben denen außen',
      staggerOf: (sheet, least) =>
        `Wie weit die Nähte von Platte ${sheet} am Modell neben den sichtbaren liegen: 0, oder ${least} und mehr; unter 0 auf der anderen Seite.`,
      moveOf: (what, sheet) => `${what}: Platte ${sheet}`,
      remove: 'entfernen',
    },
  },

  fit: {
    waiting: 'wartet auf Stücke',
    answer: (stretch, squash) => `Dehnung ${stretch}, Stauchung ${squash}`,
    closes: (difference) => `Beide Seiten jeder Naht stimmen auf ${difference} überein.`,
    noSeams: 'Keine Naht zu schließen.',
    dryFit: (gap, overlap) =>
      `Trocken zusammengesetzt, in voller Dicke und mit Gehrungen, klaffen Kanten höchstens ${gap} und stehen höchstens ${overlap} über.`,
    worst: 'Gibt am meisten nach:',
  },
  seamTable: {
    caption: 'Nähte mit der Länge beider Seiten',
    seam: 'Naht',
    pieces: 'Stücke',
    oneSide: 'Eine Seite',
    otherSide: 'Andere',
    difference: 'Abstand',
    bevel: 'Gehrung',
    dryFit: 'Passprobe',
    fits: (gap, overlap) => `Spalt ${gap}, Überstand ${overlap}`,
    itself: (piece) => `${piece} schließt sich`,
    choose: (letter) => `Naht ${letter}`,
    all: (n) => `alle ${seams(n)}`,
    fewer: (n) => `nur die ${n} mit dem größten Abstand`,
  },

  sheets: {
    waiting: 'wartet auf Stücke',
    answer: (n, width, height) => `${sheets(n)} zu ${width} × ${height}`,
    sheet: (n) => `Platte ${n}`,
    used: (share) => `${share} genutzt`,
    picture: (n) => `Eine Schaumstoffplatte von oben mit ${n === 1 ? 'einem Stück' : `${n} Stücken`} darauf`,
  },

  paper: {
    waiting: 'noch keine Seiten',
    answer: (n, paper) => `${pages(n)} ${paper}`,
    trueScale: 'Mit 100 % drucken, ohne Anpassen an die Seite, und das Quadrat auf der ersten Seite nachmessen.',
    name: (name) => (name === 'roll' ? 'Rolle' : name === 'custom' ? 'Eigene Größe' : name),
    paper: 'Papier',
    stands: 'Lage',
    orientation: { portrait: 'hoch', landscape: 'quer' },
    width: 'Breite',
    height: 'Höhe',
    margin: 'Rand',
    overlap: 'Überlappung',
    pages: 'Seiten, wie sie gedruckt werden',
    pageName: (page) => (page.kind === 'scale' ? 'Maßquadrat' : page.name),
    picture: (name) => `Seite ${name}, wie sie gedruckt wird`,
    place: (name, at, of) => `${name}, Seite ${at} von ${of}`,
    before: 'vorige Seite',
    next: 'nächste Seite',
    close: 'zurück zur Werkbank',
    save: 'Schablonen speichern, PDF',
  },

  cuts: {
    waiting: 'wartet auf Stücke',
    answer: (n, area) => `${pieces(n)}, ${area} Schaumstoff`,
    kind: (piece) =>
      [
        ...(piece.hand === undefined ? [] : [HANDS[piece.hand]]),
        BENDS[piece.bendStyle],
        ...(piece.tracedSide === 'back' ? ['auf der Rückseite angezeichnet'] : []),
      ].join(', '),
    size: (width, height) => `${width} × ${height}`,
    figures: (quantity, thickness, area, give) => `${quantity} × ${thickness}, ${area}, gibt ${give} nach`,
    strip: ({ bevelDeg }) => `Streifen, lange Kanten ${settingText(bevelDeg, LEAN)}`,
    stripFigures: (quantity, thickness, area) => `${quantity} × ${thickness}, ${area}`,
  },
  cautions: {
    cut: 'Vor dem Schneiden',
    glue: 'Vor dem Erwärmen oder Kleben',
    step: 'Vor diesem Schritt',
    names: (titles) => titles.join(', '),
  },

  findings: {
    severity: { error: 'Halt', warning: 'Ansehen', note: 'Hinweis' },
    alike: (n) => `und ${n} weitere davon`,
    more: (n) => `${n} weitere`,
  },
  repairs: {
    done: 'Behoben:',
    takeBack: 'zurücknehmen',
    'turn-faces': 'Flächen gewendet',
    'drop-doubled': 'Doppelte entfernt',
    'drop-empty': 'leere Flächen entfernt',
    'close-hole': 'ein Loch geschlossen',
    'keep-shell': 'eine Oberfläche behalten',
  },
  remedies: {
    turnFaces: 'Wenden',
    dropDoubled: 'Doppelte entfernen',
    dropEmpty: 'Entfernen',
    closeHole: 'Schließen',
    forgetWish: 'Diesen Wunsch vergessen',
    partPiece: 'An der Linie trennen',
  },

  stages: ['ganz', 'zerlegt', 'flach', 'auf der Platte'],
  stageKeys: ['W', 'A', 'F', 'S'],
  stage: {
    bench: 'Die Werkbank',
    label: 'Das Modell und seine Stücke auf der Werkbank',
    keys: 'Pfeiltasten drehen die Ansicht, Plus und Minus gehen näher und weiter. E geht an Kanten entlang, der Schrägstrich findet jeden Handgriff.',
    slider: 'Wo die Stücke sind, von ganz bis auf der Platte',
    no3d: 'Dieser Browser kann nicht in 3D zeichnen. Alles andere geht: Stücke, Platten, Seiten und Dateien.',
    lost: 'Das 3D-Bild ging verloren. Es kommt von selbst zurück; Stücke, Platten, Seiten und Dateien gehen weiter.',
    drop: 'Loslassen zum Öffnen',
    empty:
      'Eine OBJ- oder STL-Datei hierher ziehen oder öffnen. Foamloft macht daraus Schablonen für Schaumstoff, in wahrer Größe.',
    reading: (name) => `${name} wird gelesen …`,
    stale: 'wie vor der letzten Änderung',
  },

  verbs: {
    part: 'hier trennen',
    join: 'verbinden',
    joinSeam: (letter) => `Naht ${letter} verbinden`,
    joinAll: 'alles verbinden',
    partTool: 'Kante für Kante trennen',
    pathTool: 'an einem Weg trennen',
    walk: 'an den Kanten gehen',
    sharp: 'Kanten trennen, die schärfer sind als ein Winkel',
    frame: 'näher heran',
    frameAll: 'alles sehen',
    traceFrom: (side) => `auf der ${side === 'face' ? 'Sichtseite' : 'Rückseite'} anzeichnen`,
    bendAs: { rolled: 'rollen', grooved: 'seine Falze nuten', kerfed: 'seine Biegung schlitzen' },
    roll: (stage) => `zeigen: ${stage}`,
    look: (side) => `Blick von ${SIDES[side] ?? side}`,
    lookRound: 'langsam rundum drehen, oder anhalten',
    lookReturn: 'zurück zum vorigen Blick',
    undo: (label) => `rückgängig: ${label}`,
    redo: (label) => `wiederholen: ${label}`,
    open: 'Datei öffnen',
    newVersion: 'eine neue Fassung dieses Modells einsetzen',
    save: (kind) =>
      ({
        pdf: 'Schablonen als PDF speichern',
        svg: 'Stücke als SVG speichern',
        report: 'Bericht speichern',
        project: 'Auftrag speichern',
        strip: 'Probestreifen als PDF speichern',
        changed: 'Seiten des Geänderten als PDF speichern',
      })[kind],
    keepSurface: 'nur diese Oberfläche behalten',
    goTo: (line) => `gehe zu: ${line}`,
    beside: {
      none: 'nichts daneben',
      hand: 'eine Hand daneben',
      head: 'ein Kopf daneben',
      door: 'eine Tür daneben',
    },
  },
  chosen: {
    seam: (letter) => `Naht ${letter}`,
    openEdge: (letter) => `Offene Kante ${letter}`,
    piece: (number, name) => `${number} ${name}`,
    edgeFacts: (facts, unit) => `${formatLength(facts.length, unit)}, ${foldWords(facts.foldDeg)}`,
    seamFacts: (one, other, difference) => `${one} und ${other}, Abstand ${difference}`,
    openFacts: (length) => `${length}, ein Rand des Requisits`,
    pieceFacts: (thickness, reason) => `${thickness}. ${reason}`,
    quantity: 'Anzahl',
    pieceName: 'Name',
    allowance: 'Überlappung',
    tools: {
      part: 'Kanten trennen',
      path: 'An einem Weg trennen',
      dart: 'Abnäher ziehen',
      drawing: 'Zeichnung auflegen',
      measure: 'Messen',
      move: 'Naht verschieben',
      walk: 'An den Kanten gehen',
    },
    noChoice: 'Nichts gewählt',
    back: 'loslassen',
    done: 'fertig',
  },

  finder: {
    label: 'Was ist zu tun?',
    hint: 'Handgriff eingeben',
    none: 'Kein Handgriff enthält diese Wörter.',
    later: 'wenn nichts gewählt oder in der Hand ist ',
  },
  progress: { label: 'Wird ausgearbeitet', begins: 'wird ausgearbeitet', cancel: 'abbrechen' },
  field: {
    wrong: (min, max, unit) =>
      Number.isFinite(max)
        ? `Zwischen ${formatLength(min, unit)} und ${formatLength(max, unit)}.`
        : 'Eine Länge, wie 322 mm oder 12 3/4 in.',
    thousands: 'Keine Zeichen zwischen Tausendern: 1234,5, nicht 1.234,5.',
  },

  notice: {
    close: 'schließen',
    stopped: 'Abgebrochen: Zu sehen ist der Stand vor der letzten Änderung.',
    goOn: 'ausarbeiten',
    broke:
      'Beim Ausarbeiten ist etwas schiefgegangen. Der Auftrag selbst ist sicher: als Datei speichern oder noch einmal versuchen.',
    again: 'noch einmal versuchen',
    silent:
      'Das Ausarbeiten antwortet seit 20 Sekunden nicht. Vielleicht ist es nur groß; bewegt sich nichts, neu ausarbeiten. Der Auftrag selbst ist sicher.',
    afresh: 'neu ausarbeiten',
    storageRefused:
      'Dieser Browser bewahrt nichts auf: den Auftrag als Datei speichern, bevor das Fenster geschlossen wird.',
    recovered: (name) => `${name} ist wieder da, wie verlassen.`,
    renewed: (file, told) => `${file} hat das Modell ersetzt. ${told}`.trim(),
    keepReport: 'den Bericht aufheben',
    ofFile: (file, text) => `${file}: ${text}`,
    unreadable: (file) => `${file} konnte nicht gelesen werden: kopieren und noch einmal versuchen.`,
    seamsNeedModel: (file) => `${file} enthält nur Nähte: zuerst das Modell öffnen, dann die Nähte.`,
    noSample: (title) => `${title} konnte nicht geholt werden: eine eigene Datei öffnen.`,
    saved: (file) => `${file} liegt bei den Downloads.`,
  },

  spoken: {
    undone: (label) => `Rückgängig: ${label}.`,
    redone: (label) => `Wiederholt: ${label}.`,
    parted: (length) => `${length} weit getrennt.`,
    joined: (length) => `${length} weit verbunden.`,
    allJoined: 'Alles verbunden.',
    moved: 'Naht verschoben.',
    openAlready: 'Das ist schon eine offene Kante des Requisits.',
    walkBegins: 'Gehen. Pfeiltasten gehen an Kanten entlang, P trennt, Escape beendet.',
    noWay: 'Dorthin führt keine Kante.',
    walked: (facts, unit, isParting) =>
      [
        `${formatLength(facts.length, unit)}, ${foldWords(facts.foldDeg)}`,
        facts.isOpen ? ', offene Kante' : facts.letter === null ? '' : `, Naht ${facts.letter}`,
        isParting && !facts.isOpen ? ', getrennt' : '',
        '.',
      ].join(''),
    ready: (n, all) => `Fertig: ${pieces(n)}, ${pages(all)}.`,
  },

  foot: {
    units: 'Längen in',
    unitNames: { mm: 'mm', in: 'Zoll' },
    language: 'Sprache',
    languages: { auto: 'wie das System', en: 'English', de: 'Deutsch' },
    light: 'Licht',
    themes: { auto: 'wie das System', light: 'Tag', dark: 'Nacht' },
    contrast: 'Kontrast',
    contrasts: { auto: 'wie das System', more: 'stark' },
    keys: 'Buchstaben als Tasten',
    keyNames: { on: 'an', off: 'aus' },
    picture: 'Bild',
    pictures: { auto: 'wie es der Rechner erlaubt', fine: 'fein', plain: 'einfach, schnell' },
    noLicences: 'Die Liste konnte nicht geholt werden; sie steht in licences.json neben der Seite.',
    licences: 'Fremde Werke darin und ihre Bedingungen',
  },

  settling: (text) => `${text}, Stücke setzen sich noch`,
};
