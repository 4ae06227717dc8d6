import type { Saying, Sentences } from '../saying.ts';

const PROFILE: readonly Saying[] = [
  [
    'A profile needs two corners at least, as 0:20,300:24.',
    'Ein Profil braucht mindestens zwei Ecken, etwa 0:20,300:24.',
  ],
  ['A profile takes at most {1} corners: leave some out.', 'Ein Profil hat höchstens {1} Ecken: einige weglassen.'],
  [
    'Corner {1} of the profile is no length and radius in mm up to {2}.',
    'Ecke {1} des Profils ist keine Länge mit Radius in mm bis {2}.',
  ],
  [
    'Corner {1} of the profile lies at {2} mm, off the core, which is cut to {3} mm: lengths are measured from the core’s start.',
    'Ecke {1} des Profils liegt bei {2} mm, außerhalb des Kerns, der auf {3} mm geschnitten ist: Längen zählen vom Anfang des Kerns.',
  ],
  [
    "Corner {1} of the profile lies at {2} mm, off the core, which is cut to {3} mm: lengths are measured from the core's start.",
    'Ecke {1} des Profils liegt bei {2} mm, außerhalb des Kerns, der auf {3} mm geschnitten ist: Längen zählen vom Anfang des Kerns.',
  ],
  [
    'Corner {1} of the profile lies before the one before it: give them by ascending length.',
    'Ecke {1} des Profils liegt vor der vorigen: nach steigender Länge angeben.',
  ],
  [
    'Corner {1} of the profile is the one before it again: leave it out.',
    'Ecke {1} des Profils wiederholt die vorige: weglassen.',
  ],
  ['Corner {1} of the profile is the one before it again.', 'Ecke {1} des Profils wiederholt die vorige.'],
  [
    'Three corners of the profile lie at {1} mm: a step has two.',
    'Drei Ecken des Profils liegen bei {1} mm: Eine Stufe hat zwei.',
  ],
  [
    'Corners {1} and {2} of the profile are less than {3} mm apart: put them at one length for a step.',
    'Die Ecken {1} und {2} des Profils sind weniger als {3} mm auseinander: für eine Stufe auf dieselbe Länge legen.',
  ],
  ['The profile has no length.', 'Das Profil hat keine Länge.'],
];

const PATH: readonly Saying[] = [
  [
    'The path cannot be read at character {1}: {a} should stand there, but it ends there.',
    'Der Pfad lässt sich ab Zeichen {1} nicht lesen: Dort gehört {a} hin, aber er endet dort.',
  ],
  [
    'The path cannot be read at character {1}: {a} should stand there, not “{2}”.',
    'Der Pfad lässt sich ab Zeichen {1} nicht lesen: Dort gehört {a} hin, nicht „{2}“.',
  ],
  [
    'A path cannot be read at character {1}: {a} should stand there, but it ends there. Save it again as plain SVG.',
    'Ein Pfad lässt sich ab Zeichen {1} nicht lesen: Dort gehört {a} hin, aber er endet dort. Neu als einfaches SVG speichern.',
  ],
  [
    'A path cannot be read at character {1}: {a} should stand there, not “{2}”. Save it again as plain SVG.',
    'Ein Pfad lässt sich ab Zeichen {1} nicht lesen: Dort gehört {a} hin, nicht „{2}“. Neu als einfaches SVG speichern.',
  ],
];

