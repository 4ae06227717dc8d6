import type { Sentences } from '../saying.ts';

/** What is said of things let into the foam, and of trim. */
export const INSERTS: Sentences = {
  'insert/channel': [
    [
      'The channel of the {1} needs a width, a depth and two places or more.',
      'Der Kanal für {1} braucht Breite, Tiefe und mindestens zwei Stellen.',
    ],
  ],
  'insert/channel-over-edge': [
    [
      'The way for the wires of the {1} runs over an edge of {2}: it goes on in the piece that is glued there, at the same place of the seam.',
      'Der Weg für die Kabel von {1} läuft über eine Kante von {2}: er geht im dort angeklebten Stück weiter, an derselben Stelle der Naht.',
    ],
  ],
  'insert/deeper-than-wall': [
    [
      'The pocket of the {1} is {2} mm deep and the wall only {3} mm: it goes right through by {4} mm.',
      'Die Tasche für {1} ist {2} mm tief, die Wand nur {3} mm: sie geht um {4} mm hindurch.',
    ],
    [
      'Let it in from the back with frames, or choose a flatter one.',
      'Von der Rückseite mit Rahmen einlassen oder ein flacheres wählen.',
    ],
  ],
  'insert/depth': [
    [
      'The {1} needs to be told how deep it is, over 0 and at most 1 m.',
      'Für {1} muss die Tiefe angegeben sein, über 0 und höchstens 1 m.',
    ],
  ],
  'insert/framed': [
    [
      'The pocket of the {1} is {2} mm deep and the wall {3} mm: {a} on the {b}, {4} mm in all, makes up for it and {5} mm of the wall stay behind it.',
      'Die Tasche für {1} ist {2} mm tief, die Wand {3} mm: {a} auf der {b}, insgesamt {4} mm, gleicht das aus, und {5} mm der Wand bleiben dahinter.',
    ],
    [
      'The pocket of the {1} is {2} mm deep and the wall {3} mm: {a} on the {b}, {4} mm in all, make up for it and {5} mm of the wall stay behind it.',
      'Die Tasche für {1} ist {2} mm tief, die Wand {3} mm: {a} auf der {b}, insgesamt {4} mm, gleichen das aus, und {5} mm der Wand bleiben dahinter.',
    ],
  ],
  'insert/lamp-closed': [
    [
      'The {1} is closed in: foam keeps its heat, and it cannot be changed.',
      '{1} ist eingeschlossen: Schaumstoff hält die Wärme, und Wechseln geht nicht.',
    ],
    ['Run it an hour before it is closed.', 'Vor dem Schließen eine Stunde laufen lassen.'],
  ],
  'insert/near-edge': [
    [
      'Between the {1} and an edge or seam of {2} {3} mm of foam stay, under {4} mm: move it in.',
      'Zwischen {1} und einer Kante oder Naht von {2} bleiben {3} mm Schaumstoff, weniger als {4} mm: weiter hinein setzen.',
    ],
  ],
  'insert/no-pair': [
    [
      '{1} has no other half: give the magnet that it holds the word {2} as well.',
      '{1} hat keine andere Hälfte: dem Magneten, den es hält, auch das Wort {2} geben.',
    ],
    [
      '{1} magnets have the word {2}: two hold each other, give each pair a word of its own.',
      '{1} Magnete haben das Wort {2}: zwei halten einander, jedem Paar ein eigenes Wort geben.',
    ],
  ],
  'insert/no-part': [
    [
      'The part it is let into is not in the project: choose another.',
      'Das Teil, in das es eingelassen wird, ist nicht im Projekt: ein anderes wählen.',
    ],
  ],
  'insert/no-piece': [
    [
      '{1} stands at a place of {2} that is no piece yet: lay it flat first, or move it.',
      '{1} sitzt an einer Stelle von {2}, die noch kein Stück ist: zuerst flach legen oder verschieben.',
    ],
    [
      'Say in which piece of {2} {1} is let in, and where: it has {3}.',
      'Angeben, in welches Stück von {2} {1} eingelassen wird und wo: es hat {3}.',
    ],
  ],
  'insert/no-pole': [
    [
      'Nobody has said which pole of the {1} looks out: hold it to its other half before the glue, and mark it.',
      'Welcher Pol von {1} nach außen zeigt, ist nicht angegeben: vor dem Kleben an die andere Hälfte halten und anzeichnen.',
    ],
  ],
  'insert/no-sheet': [
    [
      'The pane of the {1} is {2} mm thick, and none of its sheets is: cut it by its outline from clear sheet, or add that sheet to the stock and to this part, then it is laid out with the rest.',
      'Die Scheibe von {1} ist {2} mm dick, keine der Platten ist das: nach dem Umriss aus klarer Platte schneiden oder diese Platte dem Bestand und dem Teil zufügen, dann wird sie mit dem Rest angeordnet.',
    ],
    [
      'The plate of the {1} is a stiff sheet of {2} mm, and none of its sheets is: cut it by its outline, or add such a sheet to the stock and to this part.',
      'Der Träger von {1} ist eine steife Platte von {2} mm, keine der Platten ist das: nach dem Umriss schneiden oder eine solche Platte dem Bestand und dem Teil zufügen.',
    ],
  ],
  'insert/no-way-in': [
    [
      'The {1} has no way in: an empty cell must come out, and one that gets hot at once.',
      'Zu {1} führt kein Weg: eine leere Zelle muss heraus, und eine, die heiß wird, sofort.',
    ],
    ['Give it a lid.', 'Einen Deckel vorsehen.'],
  ],
  'insert/off-piece': [
    [
      'What is let in for the {1} reaches {2} mm past the edge of {3}: move it in, or to another piece.',
      'Was für {1} eingelassen wird, reicht {2} mm über die Kante von {3} hinaus: weiter hinein setzen oder in ein anderes Stück.',
    ],
  ],
  'insert/off-wall': [
    [
      '{1} stands {2} mm off the face of {3}, which it is let into: it is drawn at the nearest place; move it there.',
      '{1} steht {2} mm von der Sichtseite von {3} ab, in das es eingelassen wird: gezeichnet ist es an der nächsten Stelle; dorthin schieben.',
    ],
  ],
  'insert/on-bend': [
    [
      '{1} is bent, and the {2} is not: its pocket is to be {3} mm deeper in the middle or at its ends, or the foam is left flat there.',
      '{1} ist gebogen, {2} nicht: die Tasche muss in der Mitte oder an den Enden {3} mm tiefer sein, oder der Schaumstoff bleibt dort flach.',
    ],
  ],
  'insert/open-button-cell': [
    [
      'The {1} lies open: a child must not get at a button cell.',
      '{1} liegt offen: an eine Knopfzelle darf kein Kind kommen.',
    ],
    ['Give it a lid that needs a tool.', 'Einen Deckel vorsehen, der Werkzeug braucht.'],
  ],
  'insert/panel': [
    [
      'The {1} holds on to a panel of {2} mm, and the wall is {3} mm: give it a plate.',
      '{1} hält in einer Wand von {2} mm, die Wand hat {3} mm: einen Träger vorsehen.',
    ],
  ],
  'insert/room-behind': [
    [
      'The {1} is {2} mm deep: {3} mm must be free behind the wall, and its wires besides.',
      '{1} ist {2} mm tief: hinter der Wand müssen {3} mm frei sein, dazu die Kabel.',
    ],
  ],
  'insert/same-poles': [
    [
      '{1} both show their {2} pole and push each other away: turn one over.',
      '{1} zeigen beide ihren Pol {2} und stoßen sich ab: einen umdrehen.',
    ],
  ],
  'insert/thin-left': [
    [
      'Behind the pocket of the {1} {2} mm of foam stay, under {3} mm: it shows through and tears.',
      'Hinter der Tasche für {1} bleiben {2} mm Schaumstoff, weniger als {3} mm: es zeichnet sich ab und reißt.',
    ],
    ['Make the pocket shallower, or the wall thicker.', 'Die Tasche flacher oder die Wand dicker machen.'],
  ],
  'insert/wall': [
    [
      'The wall it is let into needs sheets of more than {1} mm: choose its foam.',
      'Die Wand, in die es eingelassen wird, braucht Platten von mehr als {1} mm: ihren Schaumstoff wählen.',
    ],
  ],
  'insert/wish': [
    [
      'Room, lap and cover of the {1} are lengths from {2} mm: change them.',
      'Platz, Auflage und Deckung von {1} sind Längen von {2} mm: ändern.',
    ],
  ],
  'trim/bend': [
    [
      '{1} is bent so tightly that its skin is strained by {2} %: take thinner foam, or groove its back.',
      '{1} ist so eng gebogen, dass seine Haut um {2} % gedehnt wird: dünneren Schaumstoff nehmen oder die Rückseite nuten.',
    ],
  ],
  'trim/buy': [
    [
      'Buy {1} mm of {2} edging, {3} mm wide and {4} mm high, and cut it to these lengths in mm: {5}.',
      '{1} mm Profil ({2}) kaufen, {3} mm breit und {4} mm hoch, und auf diese Längen in mm schneiden: {5}.',
    ],
  ],
  'trim/covers': [
    [
      '{1} runs of strip cover {2} seams, {3} mm in all: fewer cannot be.',
      '{1} Streifenzüge decken {2} Nähte, insgesamt {3} mm: weniger geht nicht.',
    ],
    [
      '{1} runs of strip cover {2} seams, {3} mm in all: fewer cannot be with so little turning.',
      '{1} Streifenzüge decken {2} Nähte, insgesamt {3} mm: weniger geht mit so wenig Biegung nicht.',
    ],
    [
      '{1} runs of strip cover {2} seams, {3} mm in all: fewer than {4} cannot be.',
      '{1} Streifenzüge decken {2} Nähte, insgesamt {3} mm: weniger als {4} geht nicht.',
    ],
    [
      '1 run of strip covers 1 seam, {3} mm in all: fewer cannot be.',
      '1 Streifenzug deckt 1 Naht, insgesamt {3} mm: weniger geht nicht.',
    ],
    [
      '1 run of strip covers {2} seams, {3} mm in all: fewer cannot be.',
      '1 Streifenzug deckt {2} Nähte, insgesamt {3} mm: weniger geht nicht.',
    ],
  ],
  'trim/left-out': [['No strip covers {1}, which {a}.', 'Kein Streifen deckt {1}, {a}.']],
  'trim/length': [
    [
      'The longest strip must be longer than twice its width: change it.',
      'Der längste Streifen muss länger sein als seine doppelte Breite: ändern.',
    ],
  ],
  'trim/line': [
    [
      'The line {1} has no length or runs over empty triangles: draw another.',
      'Die Linie {1} hat keine Länge oder läuft über leere Dreiecke: eine andere zeichnen.',
    ],
  ],
  'trim/lost-seam': [
    [
      'A seam that was to stay without a cover is no more.',
      'Eine Naht, die ohne Abdeckung bleiben sollte, gibt es nicht mehr.',
    ],
  ],
  'trim/no-rim': [
    [
      'The line {1} is no open edge of the prop, so nothing can be wrapped over it: choose an edge.',
      'Die Linie {1} ist keine offene Kante des Requisits, nichts lässt sich um sie legen: eine Kante wählen.',
    ],
  ],
  'trim/no-sculpt': [
    [
      'The sculpt it lies on is not in the project or could not be parted: choose another.',
      'Das Modell, auf dem sie liegt, ist nicht im Projekt oder ließ sich nicht teilen: ein anderes wählen.',
    ],
  ],
  'trim/no-seam': [
    [
      'It follows seam {1}, which the sculpt does not have: it has {2}.',
      'Sie folgt Naht {1}, die das Modell nicht hat: es hat {2}.',
    ],
    [
      'It follows a seam through the edge from corner {1} to {2}, and none runs there: choose another seam, or mark that one again.',
      'Sie folgt einer Naht durch die Kante von Ecke {1} nach {2}, dort läuft aber keine: eine andere Naht wählen oder diese neu anzeichnen.',
    ],
  ],
  'trim/none-seen': [
    [
      'No seam of the sculpt is in view, so there is nothing to cover: mark seams, or leave fewer out.',
      'Keine Naht des Modells ist zu sehen, also gibt es nichts abzudecken: Nähte anzeichnen oder weniger auslassen.',
    ],
  ],
  'trim/off-line': [
    [
      '{1} lies up to {2} mm beside its line, which is too jagged to follow: check that it covers the seam, or draw a smoother line.',
      '{1} liegt bis zu {2} mm neben seiner Linie, die zum Folgen zu zackig ist: prüfen, ob die Naht bedeckt ist, oder eine glattere Linie zeichnen.',
    ],
  ],
  'trim/parted': [
    [
      'The strip along {1} is cut into {2} lengths because of {a}.',
      'Der Streifen an {1} ist in {2} Längen geteilt, wegen {a}.',
    ],
  ],
  'trim/profile': [
    [
      'An edge roll goes round with at least half the thickness of the rim as its radius: make the radius larger.',
      'Eine Kantenrolle läuft mit mindestens der halben Randdicke als Radius herum: den Radius größer machen.',
    ],
    [
      'A binding is bent no rounder than half the rim and reaches down beyond its bends: change its sizes.',
      'Eine Einfassung ist höchstens so rund wie der halbe Rand und reicht über ihre Biegungen hinaus: ihre Maße ändern.',
    ],

    [
      'So steep a bevel leaves no face: a smaller angle, a thinner sheet or a wider strip.',
      'Eine so steile Gehrung lässt keine Sichtseite: kleinerer Winkel, dünnere Platte oder breiterer Streifen.',
    ],
    [
      'Half-round edging is no higher than half its width: make it wider or thinner.',
      'Ein Halbrundprofil ist höchstens halb so hoch wie breit: breiter oder dünner machen.',
    ],
    [
      'Quarter-round edging is no higher than its width: make it wider or thinner.',
      'Ein Viertelrundprofil ist höchstens so hoch wie breit: breiter oder dünner machen.',
    ],
  ],
  'trim/size': [
    [
      'A strip needs a width and a thickness above {1} mm: change them.',
      'Ein Streifen braucht Breite und Dicke über {1} mm: ändern.',
    ],
    [
      'The neutral fraction and the share on the left lie between 0 and 1: change them.',
      'Der Anteil der neutralen Schicht und der Anteil links liegen zwischen 0 und 1: ändern.',
    ],
    [
      'How near the strip keeps to its line is above {1} mm, and an overlap is not less than 0: change them.',
      'Die Nähe des Streifens zur Linie ist größer als {1} mm, eine Überlappung nicht unter 0: ändern.',
    ],
  ],
  'trim/strap': [
    [
      'A strap needs lengths above 0 and from 1 to 100 holes: change its sizes.',
      'Ein Riemen braucht Längen über 0 und 1 bis 100 Löcher: seine Maße ändern.',
    ],
    [
      'A pointed tip needs a length above 0: change it or make it rounded.',
      'Eine Spitze braucht eine Länge über 0: ändern oder rund machen.',
    ],
  ],
  'trim/strap-holes': [
    [
      'The holes leave too little foam about them: make the strap wider, the holes smaller or their spacing larger.',
      'Die Löcher lassen zu wenig Schaumstoff um sich: den Riemen breiter, die Löcher kleiner oder ihren Abstand größer machen.',
    ],
  ],
  'trim/strap-overlap': [
    [
      'The last hole lies beyond the strap: let it overlap by {1} mm or more.',
      'Das letzte Loch liegt außerhalb des Riemens: um mindestens {1} mm überlappen lassen.',
    ],
  ],
  'trim/strap-reinforcement': [
    [
      'Between buckle and holes there is no room for a reinforcing layer: it is left out.',
      'Zwischen Schnalle und Löchern ist kein Platz für eine verstärkende Lage: sie ist weggelassen.',
    ],
  ],
  'trim/strap-short': [
    [
      'The holes reach into the tab of the buckle: fewer holes, a smaller spacing or a shorter tab.',
      'Die Löcher reichen in die Lasche der Schnalle: weniger Löcher, kleinerer Abstand oder kürzere Lasche.',
    ],
  ],
  'trim/strap-slot': [
    [
      'The slot for the prong is too wide for the strap: make it narrower.',
      'Der Schlitz für den Dorn ist für den Riemen zu breit: schmaler machen.',
    ],
  ],
  'trim/stretch': [
    [
      'An edge of {1} must stretch by {2} %: make it narrower, or warm it.',
      'Eine Kante von {1} muss sich um {2} % dehnen: schmaler machen oder erwärmen.',
    ],
    [
      'An edge of {1} must shrink by {2} %: make it narrower, or warm it.',
      'Eine Kante von {1} muss um {2} % gestaucht werden: schmaler machen oder erwärmen.',
    ],
  ],
  'insert/count': [
    ['The {1} is counted from 1 to {2}: {3} is none of these.', '{1} zählt von 1 bis {2}: {3} gehört nicht dazu.'],
    [
      'A {1} is let in one by one: place another beside it.',
      '{1} wird einzeln eingelassen: daneben ein weiteres setzen.',
    ],
  ],
  'insert/size': [
    [
      'There is no {1} “{2}” here: choose one of {3}, or give its own measures.',
      '{1} „{2}“ gibt es hier nicht: eines von {3} wählen oder eigene Maße angeben.',
    ],
  ],
  'trim/end': [
    ['A point needs a length above {1} mm: change it.', 'Eine Spitze braucht eine Länge über {1} mm: ändern.'],
  ],
};
