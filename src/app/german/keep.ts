import type { KEEP_WORDS } from '../files/keep-words.ts';
import { labelText } from '../label-words.ts';
import type { TranslationInPart } from '../language/spoken.ts';
import type { OFFLINE_WORDS } from '../offline/offline-words.ts';
import { pieces } from './count.ts';

export const KEEP: TranslationInPart<typeof KEEP_WORDS> = {
  file: (name) => `in ${name}`,
  changed: (name) => `geändert, ${name} ist älter`,
  noFile: 'noch in keiner Datei',
  looking: 'hier nur angesehen, nicht aufbewahrt',
  save: 'Auftrag speichern',
  saveAs: 'Speichern unter …',
  verbs: {
    save: 'Auftrag speichern',
    saveAs: 'Auftrag als andere Datei speichern',
    workHere: 'hier an diesem Auftrag arbeiten',
    onlyLook: 'diesen Auftrag hier nur ansehen',
    copy: 'in einer Kopie dieses Auftrags weitermachen',
    earlier: 'frühere Stände von Aufträgen ansehen',
    goBack: (name) => `zurück zu ${name}`,
  },
  kindOfFile: 'Foamloft-Auftrag',
  kindsToOpen: 'Aufträge, Modelle und Zeichnungen',

  saved: (name) => `In ${name} gespeichert.`,
  inDownloads: (name) => `${name} liegt bei den Downloads.`,
  changedOnDisk: (name, when) =>
    `${name} wurde auf der Platte des Rechners geändert (${when}), nachdem es hier geöffnet war. Nichts wurde geschrieben.`,
  gone: (name) => `${name} ist nicht mehr dort. Den Auftrag als andere Datei speichern.`,
  notAllowed: (name) =>
    `Dieses Fenster darf nicht in ${name} schreiben. Erlauben oder den Auftrag als andere Datei speichern.`,
  failed: (name, reason) => `${name} konnte nicht geschrieben werden: ${reason}. Was darin war, ist noch da.`,
  reasons: { full: 'der Speicher ist voll', other: 'der Speicher nahm es nicht an' },
  writeOver: 'überschreiben',
  openIt: 'öffnen, was gespeichert ist',
  again: 'noch einmal versuchen',

  full: 'Dieser Browser hat keinen Platz mehr, der Auftrag wird hier nicht aufbewahrt. Als Datei speichern und unter den früheren Ständen Aufträge vergessen, die nicht mehr gebraucht werden.',
  newer:
    'Daneben ist eine neuere Fassung dieses Fensters offen, die jetzt die Aufträge aufbewahrt. Von hier wird nichts mehr aufbewahrt: Den Auftrag als Datei speichern, dann dieses Fenster neu laden.',

  windows: {
    label: 'Der Auftrag in zwei Fenstern',
    elsewhere: 'Ein anderes Fenster arbeitet an diesem Auftrag; hier kann nichts geändert werden.',
    refused:
      'Nichts wurde geändert: Ein anderes Fenster arbeitet an diesem Auftrag. Hier weiterarbeiten oder in einer Kopie.',
    looking: 'Dieser Auftrag wird hier nur angesehen; ein anderes Fenster arbeitet daran.',
    workHere: 'Hier arbeiten',
    onlyLook: 'Nur ansehen',
    copy: 'Kopie öffnen',
    copyName: (name) => `${name}, Kopie`,
    taken: 'Jetzt wird hier daran gearbeitet.',
  },

  earlier: {
    summary: 'Frühere Stände dieses Auftrags und anderer',
    waiting: 'werden gesucht …',
    none: 'Noch keine. Sie werden beim Arbeiten von selbst hier aufbewahrt.',
    refused: 'Dieser Browser bewahrt nichts auf, also gibt es keine.',
    why: 'Nur in diesem Browser aufbewahrt: die Enden der letzten zehn Arbeitsstrecken, dann je eines für jede Stunde und jeden Tag.',
    inHand: 'der Auftrag in Arbeit',
    last: 'wie verlassen',
    inFile: 'in seiner Datei gespeichert',
    after: (what) => `nach: ${labelText(what)}`,
    pieces,
    bring: 'zurückholen',
    open: 'öffnen',
    bringOf: (when) => `den Stand von ${when} zurückholen`,
    openOf: (name) => `${name} öffnen, wie verlassen`,
    forget: 'diesen Auftrag vergessen',
    forgetSure: (name) => `${name} mit allen Ständen vergessen?`,
    forgetYes: 'vergessen',
    forgetNo: 'behalten',
    before: (name) => `zurück zu ${name}, mit allen Schritten`,
    back: (when) => `Der Stand von ${when} ist zurück. Rückgängig führt wieder dorthin, wo der Auftrag war.`,
    all: (n) => `alle ${n} Stände`,
    missing: 'Diesen Stand gibt es nicht mehr.',
  },

  everything: 'Alles wählen',
  print: {
    verb: 'Schablonen drucken',
    button: 'Drucken …',
    why: 'Im Druckfenster 100 % und kein Anpassen an die Seite wählen, dann das Quadrat messen.',
  },
};

export const OFFLINE: TranslationInPart<typeof OFFLINE_WORDS> = {
  ready: 'Foamloft liegt ganz in diesem Browser: Von jetzt an geht es ohne Netz.',
  notYet:
    'Es gibt kein Netz, und noch liegt nicht alles in diesem Browser. Was noch nicht benutzt wurde, kann fehlen; der Auftrag geht weiter.',
  newer: 'Eine neue Fassung von Foamloft ist da. Das Fenster wird dafür neu geladen; der Auftrag bleibt, wie er ist.',
  newerElsewhere:
    'Ein anderes Fenster hat eine neue Fassung von Foamloft übernommen; dieses läuft mit der alten weiter. Es wird dafür neu geladen; der Auftrag bleibt, wie er ist.',
  saveFirst:
    'Eine neue Fassung von Foamloft ist da. Dieser Browser bewahrt den Auftrag nicht auf: zuerst als Datei speichern.',
  save: 'Auftrag speichern',
  takeUp: 'übernehmen',
  later: 'später',
  row: 'Ohne Netz',
  states: {
    off: 'nicht in diesem Browser',
    keeping: 'noch nicht, Dateien werden abgelegt',
    kept: 'geht',
  },
  install: 'Auf diesem Rechner einrichten',
};