/** What is wrong with what was typed or read, where the text is put together apart from its code. */
export const FAULTS: Sentences = {
  'artwork/path': PATH,
  'artwork/photo-mirrored': [
    [
      'The known places would mirror the picture: name corners clockwise as they are seen, from the upper left one on, and count true places upward.',
      'Die bekannten Stellen würden das Bild spiegeln: Ecken im Uhrzeigersinn nennen, wie sie zu sehen sind, von oben links an, und wahre Stellen nach oben zählen.',
    ],
  ],
  'artwork/picture-broken': [
    [
      'The picture is broken ({a}): save it again from the program it was made in.',
      'Das Bild ist beschädigt ({a}): neu aus dem Programm speichern, in dem es entstand.',
    ],
  ],
  'artwork/picture-kind': [
    [
      'This is {a}, which is not read: save it as PNG or as a plain JPEG.',
      'Das ist {a}, was nicht gelesen wird: als PNG oder einfaches JPEG speichern.',
    ],
    [
      'This is no picture that is read: save it as PNG or JPEG.',
      'Ein solches Bild wird nicht gelesen: als PNG oder JPEG speichern.',
    ],
  ],
  'artwork/picture-scale': [
    [
      'Scaled by the known length of {1} mm over {2} pixels: one pixel is {3} mm.',
      'Maßstab aus der bekannten Länge von {1} mm über {2} Bildpunkte: Ein Bildpunkt ist {3} mm.',
    ],
    [
      'Scaled to a width of {1} mm over all lines: one pixel is {2} mm.',
      'Auf eine Breite von {1} mm über alle Linien gebracht: Ein Bildpunkt ist {2} mm.',
    ],
    [
      'Scaled to a height of {1} mm over all lines: one pixel is {2} mm.',
      'Auf eine Höhe von {1} mm über alle Linien gebracht: Ein Bildpunkt ist {2} mm.',
    ],
    [
      'Scaled by {1} pixels to the inch, as given: one pixel is {2} mm.',
      'Maßstab wie angegeben, {1} Bildpunkte je Zoll: Ein Bildpunkt ist {2} mm.',
    ],
    [
      'Scaled by {1} pixels to the inch, as the file says ({2}), which many programs write without having measured: give a known length to be sure.',
      'Maßstab laut Datei ({2}), {1} Bildpunkte je Zoll, was viele Programme ungemessen hineinschreiben: sicherheitshalber eine bekannte Länge angeben.',
    ],
    ['Scaled by {1} pixels to the inch, as the file says ({2}).', 'Maßstab laut Datei ({2}), {1} Bildpunkte je Zoll.'],
  ],
  'core/choice': [
    [
      'The seam of a layer turns by {1} to {2} degrees from that of the one beneath.',
      'Die Naht einer Lage dreht sich gegen die der Lage darunter um {1} bis {2} Grad.',
    ],
    [
      'The weight {1} of the plan is from 0 to a million.',
      'Das Gewicht {1} des Plans liegt zwischen 0 und einer Million.',
    ],
    [
      'One core takes at most {1} sets of staves and {2} windings.',
      'Ein Kern trägt höchstens {1} Sätze Dauben und {2} Wicklungen.',
    ],
    [
      'A core takes a skin or staves, not both: staves are a face of their own.',
      'Ein Kern trägt eine Haut oder Dauben, nicht beides: Dauben sind selbst die Sichtseite.',
    ],
    ['A skin needs a profile to lie on.', 'Eine Haut braucht ein Profil, auf dem sie liegt.'],
    ['A skin is from {1} to {2} mm thick.', 'Eine Haut ist {1} bis {2} mm dick.'],
    [
      'A skin may stand off smooth stretches by {1} to {2} mm.',
      'Eine Haut darf von glatten Strecken um {1} bis {2} mm abstehen.',
    ],
    [
      'A strip is wound over a stretch of the core, which is cut to {1} mm: say where it begins and ends.',
      'Ein Streifen wird über ein Stück des Kerns gewickelt, der auf {1} mm geschnitten ist: angeben, wo er beginnt und endet.',
    ],
    ['A strip is from {1} to {2} mm wide.', 'Ein Streifen ist {1} bis {2} mm breit.'],
    ['A strip is up to {1} mm thick.', 'Ein Streifen ist bis zu {1} mm dick.'],
    ['The neutral fraction of a strip is from 0 to 1.', 'Der neutrale Anteil eines Streifens liegt zwischen 0 und 1.'],
    ['A winding has 1 to 12 starts.', 'Eine Wicklung hat 1 bis 12 Anfänge.'],
    [
      'The pitch of a winding is over 0 mm: so far it gets on with each turn.',
      'Die Steigung einer Wicklung ist größer als 0 mm: So weit kommt sie mit jeder Windung voran.',
    ],
    [
      'The overlap must be less than the width of the strip, or the winding never gets on.',
      'Die Überlappung muss kleiner sein als die Breite des Streifens, sonst kommt die Wicklung nie voran.',
    ],
  ],
  'core/profile': PROFILE,
  'core/profile-text': [
    [
      'A profile is length:radius in mm with commas between, as 0:20,300:20~,350:32; ~ goes on smoothly.',
      'Ein Profil ist Länge:Radius in mm, durch Kommas getrennt, etwa 0:20,300:20~,350:32; ~ geht glatt weiter.',
    ],
  ],
  'core/sheets': [
    [
      'Say which sheets are in hand: thicknesses in mm, as 10,6,2.',
      'Angeben, welche Platten vorhanden sind: Dicken in mm, etwa 10,6,2.',
    ],
    ['Sheets are from {1} to {2} mm thick, as 10,6,2.', 'Platten sind {1} bis {2} mm dick, etwa 10,6,2.'],
    ['The neutral fraction of a sheet is from 0 to 1.', 'Der neutrale Anteil einer Platte liegt zwischen 0 und 1.'],
  ],
  'insert/form': [
    [
      'The {1} needs {a}: give it, or a size that is listed.',
      '{1}: {a} fehlt. Angeben oder eine Größe aus der Liste nehmen.',
    ],
    ['The outline of the {1} {a}: change it.', 'Umriss von {1}: {a}. Ändern.'],
  ],
  'json/no-place': [['there is no place {1}', 'die Stelle {1} gibt es nicht']],
  'neutral/reading': [
    ['Bend {1} needs a diameter and an arc.', 'Biegung {1} braucht Durchmesser und Bogen.'],
    [
      'Bend {1} says that {2} mm of a tube of {3} mm were covered, but it is only {4} mm round: take a thicker tube or a shorter strip.',
      'Biegung {1}: Von einem Rohr von {3} mm sollen {2} mm bedeckt sein, sein Umfang ist aber nur {4} mm: ein dickeres Rohr oder einen kürzeren Streifen nehmen.',
    ],
    [
      'Bend {1} covers {2} mm, more than the {3} mm of the flat strip: measure under the foam, on the tube.',
      'Biegung {1} bedeckt {2} mm, mehr als die {3} mm des flachen Streifens: unter dem Schaumstoff messen, am Rohr.',
    ],
  ],
  'nest/instance': [
    [
      'is no JSON: write a task with "strip_height" and "items".',
      'ist kein JSON: eine Aufgabe mit "strip_height" und "items" schreiben.',
    ],
    [
      'holds no object: write a task with "strip_height" and "items".',
      'enthält kein Objekt: eine Aufgabe mit "strip_height" und "items" schreiben.',
    ],
    ['needs "strip_height", a number over 0.', 'braucht "strip_height", eine Zahl größer als 0.'],
    ['needs "items", a list of at least one piece.', 'braucht "items", eine Liste mit mindestens einem Stück.'],
    ['asks for {1} pieces; {2} are the most.', 'verlangt {1} Stücke; höchstens {2} gehen.'],
    [
      'piece {1} is higher than the strip however it may be turned: part it.',
      'Stück {1} ist höher als der Streifen, wie es auch gedreht wird: teilen.',
    ],
    [
      'piece {1} or a hole in it is too small or too thin beside so large a strip: leave it out.',
      'Stück {1} oder ein Loch darin ist neben einem so großen Streifen zu klein oder zu dünn: weglassen.',
    ],
    ['item {1} is no object.', 'Eintrag {1} ist kein Objekt.'],
    ['item {1} needs a whole number as "id".', 'Eintrag {1} braucht eine ganze Zahl als "id".'],
    ['item {1} needs "demand", a whole number from 1 on.', 'Eintrag {1} braucht "demand", eine ganze Zahl ab 1.'],
    [
      'item {1} needs "allowed_orientations", a list of degrees.',
      'Eintrag {1} braucht "allowed_orientations", eine Liste von Gradzahlen.',
    ],
    [
      'item {1} needs "shape" with "data", a list of at least three corners [x, y].',
      'Eintrag {1} braucht "shape" mit "data", einer Liste von mindestens drei Ecken [x, y].',
    ],
    ['item {1} has more than {2} corners: simplify it.', 'Eintrag {1} hat mehr als {2} Ecken: vereinfachen.'],
    ['item {1} has no area.', 'Eintrag {1} hat keine Fläche.'],
    [
      'item {1} crosses itself: draw its outline without a loop.',
      'Eintrag {1} schneidet sich selbst: den Umriss ohne Schlinge zeichnen.',
    ],
    [
      'item {1} has a hole that reaches out of its outline: keep holes inside.',
      'Eintrag {1} hat ein Loch, das über den Umriss reicht: Löcher innen lassen.',
    ],
  ],
  'paper/read-back': [
    [
      'The finished PDF was read back and is not what it should be: {a} No PDF was made. This is a fault of the program: keep the report of it, and another paper or another layout may work meanwhile.',
      'Das fertige PDF wurde zurückgelesen und ist nicht, was es sein soll: {a} Es wurde kein PDF gemacht. Das ist ein Fehler des Programms: den Bericht dazu aufheben; ein anderes Papier oder eine andere Anordnung geht inzwischen vielleicht.',
    ],
  ],
  'path/unreadable': PATH,
  'png/too-large': [
    [
      'At {1} dpi {2} would be {3} × {4} dots, which few programs open: take {5} dpi or less.',
      'Mit {1} dpi hätte {2} {3} × {4} Punkte, was wenige Programme öffnen: höchstens {5} dpi nehmen.',
    ],
  ],
  'shape/unknown': [
    [
      'There is no shape called “{1}”: shape --list names them all.',
      'Eine Form namens „{1}“ gibt es nicht: shape --list nennt alle.',
    ],
    ['There is no shape called “{1}”: there is {2}.', 'Eine Form namens „{1}“ gibt es nicht: Es gibt {2}.'],
  ],
  'shop/order-shut': [
    [
      '{a} comes too late in the order of gluing you chose; no hand reaches it from within when its turn comes: glue it while more is open. Until then it is told earlier than you put it.',
      '{a} kommt in der gewählten Klebereihenfolge zu spät; wenn sie an der Reihe ist, kommt von innen keine Hand mehr heran: kleben, solange mehr offen ist. Bis dahin steht sie früher als gewünscht.',
    ],
    [
      '{a} comes too late in the order of gluing you chose; no hand reaches it from within once {b} is shut: glue it before that. Until then it is told earlier than you put it.',
      '{a} kommt in der gewählten Klebereihenfolge zu spät; ist {b} zu, kommt von innen keine Hand mehr heran: vorher kleben. Bis dahin steht sie früher als gewünscht.',
    ],
  ],
  'travel/wish': [
    [
      'The prop and the bag need a length of more than 0 and at most 100 m: give both.',
      'Requisit und Tasche brauchen eine Länge von mehr als 0 und höchstens 100 m: beide angeben.',
    ],
    [
      'More than 200 stretches are to stay whole: join those that lie together.',
      'Mehr als 200 Strecken sollen ganz bleiben: die zusammenliegenden verbinden.',
    ],
    [
      'A stretch that is to stay whole lacks an end, or ends before it begins: give it anew.',
      'Einer Strecke, die ganz bleiben soll, fehlt ein Ende, oder sie endet vor ihrem Anfang: neu angeben.',
    ],
    [
      'The hand holds the prop beyond its ends: give a place on it.',
      'Die Hand hält das Requisit jenseits seiner Enden: eine Stelle darauf angeben.',
    ],
    [
      'A peg needs a diameter and a length of more than 0: give both.',
      'Ein Zapfen braucht Durchmesser und Länge größer als 0: beide angeben.',
    ],
    ['Straps are counted from 1 to 100.', 'Riemen zählen von 1 bis 100.'],
    [
      'Magnets need the pull of one pair, N, and the width of the joint: give both.',
      'Magnete brauchen die Zugkraft eines Paars in N und die Breite der Verbindung: beide angeben.',
    ],
    [
      'Magnets need the mass of the prop, kg: weigh it or guess high.',
      'Magnete brauchen die Masse des Requisits in kg: wiegen oder hoch schätzen.',
    ],
  ],
  'turned/profile': [
    [
      'A turned profile needs two corners at least, as 0:30,120:20.',
      'Ein gedrehtes Profil braucht mindestens zwei Ecken, etwa 0:30,120:20.',
    ],
    [
      'Corner {1} of the profile is no length and radius in mm.',
      'Ecke {1} des Profils ist keine Länge mit Radius in mm.',
    ],
    [
      'The radius is 0 at corner {1}, in the middle of the profile: make the two parts one by one.',
      'Der Radius ist an Ecke {1} mitten im Profil 0: die beiden Teile einzeln anlegen.',
    ],
    ...PROFILE,
  ],
  'xml/unreadable': [
    [
      'The file is not whole XML, at character {1}: {a}. Save it again as plain SVG.',
      'Die Datei ist ab Zeichen {1} kein vollständiges XML: {a}. Neu als einfaches SVG speichern.',
    ],
  ],
};

