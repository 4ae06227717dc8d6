import type { Sentences } from '../saying.ts';

/** What is said of sheets of foam, of stock, of paper and of printers. */
export const SHEETS: Sentences = {
  'mock-up/card': [['Card is {1} mm thick, not {2}.', 'Karton ist {1} mm dick, nicht {2}.']],
  'mock-up/no-pieces': [
    [
      'There is no piece to make small yet: part the sculpt into pieces first.',
      'Noch gibt es kein Stück zum Verkleinern: das Modell zuerst in Stücke teilen.',
    ],
  ],
  'mock-up/scale': [
    [
      'A mock-up is {1} times smaller than the prop, not {2}.',
      'Ein Probemodell ist {1}-mal kleiner als das Requisit, nicht {2}.',
    ],
  ],
  'nest/held-badly': [
    [
      '{1} is held where it lies over another piece, over a place to keep clear of, or off its sheet: move it, or let it go.',
      '{1} ist festgehalten, wo es über einem anderen Stück, über einer freizuhaltenden Stelle oder neben seiner Platte liegt: verschieben oder loslassen.',
    ],
  ],
  'nest/held-nowhere': [
    [
      '{1} is held on a sheet that is not in stock: it was laid anew; let it go, or hold it where it lies now.',
      '{1} ist auf einer Platte festgehalten, die nicht im Bestand ist: es wurde neu gelegt; loslassen oder festhalten, wo es jetzt liegt.',
    ],
  ],
  'nest/moved-on': [
    [
      '{1} no longer fits where it lay in the layout that was taken: it was laid anew.',
      '{1} passt nicht mehr dorthin, wo es in der übernommenen Anordnung lag: es wurde neu gelegt.',
    ],
  ],
  'nest/no-room': [
    [
      'The sheets of {1} in hand have no room for {2}: put another sheet into stock, or let sheets be bought.',
      'Die vorhandenen Platten von {1} haben keinen Platz für {2}: noch eine Platte in den Bestand geben oder Platten kaufen lassen.',
    ],
    [
      'The sheets of {1} in hand have no room for {2} ({3} times): put another sheet into stock, or let sheets be bought.',
      'Die vorhandenen Platten von {1} haben keinen Platz für {2} ({3}-mal): noch eine Platte in den Bestand geben oder Platten kaufen lassen.',
    ],
  ],
  'nest/too-large': [
    [
      '{1} is larger than a sheet of {2}: {a}, or take a larger sheet.',
      '{1} ist größer als eine Platte von {2}: {a} oder eine größere Platte nehmen.',
    ],
    [
      'No sheet of {1} in hand is large enough for {2}: put a larger one into stock, let sheets be bought, or {a}.',
      'Keine vorhandene Platte von {1} ist groß genug für {2}: eine größere in den Bestand geben, Platten kaufen lassen oder {a}.',
    ],
  ],
  'neutral/none': [
    [
      'Type the length and thickness of the strip and at least one bend.',
      'Länge und Dicke des Streifens und mindestens eine Biegung eingeben.',
    ],
  ],
  'neutral/outside': [
    [
      'These bends put the neutral surface outside the foam (k {1}): measure the flat strip again, and the arc under the foam, not over it.',
      'Nach diesen Biegungen läge die neutrale Schicht außerhalb des Schaumstoffs (k {1}): den flachen Streifen neu messen, und den Bogen unter dem Schaumstoff, nicht darüber.',
    ],
  ],
  'paper/size': [
    ['A paper of your own needs a width and a height in mm.', 'Ein eigenes Papier braucht Breite und Höhe in mm.'],
    ['A roll must be between {1} mm wide.', 'Eine Rolle muss {1} mm breit sein.'],
    ['A roll must be between {1} and {2} mm wide.', 'Eine Rolle muss zwischen {1} und {2} mm breit sein.'],
    [
      'A paper of your own must be between {1} and {2} mm wide and high.',
      'Ein eigenes Papier muss zwischen {1} und {2} mm breit und hoch sein.',
    ],
  ],
  'paper/unknown': [
    [
      'There is no paper called “{1}” here: choose {2}, roll or custom.',
      'Ein Papier namens „{1}“ gibt es hier nicht: {2}, roll oder custom wählen.',
    ],
  ],
  'paper/up-to-date': [
    [
      'The paper of every piece is printed and up to date, or its piece is cut: there is nothing to print.',
      'Das Papier jedes Stücks ist gedruckt und aktuell, oder das Stück ist geschnitten: es gibt nichts zu drucken.',
    ],
  ],
  'printer/axes': [
    [
      '{1} prints across and up {2} % apart: measure the square once more with a good ruler before you trust the correction.',
      '{1} druckt quer und hoch um {2} % verschieden: das Quadrat noch einmal mit einem guten Lineal messen, bevor die Korrektur gilt.',
    ],
  ],
  'printer/far': [
    [
      'That is {1} % off, more than a printer errs: look in the print window for “fit”, “shrink” or “scale”, set 100 %, and print the page again.',
      'Das weicht um {1} % ab, mehr als ein Drucker irrt: im Druckfenster nach „anpassen“, „verkleinern“ oder „skalieren“ sehen, 100 % einstellen und die Seite neu drucken.',
    ],
    [
      'The square leans by {1}°, more than a printer does: the paper ran in askew.',
      'Das Quadrat neigt sich um {1}°, mehr als bei einem Drucker: das Papier lief schief ein.',
    ],
    ['Set its guides and print the page again.', 'Die Papierführung einstellen und die Seite neu drucken.'],
  ],
  'printer/large': [
    [
      '{1} is corrected by {2} %: most often the print window shrinks or fits the page.',
      '{1} wird um {2} % korrigiert: meist verkleinert oder passt das Druckfenster die Seite an.',
    ],
    ['Set 100 % there first, then measure again.', 'Dort zuerst 100 % einstellen, dann neu messen.'],
  ],
  'printer/name': [
    [
      'Give the printer a name, so that its correction is found again.',
      'Dem Drucker einen Namen geben, damit seine Korrektur wiedergefunden wird.',
    ],
  ],
  'printer/readings': [
    [
      'Each reading must be a length above {1} mm: measure the square of the scale page again.',
      'Jede Ablesung muss eine Länge über {1} mm sein: das Quadrat der Maßstabsseite neu messen.',
    ],
    [
      'These are not sides and diagonals of one square: with sides of {1} mm the diagonals are about {2} mm.',
      'Das sind nicht Seiten und Diagonalen eines Quadrats: bei Seiten von {1} mm sind die Diagonalen etwa {2} mm.',
    ],
    ['Measure all four again.', 'Alle vier neu messen.'],
  ],
  'stock/broken': [
    ['{1} is not a list of sheets: {a}.', '{1} ist keine Liste von Platten: {a}.'],
    [
      'In {1} two sheets have the id {2}: give each one of its own.',
      'In {1} haben zwei Platten die Kennung {2}: jeder eine eigene geben.',
    ],
  ],
  'stock/count': [
    [
      'Say how many of {1} are in hand: a whole number from 1 to {2}.',
      'Angeben, wie viele von {1} vorhanden sind: eine ganze Zahl von 1 bis {2}.',
    ],
  ],
  'stock/foam': [
    [
      'In {1} the sheet {2} is of the foam {3}, which the project does not know: take one of {4}.',
      'In {1} ist die Platte {2} aus dem Schaumstoff {3}, den das Projekt nicht kennt: einen von {4} nehmen.',
    ],
  ],
  'stock/keep-out': [
    [
      'A place to keep clear of on {1} is no clean ring: give 3 to {2} corners, in order, so that no side crosses or touches another.',
      'Eine freizuhaltende Stelle auf {1} ist kein sauberer Ring: 3 bis {2} Ecken der Reihe nach angeben, sodass keine Seite eine andere kreuzt oder berührt.',
    ],

    [
      'The sheet {1} has more than {2} places to keep clear of: join some.',
      'Die Platte {1} hat mehr als {2} freizuhaltende Stellen: einige zusammenlegen.',
    ],
  ],
  'stock/name': [
    [
      'Give the sheet a name, so that it can be found on the shelf.',
      'Der Platte einen Namen geben, damit sie im Regal zu finden ist.',
    ],
    ['The sheet {1} needs an id of its own, other than {2}.', 'Die Platte {1} braucht eine eigene Kennung, nicht {2}.'],
  ],
  'stock/not-json': [
    [
      '{1} is not valid JSON: a list of sheets looks like {2}.',
      '{1} ist kein gültiges JSON: eine Liste von Platten sieht so aus: {2}.',
    ],
  ],
  'stock/size': [
    ['The sheet {1} must measure {2} mm each way.', 'Die Platte {1} muss in jeder Richtung {2} mm messen.'],
  ],
  'tile/margin': [
    [
      'A margin of {1} mm leaves too little of {2} to print on: choose {3} mm.',
      'Ein Rand von {1} mm lässt von {2} zu wenig zum Drucken: {3} mm wählen.',
    ],
  ],
  'tile/nothing': [
    [
      'There is no template to print yet: part the sculpt into pieces first.',
      'Noch gibt es keine Schablone zu drucken: das Modell zuerst in Stücke teilen.',
    ],
  ],
  'tile/overlap': [
    [
      'An overlap of {1} mm leaves each page too little of its own: choose {2} mm on {3} with this margin.',
      'Eine Überlappung von {1} mm lässt jeder Seite zu wenig Eigenes: auf {3} bei diesem Rand {2} mm wählen.',
    ],
  ],
  'tile/strip': [
    [
      '{1} is too short for a test strip: take paper of A5 or larger.',
      '{1} ist zu kurz für einen Probestreifen: Papier ab A5 nehmen.',
    ],
  ],
  'tile/thin-margin': [
    [
      'With a margin of {1} mm many printers cut lines off at the edge of the paper: {2} mm is safe with most, {3} mm with all.',
      'Bei einem Rand von {1} mm schneiden viele Drucker Linien am Papierrand ab: {2} mm sind bei den meisten sicher, {3} mm bei allen.',
    ],
  ],
  'tile/too-many-pages': [
    [
      'The templates would fill {1} pages: check the size of the model, or choose larger paper.',
      'Die Schablonen füllten {1} Seiten: die Größe des Modells prüfen oder größeres Papier wählen.',
    ],
  ],
  'tile/wider-margin': [
    [
      'Pages for {1} have a margin of {2} mm instead of {3}: they are drawn larger than they print, and nothing may leave the paper.',
      'Seiten für {1} haben einen Rand von {2} mm statt {3}: sie sind größer gezeichnet, als sie drucken, und nichts darf vom Papier laufen.',
    ],
  ],
  'cutter/knife': [
    [
      'A machine cuts upright: {1} of {2} pieces have edges that lean, are cut at the larger of face and back, and get their bevels by knife along the lines marked for it.',
      'Eine Maschine schneidet senkrecht: {1} von {2} Stücken haben geneigte Kanten, werden an der größeren von Sichtseite und Rückseite geschnitten und bekommen ihre Gehrungen mit dem Messer an den dafür markierten Linien.',
    ],
  ],
  'cutter/few-bridges': [
    [
      '{1} is too small for {2} bridges of {3} mm and gets none: hold it down.',
      '{1} ist zu klein für {2} Stege von {3} mm und bekommt keinen: festhalten.',
    ],
    [
      '{1} is too small for {2} bridges of {3} mm and gets {4}.',
      '{1} ist zu klein für {2} Stege von {3} mm und bekommt {4}.',
    ],
  ],
  'cutter/opening-lost': [
    [
      'An opening of {1}, {2} mm across its box, leaves nothing to cut away inside a cut {3} mm wide: cut these sheets with something finer.',
      'Eine Öffnung von {1}, {2} mm groß, lässt in einem Schnitt von {3} mm nichts zum Wegschneiden: diese Platten feiner schneiden.',
    ],
  ],
  'stock/outline': [
    [
      'The outline of {1} is no clean ring: give 3 to {2} corners, in order, so that no side crosses or touches another.',
      'Der Umriss von {1} ist kein sauberer Ring: 3 bis {2} Ecken der Reihe nach angeben, sodass keine Seite eine andere kreuzt oder berührt.',
    ],
  ],
};
