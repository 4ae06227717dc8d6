import { LEANS, OPEN_EDGES } from './paper-phrases.ts';
import type { Saying } from './saying.ts';

/** What is cut by hand: an edge, and how it leans. */
const byHand = ([english, german]: Saying): readonly Saying[] => [
  [`{9} ${english}`, `{9} ${german}`],
  [`open edge ${english}`, `offene Kante ${german}`],
  [`{9} ${english}, beyond blade and table`, `{9} ${german}, weiter, als Messer und Tisch reichen`],
  [`open edge ${english}, beyond blade and table`, `offene Kante ${german}, weiter, als Messer und Tisch reichen`],
];

/** Pages of templates: the page that is measured, the map, the foot and joints of tiles, the test strip. */
export const ON_PAGES: readonly Saying[] = [
  // The page that is printed first.
  [
    'Print this page first, at 100 %: “actual size”, nothing fitted or shrunk to the page.',
    'Diese Seite zuerst drucken, mit 100 %: „tatsächliche Größe“, nichts an die Seite angepasst oder verkleinert.',
  ],
  ['across and up', 'quer und hoch'],
  ['across', 'quer'],
  ['For {N} only', 'Nur für {N}'],
  ['for {N}', 'für {N}'],
  [
    'These pages are drawn {a}, {b} so that this printer prints them true. On another printer they come out wrong.',
    'Diese Seiten sind {a}, {b} gezeichnet, damit dieser Drucker sie maßhaltig druckt. Aus einem anderen Drucker kommen sie falsch.',
  ],
  [
    'These pages are drawn {a}, {b}, {c} so that this printer prints them true. On another printer they come out wrong.',
    'Diese Seiten sind {a}, {b}, {c} gezeichnet, damit dieser Drucker sie maßhaltig druckt. Aus einem anderen Drucker kommen sie falsch.',
  ],
  ['Measure both sides', 'Beide Seiten messen'],
  [
    'Both sides of the square must read {1} mm. The rules beside it must read {2} in, across and up.',
    'Beide Seiten des Quadrats müssen {1} mm messen. Die Maßstäbe daneben müssen quer und hoch {2} in messen.',
  ],
  [
    'Measure corner to corner too: both diagonals must read {1} mm, else the paper ran in askew.',
    'Auch von Ecke zu Ecke messen: Beide Diagonalen müssen {1} mm messen, sonst ist das Papier schief eingezogen.',
  ],
  ['If a side is short or long', 'Wenn ein Maß abweicht'],
  [
    'Do not cut foam from these pages. Look in the print window for “fit”, “shrink” or “scale” and set 100 %, check that it prints on {N}, and print this page again. A desktop viewer is surer than a browser. If it is still off, type what you measured beside “printer” in the program: it draws the pages so that yours prints them true.',
    'Nach diesen Seiten keinen Schaumstoff schneiden. Im Druckfenster nach „anpassen“, „verkleinern“ oder „Skalierung“ suchen und 100 % einstellen, prüfen, dass auf {N} gedruckt wird, und diese Seite noch einmal drucken. Ein PDF-Programm ist sicherer als ein Browser. Stimmt es noch nicht, im Programm neben „Drucker“ eingeben, was gemessen wurde: Die Seiten werden dann so gezeichnet, dass dieser Drucker sie maßhaltig druckt.',
  ],
  [
    'Every page of templates carries rules along its lower and its left edge: any of them can be checked by itself.',
    'Jede Seite mit Schablonen trägt Maßstäbe an der unteren und der linken Kante: Jede kann für sich geprüft werden.',
  ],
  ['Joining', 'Zusammensetzen'],
  [
    'Cut each page along its frame and tape the edges together so that crosses and ticks meet.',
    'Jede Seite am Rahmen entlang schneiden und die Kanten so zusammenkleben, dass sich Kreuze und Striche treffen.',
  ],
  [
    'Begin with A1, lower left. Cut the next page along its left and lower lines where they say so, lay it on the {1} mm strip of its neighbour so that crosses and ticks meet, and glue.',
    'Mit A1 unten links beginnen. Die nächste Seite an der linken und der unteren Linie schneiden, wo es dort steht, so auf den Streifen von {1} mm der Nachbarseite legen, dass sich Kreuze und Striche treffen, und kleben.',
  ],
  ['Take care', 'Vorsicht'],

  // Foot, frame and joints.
  ['page {1} of {2}', 'Seite {1} von {2}'],
  ['revision {1}', 'Stand {1}'],
  ['scale', 'Maß'],
  ['scale {1}', 'Maß {1}'],
  ['map', 'Übersicht'],
  ['map {1}', 'Übersicht {1}'],
  ['strip', 'Streifen'],
  ['strip {1}', 'Streifen {1}'],
  ['{1} mm both ways', '{1} mm quer und hoch'],
  ['{1} mm, {2} upright', '{1} mm, hoch {2}'],
  ['Piece', 'Stück'],
  ['Pieces', 'Stücke'],
  ['{1} rev {2}', '{1} Stand {2}'],
  ['{1} turned rev {2}', '{1} gewendet Stand {2}'],
  ['and {1} more, see the map', 'und {1} weitere, siehe Übersicht'],
  ['left', 'links'],
  ['right', 'rechts'],
  ['above', 'oben'],
  ['below', 'unten'],
  ['meets {1}', 'trifft {1}'],
  ['cut here, lay on {1}', 'hier schneiden, auf {1} legen'],
  ['glue {1} here', '{1} hier ankleben'],

  // The map.
  ['{1} templates on {2} pages', '{1} Schablonen auf {2} Seiten'],
  ['{1} templates on 1 page', '{1} Schablonen auf 1 Seite'],
  ['1 template on {1} pages', '1 Schablone auf {1} Seiten'],
  ['1 template on 1 page', '1 Schablone auf 1 Seite'],
  ['{1} templates for {2} pieces on {3} pages', '{1} Schablonen für {2} Stücke auf {3} Seiten'],
  ['{1} templates for {2} pieces on 1 page', '{1} Schablonen für {2} Stücke auf 1 Seite'],
  ['1 template for {1} pieces on {2} pages', '1 Schablone für {1} Stücke auf {2} Seiten'],
  ['1 template for {1} pieces on 1 page', '1 Schablone für {1} Stücke auf 1 Seite'],
  ['{N} portrait', '{N} hoch'],
  ['{N} landscape', '{N} quer'],
  ['1 blank tile left out', '1 leeres Feld weggelassen'],
  ['{1} blank tiles left out', '{1} leere Felder weggelassen'],
  ['1 strip without paper, cut by the ruler', '1 Streifen ohne Papier, mit dem Lineal geschnitten'],
  ['{1} strips without paper, cut by the ruler', '{1} Streifen ohne Papier, mit dem Lineal geschnitten'],
  ['{1} pages', '{1} Seiten'],
  ['by the ruler', 'mit Lineal'],
  ['no.', 'Nr.'],
  ['piece', 'Stück'],
  ['pieces', 'Stücke'],
  ['cut', 'Zahl'],
  ['foam', 'Dicke'],
  ['traced on', 'angezeichnet'],
  ['revision', 'Stand'],
  ['pages', 'Seiten'],
  ['face', 'Sichtseite'],
  ['back', 'Rückseite'],
  ['{1} to {2}, {3} pages', '{1} bis {2}, {3} Seiten'],
  ['{1} turned over', '{1} gewendet'],
  ['Lines', 'Linien'],
  ['cut here, the blade on the middle of the line', 'hier schneiden, die Klinge auf der Mitte der Linie'],
  [
    'where the leaning cut comes out on the other side of the foam: in under, it lies inside the line you cut; out under, outside it',
    'wo der schräge Schnitt auf der anderen Seite des Schaumstoffs herauskommt: nach innen liegt sie innerhalb der Schnittlinie, nach außen außerhalb',
  ],
  [
    'folds away from you: the printed side is outside the bend',
    'Bergfalz, knickt nach hinten: Die bedruckte Seite liegt außen am Knick',
  ],
  [
    'folds towards you: the printed side is inside the bend',
    'Talfalz, knickt nach vorn: Die bedruckte Seite liegt innen im Knick',
  ],
  [
    'a groove’s edges: cut a V between the two lines along the fold, as deep as the template says',
    'Ränder einer Nut: zwischen den zwei Linien am Falz entlang ein V schneiden, so tief, wie es auf der Schablone steht',
  ],
  [
    'where a groove comes out that is cut from the other side: carry its two lines over to there',
    'wo eine Nut herauskommt, die von der anderen Seite geschnitten wird: ihre zwei Linien dorthin übertragen',
  ],
  [
    'middle of a kerf: saw along it, as wide and as deep as the template says',
    'Mitte eines Schlitzes: daran entlang sägen, so breit und so tief, wie es auf der Schablone steht',
  ],
  [
    'middle of a kerf that is sawn from the other side: carry it over to there',
    'Mitte eines Schlitzes, der von der anderen Seite gesägt wird: dorthin übertragen',
  ],
  [
    'score here, a slit in the face as deep as the template says; it opens when it is warmed',
    'hier ritzen, ein Schnitt in die Sichtseite, so tief, wie es auf der Schablone steht; er öffnet sich beim Erwärmen',
  ],
  [
    'a raised piece is glued on inside this line, on the face',
    'innerhalb dieser Linie wird ein Stück auf die Sichtseite aufgesetzt',
  ],
  [
    'a line of the artwork: burn or carve it into the face, do not cut through',
    'eine Linie der Vorlage: in die Sichtseite brennen oder ritzen, nicht durchschneiden',
  ],
  [
    'a round hole in its true size: punch it before you cut the slit that ends there, which then tears no farther',
    'ein Rundloch in wahrer Größe: lochen, bevor der Schlitz geschnitten wird, der dort endet; dann reißt er nicht weiter',
  ],
  [
    'from here to the cut line the foam laps its neighbour, over it or under it as its words say',
    'von hier bis zur Schnittlinie überlappt der Schaumstoff seinen Nachbarn, darüber oder darunter, wie es dabei steht',
  ],
  [
    'match mark: meets the mark of the same letter and number',
    'Passmarke: trifft die Marke mit demselben Buchstaben und derselben Zahl',
  ],
  ['Printed side', 'Bedruckte Seite'],
  [
    'Lay each template printed side up on the face of the foam, the side that will be seen.',
    'Jede Schablone mit der bedruckten Seite nach oben auf die Sichtseite des Schaumstoffs legen, die später zu sehen ist.',
  ],
  [
    'Lay each template printed side up on the back of the foam, the inside of the prop; these templates are printed reversed, and so come out right.',
    'Jede Schablone mit der bedruckten Seite nach oben auf die Rückseite des Schaumstoffs legen, die Innenseite des Requisits; diese Schablonen sind spiegelverkehrt gedruckt und kommen so richtig heraus.',
  ],
  [
    'Printed side up: a piece traced on its face lies on the face of the foam, the side that will be seen; one traced on its back lies on the back of the foam, the inside of the prop; these templates are printed reversed, and so come out right.',
    'Bedruckte Seite nach oben: Wird ein Stück auf der Sichtseite angezeichnet, liegt die Schablone auf der Sichtseite des Schaumstoffs, die später zu sehen ist; wird es auf der Rückseite angezeichnet, auf der Rückseite, der Innenseite des Requisits; diese Schablonen sind spiegelverkehrt gedruckt und kommen so richtig heraus.',
  ],
  ['Turned over', 'Gewendet'],
  [
    'A template with two numbers is cut twice: as it is printed for the first piece, and with the paper turned over, never the foam, for the one that mirrors it. Prick marks and folds through before you turn it.',
    'Eine Schablone mit zwei Nummern wird zweimal geschnitten: wie gedruckt für das erste Stück und mit gewendetem Papier, nie gewendetem Schaumstoff, für das Spiegelbild. Marken und Falze vor dem Wenden durchstechen.',
  ],
  [
    'Of two readings the second is for the piece cut turned over: “A → 3 · turned: C → 4”, mark “A1/C1”. All else holds for both as the paper lies on the foam.',
    'Von zwei Angaben gilt die zweite für das gewendet geschnittene Stück: „A → 3 · gewendet: C → 4“, Marke „A1/C1“. Alles andere gilt für beide, wie das Papier auf dem Schaumstoff liegt.',
  ],
  ['Cut by the ruler', 'Mit dem Lineal schneiden'],
  [
    'Straight strips of one width have no template: rule them on the foam, on the side that will be seen. The drawings show how they lie and are not to scale; left, right, lower and upper are as drawn.',
    'Gerade Streifen von einer Breite haben keine Schablone: auf dem Schaumstoff anreißen, auf der Sichtseite. Die Zeichnungen zeigen, wie sie liegen, und sind nicht maßstäblich; links, rechts, unten und oben sind wie gezeichnet.',
  ],
  ['Cut {1} from {2} mm foam, revision {3}: {a}.', '{1} × aus Schaumstoff von {2} mm schneiden, Stand {3}: {a}.'],
  ['Leans, seen from the face: {a}.', 'Neigung, von der Sichtseite gesehen: {a}.'],
  ['Marks, from the left end of its lower side: {a}.', 'Marken, vom linken Ende der unteren Seite: {a}.'],
  ['Seams beyond the blade', 'Nähte, zu scharf für die Klinge'],
  [
    'Seam {1}: a strip of {2} mm foam, {3} mm wide on the face and {4} mm on the back, {5} mm long, long edges at {6}°.',
    'Naht {1}: ein Streifen aus Schaumstoff von {2} mm, {3} mm breit auf der Sichtseite und {4} mm auf der Rückseite, {5} mm lang, lange Kanten mit {6}°.',
  ],
  [
    'Seam {1}: {7} strips of {2} mm foam, {3} mm wide on the face and {4} mm on the back, {5} mm long, long edges at {6}°.',
    'Naht {1}: {7} Streifen aus Schaumstoff von {2} mm, {3} mm breit auf der Sichtseite und {4} mm auf der Rückseite, {5} mm lang, lange Kanten mit {6}°.',
  ],
  [
    'Seam {1}: fill the gap, {2} mm wide at the {a}, {3} mm long, {4} mm deep, at most {5} cm³ of filling.',
    'Naht {1}: den Spalt füllen, {2} mm breit auf der {a}, {3} mm lang, {4} mm tief, höchstens {5} cm³ Füllung.',
  ],
  [
    'Seam {1}: a thin trim strip {2} mm wide over the gap, {3} mm wide at the {a}, {4} mm long.',
    'Naht {1}: eine dünne Zierleiste von {2} mm Breite über den Spalt, {3} mm breit auf der {a}, {4} mm lang.',
  ],
  ['The saw', 'Die Säge'],
  ['set to', 'Einstellung'],
  ['edges, by piece number and letter', 'Kanten, nach Stücknummer und Buchstabe'],
  ['still', 'weiter'],
  ['by hand', 'von Hand'],
  [
    'Set blade or table once and cut every edge beside it: it serves them all within a degree. A template’s own figure may differ by as much.',
    'Klinge oder Tisch einmal einstellen und alle Kanten daneben schneiden: Die Einstellung passt für alle auf ein Grad genau. Die Angabe auf der Schablone kann um so viel abweichen.',
  ],
  ...LEANS,
  ...OPEN_EDGES,
  ...LEANS.flatMap(byHand),

  // Bookmarks and titles of files.
  ['Scale square', 'Maßquadrat'],
  ['Map', 'Übersicht'],
  ['Build sheet', 'Bauplan'],
  ['Test strip', 'Teststreifen'],

  // The test strip.
  ['Test strip: {N}', 'Teststreifen: {N}'],
  [
    'Where in its thickness a foam keeps its length (k) decides how long a bent piece must be cut. Print at 100 %, trace the strip, cut it square and measure its length and thickness.',
    'In welcher Tiefe ein Schaumstoff seine Länge behält (k), bestimmt, wie lang ein gebogenes Stück geschnitten wird. Mit 100 % drucken, den Streifen anzeichnen, gerade schneiden, Länge und Dicke messen.',
  ],
  ['Bend it', 'Biegen'],
  [
    '1. Take three or more round things of unlike size, each longer round than the strip or nearly so: pipes of 50, 75 and 110 mm, tins of 73 and 99 mm, a bottle. Measure across each with a calliper.',
    '1. Drei oder mehr runde Dinge verschiedener Größe nehmen, deren Umfang etwa so lang ist wie der Streifen oder länger: Rohre von 50, 75 und 110 mm, Dosen von 73 und 99 mm, eine Flasche. Jeden Durchmesser mit dem Messschieber messen.',
  ],
  [
    '2. Lay the strip round it without pulling, as cold or warm as you will work, and tape it.',
    '2. Den Streifen ohne Zug darumlegen, so kalt oder warm wie bei der Arbeit, und mit Klebeband halten.',
  ],
  [
    '3. Mark both ends of the strip on the round thing, take the strip off, and measure along the round thing from mark to mark, where the foam lay.',
    '3. Beide Enden des Streifens darauf anzeichnen, den Streifen abnehmen und am runden Ding entlang von Marke zu Marke messen, wo der Schaumstoff lag.',
  ],
  [
    '4. Type the figures beside the foam: k comes with how sure it is.',
    '4. Die Werte neben dem Schaumstoff eingeben: k kommt mit seiner Unsicherheit.',
  ],
  ['Measured', 'Gemessen'],
  ['length of strip', 'Streifenlänge'],
  ['its thickness', 'seine Dicke'],
  ['mark to mark', 'Marke zu Marke'],

  // The mock-up.
  ['The printed side is the outside.', 'Die bedruckte Seite ist außen.'],
  [
    'Paper mock-up, {1}: every length is a {a} of the prop’s. Do not cut foam from it, not even enlarged: foam is thicker and its edges lean.',
    'Probemodell aus Papier, {1}: Jede Länge ist {a} der Länge am Requisit. Danach keinen Schaumstoff schneiden, auch nicht vergrößert: Schaumstoff ist dicker, und seine Kanten neigen sich.',
  ],
  [
    'Print on card {1} mm thick, or paste paper on it. Cut on the line with the blade upright, score fold lines and bend them, roll the rest over a table’s edge. Lay two edges of one letter side by side so that they touch on the inside, and tape them on the outside.',
    'Auf Karton von {1} mm drucken oder Papier daraufkleben. Auf der Linie mit gerader Klinge schneiden, Falzlinien ritzen und knicken, den Rest über eine Tischkante rollen. Zwei Kanten mit gleichem Buchstaben so nebeneinanderlegen, dass sie sich innen berühren, und außen mit Klebeband verbinden.',
  ],
];
