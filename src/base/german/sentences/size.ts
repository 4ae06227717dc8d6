import type { Sentences } from '../saying.ts';

/** What is said of how large a sculpt is, of its mirror and of making it simpler. */
export const SIZE: Sentences = {
  'size/assumed': [
    [
      '{1} does not say its unit, so its numbers were taken as millimetres: say its unit or a size if that is not so.',
      '{1} nennt keine Einheit, die Zahlen wurden als Millimeter genommen: die Einheit oder ein Maß angeben, wenn das nicht stimmt.',
    ],
    [
      'The file does not say its unit, so its numbers were taken as millimetres: give --unit or --size if that is not so.',
      'Die Datei nennt keine Einheit, die Zahlen wurden als Millimeter genommen: --unit oder --size angeben, wenn das nicht stimmt.',
    ],
  ],
  'size/flat': [
    [
      'The sculpt has no extent along {1}: give its size along another axis.',
      'Das Modell hat längs {1} keine Ausdehnung: sein Maß längs einer anderen Achse angeben.',
    ],
    [
      'The sculpt has no extent along {1}: tie it along another axis.',
      'Das Modell hat längs {1} keine Ausdehnung: längs einer anderen Achse an den Körper binden.',
    ],
  ],
  'size/follows-body': [
    [
      '{1} follows the body: {2} mm long before, {3} mm now.',
      '{1} folgt dem Körper: vorher {2} mm lang, jetzt {3} mm.',
    ],
  ],
  'size/large': [
    [
      'The sculpt is {1} mm long, {a}: this looks like the wrong unit, so check its size.',
      'Das Modell ist {1} mm lang, {a}: das sieht nach der falschen Einheit aus, das Maß prüfen.',
    ],
    [
      'The sculpt is {1} m long, {a}: this looks like the wrong unit, so check its size.',
      'Das Modell ist {1} m lang, {a}: das sieht nach der falschen Einheit aus, das Maß prüfen.',
    ],
    [
      'The sculpt is {1} km long, {a}: this looks like the wrong unit, so check its size.',
      'Das Modell ist {1} km lang, {a}: das sieht nach der falschen Einheit aus, das Maß prüfen.',
    ],
  ],
  'size/too-large': [
    [
      'The sculpt would be {1} m long, and {2} m is the most: check its unit, or give one real measure.',
      'Das Modell wäre {1} m lang, und {2} m ist das Meiste: die Einheit prüfen oder ein wirkliches Maß angeben.',
    ],
    [
      'The sculpt would be {1} km long, and {2} m is the most: check its unit, or give one real measure.',
      'Das Modell wäre {1} km lang, und {2} m ist das Meiste: die Einheit prüfen oder ein wirkliches Maß angeben.',
    ],
  ],
  'size/small': [
    [
      'The sculpt is {1} µm long, {a}: this looks like the wrong unit, so check its size.',
      'Das Modell ist {1} µm lang, {a}: das sieht nach der falschen Einheit aus, das Maß prüfen.',
    ],
  ],
  'size/no-fit': [
    [
      'No size of the sculpt gives {1} mm at {2} inside foam this thick: move the tape, or take thinner foam.',
      'Keine Größe des Modells ergibt {1} mm bei {2} innerhalb so dicken Schaumstoffs: das Maßband verschieben oder dünneren Schaumstoff nehmen.',
    ],
  ],
  'size/no-length': [
    ['{1} mm is no length: give a size over {2} mm.', '{1} mm ist keine Länge: ein Maß über {2} mm angeben.'],
  ],
  'size/no-measure': [
    [
      'The part follows {1}, which was not measured: type it into the table of body measures, or size the part otherwise.',
      'Das Teil folgt dem Maß „{1}“, das nicht genommen wurde: in die Tabelle der Körpermaße eintragen oder die Größe anders festlegen.',
    ],
  ],
  'size/no-tape': [
    [
      'The tape by which the part follows the body is gone: lay one, or tie the part along an axis.',
      'Das Maßband, nach dem das Teil dem Körper folgt, ist weg: eines anlegen oder das Teil längs einer Achse binden.',
    ],
  ],
  'size/no-vertex': [
    [
      'The sculpt has no vertex {1}: pick two of its vertices.',
      'Das Modell hat keine Ecke {1}: zwei seiner Ecken wählen.',
    ],
  ],
  'size/out-of-range': [
    [
      'This size would make one unit of the file unthinkably large or small: check the number and its unit.',
      'Dieses Maß machte eine Einheit der Datei undenkbar groß oder klein: die Zahl und ihre Einheit prüfen.',
    ],
  ],
  'size/same-point': [
    [
      'Both picked points are one and the same: pick two that lie apart.',
      'Beide gewählten Punkte sind derselbe: zwei wählen, die auseinander liegen.',
    ],
  ],
  'size/unknown': [
    [
      'The file does not say how large the sculpt is: give its unit or one real measure.',
      'Die Datei sagt nicht, wie groß das Modell ist: die Einheit oder ein wirkliches Maß angeben.',
    ],
  ],
  'body/unusual': [
    [
      '{1}, {2}: {3} mm is less than of most grown people ({4} mm); measure again if that is not so, and look at the unit.',
      '{1}, {2}: {3} mm ist weniger als bei den meisten Erwachsenen ({4} mm); neu messen, wenn das nicht stimmt, und auf die Einheit sehen.',
    ],
    [
      '{1}, {2}: {3} mm is more than of most grown people ({4} mm); measure again if that is not so, and look at the unit.',
      '{1}, {2}: {3} mm ist mehr als bei den meisten Erwachsenen ({4} mm); neu messen, wenn das nicht stimmt, und auf die Einheit sehen.',
    ],
  ],
  'mirror/found': [
    [
      'The sculpt mirrors itself from left to right, {1} % of its surface within {2} mm.',
      'Das Modell spiegelt sich von links nach rechts, {1} % seiner Oberfläche auf {2} mm genau.',
    ],
    [
      'The sculpt mirrors itself across the direction {3}, {1} % of its surface within {2} mm.',
      'Das Modell spiegelt sich quer zur Richtung {3}, {1} % seiner Oberfläche auf {2} mm genau.',
    ],
  ],
  'mirror/poor': [
    [
      'In the plane that was set the sculpt mirrors itself poorly, {1} % of its surface within {2} mm: set another plane, or let it be found.',
      'In der gesetzten Ebene spiegelt sich das Modell schlecht, {1} % seiner Oberfläche auf {2} mm genau: eine andere Ebene setzen oder suchen lassen.',
    ],
  ],
  'simplify/crossing': [
    [
      'Made so simple, the sculpt runs through itself in {1} triangles, where two of its walls lie close together: leave it more triangles, or allow it to move less.',
      'So stark vereinfacht läuft das Modell in {1} Dreiecken durch sich selbst, wo zwei seiner Wände dicht beieinander liegen: mehr Dreiecke lassen oder weniger Abweichung erlauben.',
    ],
  ],
  'simplify/nothing': [
    [
      'The sculpt cannot be made simpler as asked, and is taken as it is.',
      'Das Modell lässt sich nicht wie verlangt vereinfachen und wird genommen, wie es ist.',
    ],
  ],
  'simplify/done': [
    [
      'The sculpt was made simpler for paper, from {1} to {2} triangles: no place of it lies farther than {3} mm from the sculpt (new from old {4} mm, old from new {5} mm).',
      'Das Modell wurde für Papier vereinfacht, von {1} auf {2} Dreiecke: keine Stelle liegt weiter als {3} mm vom Modell (neu von alt {4} mm, alt von neu {5} mm).',
    ],
  ],
  'size/by-body': [
    [
      'Sized by the body: {1} {2} mm and {3} mm of ease make the sculpt {4} mm long.',
      'Nach dem Körper bemessen: {1} {2} mm und {3} mm Zugabe machen das Modell {4} mm lang.',
    ],
    [
      'Sized by the body: {1} {2} mm less {3} mm of ease make the sculpt {4} mm long.',
      'Nach dem Körper bemessen: {1} {2} mm abzüglich {3} mm machen das Modell {4} mm lang.',
    ],
  ],
};
