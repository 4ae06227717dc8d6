import type { Sentences } from '../saying.ts';

/** What is said of our own files and of drawings. */
export const FILES: Sentences = {
  'drawing/empty': [
    ['The file is empty: save the drawing again as SVG.', 'Die Datei ist leer: die Zeichnung neu als SVG speichern.'],
  ],
  'drawing/fills': [['Outlines are laid, fills are not.', 'Umrisse werden aufgelegt, Füllungen nicht.']],
  'drawing/missed': [
    [
      'Nothing of the drawing lies on the sculpt there: move it, or make it smaller.',
      'Dort liegt nichts von der Zeichnung auf dem Modell: verschieben oder kleiner machen.',
    ],
  ],
  'drawing/no-lines': [
    [
      'The drawing has no lines: turn writing and symbols into paths and save it again.',
      'Die Zeichnung hat keine Linien: Schrift und Zeichen in Pfade wandeln und neu speichern.',
    ],
  ],
  'drawing/no-unit': [
    [
      'The file names no unit, so its numbers are taken as mm: set the size if it is another.',
      'Die Datei nennt keine Einheit, die Zahlen gelten als mm: das Maß setzen, wenn es eine andere ist.',
    ],
  ],
  'drawing/not-svg': [
    [
      'The file is XML but no drawing: it begins with {1}, not svg.',
      'Die Datei ist XML, aber keine Zeichnung: sie beginnt mit {1}, nicht mit svg.',
    ],
  ],
  'drawing/numbers': [
    [
      'A number in the drawing is beyond all measure: save it again as plain SVG.',
      'Eine Zahl in der Zeichnung übersteigt jedes Maß: neu als einfaches SVG speichern.',
    ],
  ],
  'drawing/too-fine': [
    [
      'The drawing has more than {1} corners: simplify its paths, or lay it in parts.',
      'Die Zeichnung hat mehr als {1} Ecken: ihre Pfade vereinfachen oder in Teilen auflegen.',
    ],
  ],
  'drawing/too-large': [
    [
      'The file is over 20 MB: save the outlines alone, without pictures.',
      'Die Datei ist größer als 20 MB: nur die Umrisse speichern, ohne Bilder.',
    ],
    [
      'The drawing is wider than 100 m: save it with the right unit.',
      'Die Zeichnung ist breiter als 100 m: mit der richtigen Einheit speichern.',
    ],
  ],
  'drawing/transform': [
    [
      'The transform “{1}” cannot be read: save the drawing again as plain SVG.',
      'Die Umformung „{1}“ lässt sich nicht lesen: die Zeichnung neu als einfaches SVG speichern.',
    ],
  ],
  'engraving/no-piece': [
    [
      '{1} mm of its lines lie where no flat piece is cut for the sculpt, and are left out: move the artwork, or make it smaller.',
      '{1} mm seiner Linien liegen, wo für das Modell kein flaches Stück geschnitten wird, und sind weggelassen: die Zeichnung verschieben oder kleiner machen.',
    ],
  ],
  'engraving/no-point': [
    [
      'It sits at a corner or face that the sculpt does not have: choose another place on the sculpt.',
      'Sie sitzt an einer Ecke oder Fläche, die das Modell nicht hat: eine andere Stelle auf dem Modell wählen.',
    ],
  ],
  'parts/broken': [['{1} is not a parts file: {a}.', '{1} ist keine Teileliste: {a}.']],
  'parts/no-part': [
    [
      'There is no part “{1}” to join: the prop has {2}.',
      'Ein Teil „{1}“ zum Verbinden gibt es nicht: das Requisit hat {2}.',
    ],
  ],
  'json/too-deep': [
    [
      '{1} holds lists within lists more than {2} deep, as no file for this does: choose another one.',
      '{1} enthält Listen in Listen, mehr als {2} tief, wie keine Datei dafür: eine andere wählen.',
    ],
  ],
  'parts/not-json': [
    [
      '{1} is not valid JSON: a parts file looks like {2}.',
      '{1} ist kein gültiges JSON: eine Teileliste sieht so aus: {2}.',
    ],
  ],
  'path/too-fine': [
    [
      'The path would have more than {1} corners: give a larger tolerance.',
      'Der Pfad hätte mehr als {1} Ecken: eine größere Abweichung zulassen.',
    ],
  ],
  'plain/no-foam': [
    [
      '{1} needs foam of {2} mm, and none of its foams is: add one.',
      '{1} braucht Schaumstoff von {2} mm, keiner seiner Schaumstoffe ist das: einen zufügen.',
    ],
  ],
  'plain/no-source': [
    ['The file {1} is not here: choose it again.', 'Die Datei {1} ist nicht da: noch einmal wählen.'],
  ],
  'project/broken': [
    [
      'The kept version “{1}” does not go with the project in this file: open an older copy of it.',
      'Die aufgehobene Fassung „{1}“ passt nicht zum Projekt in dieser Datei: eine ältere Kopie davon öffnen.',
    ],

    ['{1} cannot be used: {a}.', '{1} lässt sich nicht verwenden: {a}.'],
    [
      '{1} cannot be used: it names the foam {2} but does not hold it.',
      '{1} lässt sich nicht verwenden: genannt ist der Schaumstoff {2}, er ist aber nicht enthalten.',
    ],
    [
      '{1} cannot be used: its stock names the foam {2} but the file does not hold it.',
      '{1} lässt sich nicht verwenden: im Bestand ist der Schaumstoff {2} genannt, er ist aber nicht enthalten.',
    ],
    [
      '{1} cannot be used: it prints for {2} but does not hold how that printer prints.',
      '{1} lässt sich nicht verwenden: gedruckt wird für {2}, wie dieser Drucker druckt, ist aber nicht enthalten.',
    ],
    [
      '{1} cannot be used: it paints with the colour {2} but does not hold it.',
      '{1} lässt sich nicht verwenden: bemalt wird mit der Farbe {2}, sie ist aber nicht enthalten.',
    ],
    [
      '{1} cannot be used: two of its areas have the id {2}, so that neither can be told from the other; give one of them an id of its own in the file.',
      '{1} lässt sich nicht verwenden: zwei Bereiche haben die Kennung {2} und sind nicht zu unterscheiden; einem in der Datei eine eigene geben.',
    ],
  ],
  'project/newer': [
    [
      '{1} was saved by a newer Foamloft: update this one, then open it again.',
      '{1} wurde von einem neueren Foamloft gespeichert: dieses aktualisieren, dann wieder öffnen.',
    ],
  ],
  'project/no-sculpt': [
    [
      '{1} holds parts of other kinds and no sculpt, so there is nothing to look for seams on: name one that has a sculpt.',
      '{1} enthält andere Teile und kein Modell, es gibt nichts, worauf Nähte zu suchen wären: eines mit Modell nennen.',
    ],
  ],
  'project/not-json': [
    [
      '{1} is not a whole project file (its text ends early or is damaged): open an older copy.',
      '{1} ist keine ganze Projektdatei (der Text endet zu früh oder ist beschädigt): eine ältere Kopie öffnen.',
    ],
  ],
  'project/unknown-fields': [
    [
      '{1} holds fields that are not known here: {2} and {3} more; they are left out when it is saved.',
      '{1} enthält Felder, die hier nicht bekannt sind: {2} und {3} weitere; beim Speichern entfallen sie.',
    ],
    [
      '{1} holds fields that are not known here: {2}; they are left out when it is saved.',
      '{1} enthält Felder, die hier nicht bekannt sind: {2}; beim Speichern entfallen sie.',
    ],
  ],
  'project/not-in-zip': [
    [
      '{1} is damaged or holds no Foamloft project: choose a zip that was saved with the project in it, or a file ending in {2}.',
      '{1} ist beschädigt oder enthält kein Foamloft-Projekt: ein ZIP wählen, das mit dem Projekt darin gespeichert wurde, oder eine Datei, die auf {2} endet.',
    ],
  ],
  'project/not-ours': [
    [
      '{1} is a JSON file but not a Foamloft project: choose a file ending in {2}.',
      '{1} ist eine JSON-Datei, aber kein Foamloft-Projekt: eine Datei wählen, die auf {2} endet.',
    ],
  ],
  'project/source': [
    [
      'In {1} the model {2} is damaged: open an older copy of the project.',
      'In {1} ist das Modell {2} beschädigt: eine ältere Kopie des Projekts öffnen.',
    ],
    [
      '{1} does not hold its model {2}: open an older copy of the project.',
      '{1} enthält sein Modell {2} nicht: eine ältere Kopie des Projekts öffnen.',
    ],
  ],
  'propose/no-size': [
    [
      'Say how large the sculpt is first, and mark a seam.',
      'Zuerst angeben, wie groß das Modell ist, und eine Naht anzeichnen.',
    ],
    [
      'Say how large the sculpt is first: then it is known how far the foam must stretch.',
      'Zuerst angeben, wie groß das Modell ist: dann ist bekannt, wie weit sich der Schaumstoff dehnen muss.',
    ],
  ],
  'seams/broken': [['{1} is not a seam file: {a}.', '{1} ist keine Nahtdatei: {a}.']],
  'seams/not-json': [
    [
      '{1} is not valid JSON: a seam file looks like {2}.',
      '{1} ist kein gültiges JSON: eine Nahtdatei sieht so aus: {2}.',
    ],
  ],
  'xml/entities': [
    [
      'The file defines names of its own (entities), which are not read: save it again as plain SVG.',
      'Die Datei legt eigene Namen fest (Entitäten), die nicht gelesen werden: neu als einfaches SVG speichern.',
    ],
  ],
  'xml/too-large': [
    [
      'The file has more than {1} elements or nests them deeper than {2}: save the outlines alone.',
      'Die Datei hat mehr als {1} Elemente oder schachtelt sie tiefer als {2}: nur die Umrisse speichern.',
    ],
  ],
  'drawing/left-out': [
    ['Left out of the drawing: {1}.', 'Aus der Zeichnung weggelassen: {1}.'],
    ['Turn into paths what is to be a seam.', 'In Pfade wandeln, was Naht werden soll.'],
  ],
  'carry/seams': [
    ['The new version of the sculpt has 1 edge of seams.', 'Die neue Fassung des Modells hat 1 Nahtkante.'],
    ['The new version of the sculpt has {1} edges of seams.', 'Die neue Fassung des Modells hat {1} Nahtkanten.'],
    [
      'The new version of the sculpt has {1} edges of seams, and 1 line across faces that others have become.',
      'Die neue Fassung des Modells hat {1} Nahtkanten und 1 Linie über Flächen, zu der andere geworden sind.',
    ],
    [
      'The new version of the sculpt has {1} edges of seams, and {2} lines across faces that others have become.',
      'Die neue Fassung des Modells hat {1} Nahtkanten und {2} Linien über Flächen, zu denen andere geworden sind.',
    ],
  ],
};