/** Words within them. */
export const FAULT_PHRASES: readonly Saying[] = [
  ['it cannot be read ({1}).', 'Es ist nicht lesbar ({1}).'],
  ['it has {1} pages and should have {2}.', 'Es hat {1} Seiten und soll {2} haben.'],
  ['page {1} is {2} and should be {3}.', 'Seite {1} ist {2} und soll {3} sein.'],
  ['it does not ask printers for its true size.', 'Es verlangt vom Drucker nicht seine wahre Größe.'],
  ['the square to measure is not true: {1}.', 'Das Maßquadrat stimmt nicht: {1}.'],
  ['{a} is on none of its pages.', '{a} steht auf keiner Seite.'],
  ['{a} has more than one place on its pages.', '{a} steht an mehr als einer Stelle.'],
  [
    'the line to cut of {a} is not the piece’s own ({1}; it should be {2}).',
    'Die Schnittlinie gehört nicht zum Stück, {a} ({1}; sie soll {2} sein).',
  ],
  [
    'it shows lines to cut that belong to no piece ({1}).',
    'Es zeigt Schnittlinien, die zu keinem Stück gehören ({1}).',
  ],
  ['a piece', 'ein Stück'],
  ['a command', 'ein Befehl'],
  ['a move first', 'zuerst ein Sprung'],
  ['0 or 1', '0 oder 1'],
  ['a number of use', 'eine brauchbare Zahl'],
  ['text stands outside of all elements', 'Text steht außerhalb aller Elemente'],
  ['a wrong end', 'ein falsches Ende'],
  ['an end without >', 'ein Ende ohne >'],
  ['< without a name', '< ohne Namen'],
  ['a second outermost element', 'ein zweites äußerstes Element'],
  ['{1} given twice', '{1} zweimal angegeben'],
  ['an element that does not end', 'ein Element, das nicht endet'],
  ['the end of {1} is missing', 'das Ende von {1} fehlt'],
  ['nothing is in it', 'nichts ist darin'],
  ['{1} without its end', '{1} ohne Ende'],
  ['its parts do not follow each other', 'seine Teile folgen nicht aufeinander'],
  ['a part has no length', 'ein Teil hat keine Länge'],
  ['its size cannot be read', 'seine Größe ist nicht lesbar'],
  ['a row is packed in no known way', 'eine Zeile ist unbekannt gepackt'],
  ['a colour is missing from its palette', 'in der Palette fehlt eine Farbe'],
  ['the check sum of {1} is wrong', 'die Prüfsumme von {1} stimmt nicht'],
  ['it does not begin with its size', 'es beginnt nicht mit seiner Größe'],
  ['it has no palette', 'es hat keine Palette'],
  ['it has no size', 'es hat keine Größe'],
  ['its colours are of no known kind', 'seine Farben sind von unbekannter Art'],
  ['its pixels cannot be unpacked', 'seine Bildpunkte lassen sich nicht entpacken'],
  ['its size is told twice', 'seine Größe steht zweimal darin'],
  ['a JPEG in arithmetic code', 'ein JPEG mit arithmetischer Kodierung'],
  ['a lossless JPEG', 'ein verlustfreies JPEG'],
  ['a JPEG with {1} bits', 'ein JPEG mit {1} Bit'],
  ['a JPEG of several layers', 'ein JPEG aus mehreren Ebenen'],
  ['an animated picture', 'ein bewegtes Bild'],
  ['a PNG with a part called {1}', 'ein PNG mit einem Teil namens {1}'],
  ['a {1} file', 'eine {1}-Datei'],
  ['the outline of its window', 'Umriss des Fensters'],
  ['a length', 'Länge'],
  ['an outline', 'Umriss'],
  ['the hole in its panel', 'Loch in der Blende'],
  ['a diameter', 'Durchmesser'],
  ['the width of its webbing', 'Breite des Gurtbands'],
  ['needs a diameter of more than 0 and at most 5 m', 'braucht einen Durchmesser von mehr als 0 und höchstens 5 m'],
  [
    'needs a length and a width of more than 0 and at most 5 m',
    'braucht Länge und Breite von mehr als 0 und höchstens 5 m',
  ],
  ['has corners rounded by more than half of its width', 'Ecken stärker gerundet als die halbe Breite'],
  ['needs 3 to {1} corners', 'braucht 3 bis {1} Ecken'],
  ['has a corner that is no place', 'hat eine Ecke ohne Ort'],
  ['crosses itself or runs clockwise', 'schneidet sich selbst oder läuft im Uhrzeigersinn'],
  ['Seam {1}', 'Naht {1}'],
  ['seam {1}', 'Naht {1}'],
  ['The seam of {1} and {2}', 'Die Naht von {1} und {2}'],
  ['the seam of {1} and {2}', 'die Naht von {1} und {2}'],
];
