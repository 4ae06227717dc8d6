import type { Sentences } from '../saying.ts';

/** What is said of drawings and pictures that are cut, engraved or laid on. */
export const ARTWORK: Sentences = {
  'artwork/along-none': [
    [
      'The drawing to go along holds no line: draw one as a path.',
      'Die Zeichnung, an der es entlanggehen soll, enthält keine Linie: eine als Pfad zeichnen.',
    ],
  ],
  'artwork/along-short': [
    [
      'The line is {1} mm long, and nothing of it is left between what is kept free at its ends: keep less free, or draw it longer.',
      'Die Linie ist {1} mm lang, zwischen den freien Enden bleibt nichts: weniger frei lassen oder länger zeichnen.',
    ],
  ],
  'artwork/copies-touch': [
    [
      'Copies are {1} mm wider than their spacing of {2} mm and may lie over each other: take fewer, or make the artwork smaller.',
      'Kopien sind {1} mm breiter als ihr Abstand von {2} mm und liegen vielleicht übereinander: weniger nehmen oder die Zeichnung kleiner machen.',
    ],
  ],
  'artwork/cycle': [
    [
      '{1} is a copy that holds itself: put the shape in its place.',
      '{1} ist eine Kopie, die sich selbst enthält: die Form an ihre Stelle setzen.',
    ],
  ],
  'artwork/engraved-outside': [
    [
      '{1} runs off the piece it lies on for {2} mm, which is not engraved: shorten it in the drawing, or close it if it is to be cut out.',
      '{1} läuft {2} mm über das Stück hinaus, die nicht graviert werden: in der Zeichnung kürzen oder schließen, wenn es ausgeschnitten werden soll.',
    ],
    [
      '{1} is an open line that lies on no piece: it is left out.',
      '{1} ist eine offene Linie, die auf keinem Stück liegt: sie ist weggelassen.',
    ],
    ['Close it if it is to be cut out.', 'Schließen, wenn sie ausgeschnitten werden soll.'],
  ],
  'artwork/fitted': [
    [
      'A spacing of {1} mm was fitted to {2} copies: {3} mm each.',
      'Ein Abstand von {1} mm wurde auf {2} Kopien verteilt: je {3} mm.',
    ],
  ],
  'artwork/joined': [
    [
      'Ends of {1} were joined over a gap of {2} mm at x {3}, y {4} mm.',
      'Enden von {1} wurden über eine Lücke von {2} mm bei x {3}, y {4} mm verbunden.',
    ],
    [
      '{1} and {5} were joined over a gap of {2} mm at x {3}, y {4} mm.',
      '{1} und {5} wurden über eine Lücke von {2} mm bei x {3}, y {4} mm verbunden.',
    ],
  ],
  'artwork/known': [
    [
      'Nothing in the drawing is called {1}: name two of its shapes or groups.',
      'Nichts in der Zeichnung heißt {1}: zwei ihrer Formen oder Gruppen nennen.',
    ],
    [
      'The length that is known is nought in the drawing: name two places that are apart.',
      'Die bekannte Länge ist in der Zeichnung null: zwei Stellen nennen, die auseinander liegen.',
    ],
    [
      'The length that is known is nought in the picture: name two places that are apart.',
      'Die bekannte Länge ist im Bild null: zwei Stellen nennen, die auseinander liegen.',
    ],
    [
      'The artwork would be over 100 m large: check the length that is known.',
      'Die Zeichnung wäre größer als 100 m: die bekannte Länge prüfen.',
    ],
    [
      'The artwork would be over 100 m large: check the known places.',
      'Die Zeichnung wäre größer als 100 m: die bekannten Stellen prüfen.',
    ],
  ],
  'artwork/no-area': [
    [
      'Nothing in the drawing bounds an area to cut out: close its lines, or fill them.',
      'Nichts in der Zeichnung umschließt eine Fläche zum Ausschneiden: ihre Linien schließen oder füllen.',
    ],
  ],
  'artwork/no-lines': [
    [
      'The drawing has no lines, only writing: turn text into paths first.',
      'Die Zeichnung hat keine Linien, nur Schrift: Text zuerst in Pfade wandeln.',
    ],
    [
      'The drawing has no lines: draw outlines as paths and save it again.',
      'Die Zeichnung hat keine Linien: Umrisse als Pfade zeichnen und neu speichern.',
    ],
  ],
  'artwork/no-unit': [
    [
      'The file names no unit of length, so its numbers are taken as px, 96 to the inch: give the true width to be sure.',
      'Die Datei nennt keine Längeneinheit, die Zahlen gelten als px, 96 auf den Zoll: sicherheitshalber die wahre Breite angeben.',
    ],
  ],
  'artwork/numbers': [
    [
      '{1} is over 100 m away or broken: save the drawing with the right unit.',
      '{1} ist über 100 m entfernt oder kaputt: die Zeichnung mit der richtigen Einheit speichern.',
    ],
  ],
  'artwork/offset-nothing': [
    [
      'Nothing of the artwork is left {1} mm inside its outlines: take a smaller distance, or make the artwork larger.',
      'Von der Zeichnung bleibt {1} mm innerhalb ihrer Umrisse nichts: einen kleineren Abstand nehmen oder sie größer machen.',
    ],
  ],
  'artwork/open': [
    [
      '{1} is open by {2} mm at x {3}, y {4} mm: close it in the drawing, or let ends no farther apart than {5} mm be joined.',
      '{1} ist bei x {3}, y {4} mm um {2} mm offen: in der Zeichnung schließen oder Enden bis {5} mm Abstand verbinden lassen.',
    ],
    [
      '{1} is an open line from x {2}, y {3} mm to x {4}, y {5} mm: it bounds nothing.',
      '{1} ist eine offene Linie von x {2}, y {3} mm bis x {4}, y {5} mm: sie umschließt nichts.',
    ],
  ],
  'artwork/open-fill': [
    [
      '{1} is filled but open by {2} mm at x {3}, y {4} mm: its outline is closed straight there, as the fill shows.',
      '{1} ist gefüllt, aber bei x {3}, y {4} mm um {2} mm offen: der Umriss ist dort gerade geschlossen, wie die Füllung zeigt.',
    ],
    ['Close it in the drawing if it should run otherwise.', 'In der Zeichnung schließen, wenn er anders laufen soll.'],
  ],
  'artwork/photo-crossing': [
    [
      'No camera sees the known places so: check that each stands beside its own true place.',
      'So sieht keine Kamera die bekannten Stellen: prüfen, ob jede neben ihrer wahren Stelle steht.',
    ],
    [
      'The four known places cross: name them in order round the figure, as its corners are seen.',
      'Die vier bekannten Stellen kreuzen sich: der Reihe nach rundherum nennen, wie die Ecken zu sehen sind.',
    ],
  ],
  'artwork/photo-few': [
    [
      'A photograph is set straight by four known places or more, not {1}.',
      'Ein Foto wird durch mindestens vier bekannte Stellen gerade gerückt, nicht durch {1}.',
    ],
  ],
  'artwork/photo-horizon': [
    [
      'Something in the photograph lies so far off that it cannot be set straight: crop the picture to what is wanted.',
      'Etwas im Foto liegt so weit weg, dass es sich nicht gerade rücken lässt: das Bild auf das Gewünschte zuschneiden.',
    ],
  ],
  'artwork/photo-line': [
    [
      'The known places lie in one line or on each other: take four that are corners.',
      'Die bekannten Stellen liegen auf einer Linie oder aufeinander: vier nehmen, die Ecken sind.',
    ],
    [
      'Three of the four known places lie in one line, or two on each other: take corners.',
      'Drei der vier bekannten Stellen liegen auf einer Linie oder zwei aufeinander: Ecken nehmen.',
    ],
  ],
  'artwork/picture-cut-off': [
    [
      'The picture ends too early: copy or save the file again.',
      'Das Bild endet zu früh: die Datei noch einmal kopieren oder speichern.',
    ],
  ],
  'artwork/picture-empty': [
    [
      'The picture is of one grey all over: there is no line in it.',
      'Das Bild ist überall gleich grau: es enthält keine Linie.',
    ],
    [
      'Nothing in the picture is on the dark side of the threshold: give another one, or take the light side.',
      'Nichts im Bild liegt auf der dunklen Seite der Schwelle: eine andere angeben oder die helle Seite nehmen.',
    ],
    [
      'All {1} spots of the picture are smaller than {2} mm²: leave out smaller ones only, or check its size.',
      'Alle {1} Flecken des Bilds sind kleiner als {2} mm²: nur kleinere weglassen oder seine Größe prüfen.',
    ],
  ],
  'artwork/picture-lines': [
    [
      'The picture has {1} separate lines: smooth it, crop it, or leave out larger specks.',
      'Das Bild hat {1} einzelne Linien: glätten, zuschneiden oder größere Flecken weglassen.',
    ],
  ],
  'artwork/picture-no-size': [
    [
      'The picture does not say how large it is: give its width or height, a known length, its dots to the inch, or known places.',
      'Das Bild sagt nicht, wie groß es ist: Breite oder Höhe, eine bekannte Länge, seine Punkte je Zoll oder bekannte Stellen angeben.',
    ],
  ],
  'artwork/picture-too-fine': [
    [
      'The picture has more than {1} million places of line: smooth it, crop it, or give another threshold.',
      'Das Bild hat mehr als {1} Millionen Linienpunkte: glätten, zuschneiden oder eine andere Schwelle angeben.',
    ],
  ],
  'artwork/picture-too-large': [
    [
      'The picture says it is {1} pixels; {2} million are read at most: save it smaller.',
      'Das Bild hat laut Datei {1} Pixel; höchstens {2} Millionen werden gelesen: kleiner speichern.',
    ],
  ],
  'artwork/round-spacing': [
    [
      '{1} at {2} mm on the flat strip stand {3} mm apart on the outside, {4} mm more, and {5} mm on the barrel.',
      '{1} mit {2} mm Abstand auf dem flachen Streifen stehen außen {3} mm auseinander, {4} mm mehr, und {5} mm auf dem Zylinder.',
    ],
  ],
  'artwork/scatter-area': [
    [
      'The drawing to scatter over bounds no area: close its lines, or fill them.',
      'Die Zeichnung, über die gestreut wird, umschließt keine Fläche: ihre Linien schließen oder füllen.',
    ],
    [
      'Not one copy, {1} mm across, fits {2} mm inside the area: keep less free at its edge, or make the artwork smaller.',
      'Keine einzige Kopie von {1} mm passt {2} mm innerhalb der Fläche hinein: am Rand weniger frei lassen oder die Zeichnung kleiner machen.',
    ],
    [
      'There is no drawing to scatter over: name one.',
      'Es gibt keine Zeichnung, über die gestreut würde: eine nennen.',
    ],
  ],
  'artwork/strip-narrow': [
    [
      'The artwork is {1} mm high and the strip {2} mm wide: make the strip wider, or the artwork smaller.',
      'Die Zeichnung ist {1} mm hoch, der Streifen {2} mm breit: den Streifen breiter oder die Zeichnung kleiner machen.',
    ],
  ],
  'artwork/tangled': [
    [
      'Lines cross or lie beside each other too often to be followed: take hatching and patterns out of the drawing.',
      'Linien kreuzen sich oder liegen zu oft nebeneinander, um ihnen zu folgen: Schraffuren und Muster aus der Zeichnung nehmen.',
    ],
  ],
  'artwork/too-fine': [
    [
      'The drawing would have more than {1} corners: allow a greater deviation than {2} mm.',
      'Die Zeichnung hätte mehr als {1} Ecken: mehr Abweichung als {2} mm erlauben.',
    ],
  ],
  'artwork/too-large': [
    [
      'The drawing comes to more than {1} parts, copies counted: simplify it.',
      'Die Zeichnung kommt mit Kopien auf mehr als {1} Teile: vereinfachen.',
    ],
    [
      'Copies are nested more than {1} deep: put the shapes in their place.',
      'Kopien sind mehr als {1}-fach verschachtelt: die Formen an ihre Stelle setzen.',
    ],
    [
      'The drawing has more than {1} parts of lines: simplify its paths.',
      'Die Zeichnung hat mehr als {1} Linienteile: ihre Pfade vereinfachen.',
    ],
    [
      'The drawing has more than {1} lines: take it apart into several files.',
      'Die Zeichnung hat mehr als {1} Linien: auf mehrere Dateien verteilen.',
    ],
    [
      'A path has more than {1} parts: simplify it, or draw it in parts.',
      'Ein Pfad hat mehr als {1} Teile: vereinfachen oder in Teilen zeichnen.',
    ],
  ],
  'artwork/too-many': [
    [
      'That makes {1} copies, and {2} is the most: take a greater spacing.',
      'Das ergibt {1} Kopien, erlaubt sind {2}: einen größeren Abstand nehmen.',
    ],
    [
      'That makes more than {1} copies: take a greater distance, or a smaller area.',
      'Das ergibt mehr als {1} Kopien: einen größeren Abstand oder eine kleinere Fläche nehmen.',
    ],
  ],
  'artwork/transform': [
    [
      'The transform of {1} cannot be read: apply it in the drawing, or save it again as plain SVG.',
      'Die Umformung von {1} lässt sich nicht lesen: in der Zeichnung anwenden oder neu als einfaches SVG speichern.',
    ],
  ],
  'wrap-art/off': [
    [
      'Nothing of the artwork lies on the surface: move it, or make it smaller.',
      'Nichts von der Zeichnung liegt auf der Oberfläche: verschieben oder kleiner machen.',
    ],
    [
      '{1} mm of its lines run over the edge of the surface, or meet behind it, and are left out: move the artwork, or make it smaller.',
      '{1} mm ihrer Linien laufen über den Rand der Oberfläche oder treffen sich dahinter und sind weggelassen: die Zeichnung verschieben oder kleiner machen.',
    ],
  ],
  'wrap-art/place': [
    [
      'The artwork has no place there: choose one inside the surface, and a direction that runs along it.',
      'Dort hat die Zeichnung keinen Platz: einen innerhalb der Oberfläche wählen und eine Richtung, die an ihr entlangläuft.',
    ],
    [
      'No flat piece lies at that place: choose one on a piece.',
      'An dieser Stelle liegt kein flaches Stück: eine auf einem Stück wählen.',
    ],
  ],
  'wrap-art/stretch': [
    [
      'Lines of the artwork come out up to {1} % longer on the surface than they are drawn: make it smaller, or move it to where the surface is flatter.',
      'Linien der Zeichnung werden auf der Oberfläche bis zu {1} % länger, als sie gezeichnet sind: kleiner machen oder dorthin schieben, wo die Oberfläche flacher ist.',
    ],
    [
      'Lines of the artwork come out up to {1} % shorter on the surface than they are drawn: make it smaller, or move it to where the surface is flatter.',
      'Linien der Zeichnung werden auf der Oberfläche bis zu {1} % kürzer, als sie gezeichnet sind: kleiner machen oder dorthin schieben, wo die Oberfläche flacher ist.',
    ],
  ],
  'artwork/crossing': [
    [
      '{1} crosses itself at x {2}, y {3} mm: a knife would part the piece there.',
      '{1} kreuzt sich selbst bei x {2}, y {3} mm: ein Messer trennte das Stück dort.',
    ],
    [
      '{1} crosses itself {4} times, first at x {2}, y {3} mm: a knife would part the piece there.',
      '{1} kreuzt sich selbst {4}-mal, zuerst bei x {2}, y {3} mm: ein Messer trennte das Stück dort.',
    ],
    [
      'Lines of {1} cross at x {2}, y {3} mm: a knife would part the piece there.',
      'Linien von {1} kreuzen sich bei x {2}, y {3} mm: ein Messer trennte das Stück dort.',
    ],
    [
      'Lines of {1} cross {4} times, first at x {2}, y {3} mm: a knife would part the piece there.',
      'Linien von {1} kreuzen sich {4}-mal, zuerst bei x {2}, y {3} mm: ein Messer trennte das Stück dort.',
    ],
    [
      '{1} and {5} cross at x {2}, y {3} mm: a knife would part the piece there.',
      '{1} und {5} kreuzen sich bei x {2}, y {3} mm: ein Messer trennte das Stück dort.',
    ],
    [
      '{1} and {5} cross {4} times, first at x {2}, y {3} mm: a knife would part the piece there.',
      '{1} und {5} kreuzen sich {4}-mal, zuerst bei x {2}, y {3} mm: ein Messer trennte das Stück dort.',
    ],
    ['Unite or trim the shapes in the drawing.', 'Die Formen in der Zeichnung vereinen oder beschneiden.'],
  ],
  'artwork/doubled': [
    [
      '{1} is drawn twice, over {2} mm at x {3}, y {4} mm: one of the two is left out.',
      '{1} ist doppelt gezeichnet, auf {2} mm bei x {3}, y {4} mm: eines von beiden ist weggelassen.',
    ],
    ['Delete it in the drawing.', 'In der Zeichnung löschen.'],
    [
      '{1} runs over itself for {2} mm at x {3}, y {4} mm: it would be cut twice.',
      '{1} läuft auf {2} mm bei x {3}, y {4} mm über sich selbst: es würde zweimal geschnitten.',
    ],
    [
      '{1} and {5} lie over each other for {2} mm at x {3}, y {4} mm: it would be cut twice.',
      '{1} und {5} liegen auf {2} mm bei x {3}, y {4} mm übereinander: es würde zweimal geschnitten.',
    ],
    ['Delete one of the lines in the drawing.', 'Eine der Linien in der Zeichnung löschen.'],
  ],
  'artwork/inlay': [
    [
      'Both lines are cut on the line with a cut {1} mm wide: the gap all round is then {2} mm.',
      'Beide Linien werden auf der Linie geschnitten, mit einem Schnitt von {1} mm: ringsum bleibt dann ein Spalt von {2} mm.',
    ],
    [
      'Do not let the machine allow for its cut as well.',
      'Die Maschine den Schnitt nicht noch einmal ausgleichen lassen.',
    ],
    [
      'The gap all round is {1} mm with a blade, or where the machine allows for its cut; on the line itself, what the cut takes away comes to it.',
      'Der Spalt ringsum ist {1} mm mit einer Klinge oder wenn die Maschine ihren Schnitt ausgleicht; auf der Linie selbst kommt dazu, was der Schnitt wegnimmt.',
    ],
  ],
  'artwork/lost-in-fill': [
    [
      'In {1} a filled shape lies on another and has no outline of its own there: put it into a piece of its own, or into the same path if it is a hole.',
      'In {1} liegt eine gefüllte Form auf einer anderen und hat dort keinen eigenen Umriss: in ein eigenes Stück geben oder in denselben Pfad, wenn sie ein Loch ist.',
    ],
  ],
  'artwork/mixed-fills': [
    [
      'In {1} lines with and without fill lie over each other: each outline within another counts as a hole, and the next as an island.',
      'In {1} liegen Linien mit und ohne Füllung übereinander: jeder Umriss in einem anderen gilt als Loch, der nächste als Insel.',
    ],
  ],
  'artwork/united-fills': [
    [
      'In {1} filled shapes overlap and were made one outline: draw them as pieces of their own if they are to be cut singly.',
      'In {1} überlappen gefüllte Formen und wurden ein Umriss: als eigene Stücke zeichnen, wenn sie einzeln geschnitten werden sollen.',
    ],
  ],
  'artwork/not-symmetric': [
    [
      '{1} stays as it was: to be symmetric, {a}, its line would move by {2} mm, more than the {3} mm that were allowed.',
      '{1} bleibt, wie es war: um symmetrisch zu sein, {a}, müsste sich die Linie um {2} mm verschieben, mehr als die erlaubten {3} mm.',
    ],
    ['Allow more, or mend the drawing.', 'Mehr erlauben oder die Zeichnung ausbessern.'],
  ],
  'artwork/symmetric': [
    [
      '{1} was made symmetric, {a}; its line moved by {2} mm at most.',
      '{1} wurde symmetrisch gemacht, {a}; die Linie verschob sich um höchstens {2} mm.',
    ],
  ],
  'artwork/regular': [
    [
      '{1} was made regular: {a}; its line moved by {2} mm at most.',
      '{1} wurde regelmäßig gemacht: {a}; die Linie verschob sich um höchstens {2} mm.',
    ],
  ],
  'artwork/photo-outside': [
    [
      'The place {1} is outside the picture, which is {2} pixels: count from its upper left corner.',
      'Die Stelle {1} liegt außerhalb des Bilds von {2} Pixeln: von der oberen linken Ecke aus zählen.',
    ],
  ],
};
