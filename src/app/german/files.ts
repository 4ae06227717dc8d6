import type { CUTTER_WORDS, FILES_WORDS } from '../files-words.ts';
import type { Translation } from '../language/spoken.ts';

export const FILES: Translation<typeof FILES_WORDS> = {
  waiting: 'wartet auf Stücke',
  answer: 'Wählen, was mitzunehmen ist',
  paper: {
    legend: 'Papier und Listen',
    kinds: {
      templates: 'Schablonen, PDF',
      buildSheet: 'Bauplan, PDF: Zuschnittliste, Kleben Schritt für Schritt, was gebraucht wird',
      cutList: 'Zuschnittliste, CSV',
      gluing: 'Reihenfolge des Klebens, JSON',
      pieces: 'Stücke, SVG',
      report: 'Bericht, JSON',
      project: 'Der Auftrag selbst',
    },
  },
  cutter: {
    legend: 'Für eine Schneidmaschine, eine Datei je Platte',
    sheetSvg: 'SVG, in Haarlinien und gefüllt',
    dxf: 'DXF, ein Block je Stück',
  },
  pictures: {
    legend: 'Bilder, eine Datei je Platte und Seite',
    png: 'PNG in wahrer Größe',
    dpi: 'Punkte je Zoll',
  },
  models: {
    legend: 'Das fertige Requisit, in voller Dicke und zusammengesetzt',
    stl: 'STL',
    obj: 'OBJ, und die flachen Stücke mit Texturkoordinaten in mm',
    stack: 'Eine Wand aus mehreren Platten kommt im Ganzen und Platte für Platte.',
    smaller: 'Noch einmal kleiner: zum Drucken als Probe',
    times: 'Wievielmal kleiner',
  },
  save: 'Auswahl speichern',
  zip: 'Mehrere Dateien kommen als ein ZIP; mit dem Auftrag darin lässt es sich hier wieder öffnen.',
  nothing: 'Nichts ist gewählt.',
  stop: 'Abbrechen',
  stopVerb: 'Herstellen der Dateien abbrechen',
  progress: 'Wie weit die Dateien sind',
  cautionFirst: 'Bevor ein Laser Schaumstoff schneidet',
  cautionUnknown: 'Noch ist nicht gesagt, was die Platten schneidet. Falls es ein Laser ist:',
  seen: 'Gelesen',
  seenFirst: 'Zuerst lesen, was oben steht: Dann können die Dateien gespeichert werden.',
  saved: (name, count) =>
    count === 1 ? `${name} liegt bei den Downloads.` : `${name} mit ${count} Dateien liegt bei den Downloads.`,
  inside: 'Was darin ist',
  spoken: {
    begun: 'Dateien werden hergestellt.',
    stopped: 'Abgebrochen. Es entstand keine Datei.',
  },
};

export const CUTTER: Translation<typeof CUTTER_WORDS> = {
  kind: 'Was die Platten schneidet',
  kinds: { unknown: 'noch nicht gesagt', blade: 'ein Messer, gezogen oder schwingend', laser: 'ein Laser' },
  width: 'Breite des Schnitts',
  usual: (width) => `üblich: ${width}`,
  takeUsual: 'die übliche Breite nehmen',
  widthWhy:
    'Linien laufen um die halbe Breite außerhalb von Umrissen und innerhalb von Löchern. Ein Quadrat von 100 mm schneiden und messen, was fehlt.',
  bridges: 'Haltestege lassen, die jedes Stück in der Platte halten',
  count: 'Stege um ein Stück',
  bridgeMm: 'Breite eines Stegs',
};
