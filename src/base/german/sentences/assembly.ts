import type { Sentences } from '../saying.ts';

/** What is said of parts that are put together. */
export const ASSEMBLY: Sentences = {
  'assembly/copies': [
    [
      'That makes more than {1} copies of one part: ask for fewer.',
      'Das ergibt mehr als {1} Kopien eines Teils: weniger nehmen.',
    ],
    ['Copies are counted from 1 to {1}: {2} is none of these.', 'Kopien zählen von 1 bis {1}: {2} gehört nicht dazu.'],
    [
      'That makes {1} copies of one part: ask for at most {2}.',
      'Das ergibt {1} Kopien eines Teils: höchstens {2} nehmen.',
    ],
  ],
  'assembly/core': [
    [
      '{1} needs a diameter, a length and a direction, and room of 0 or more: give all of them.',
      '{1} braucht Durchmesser, Länge und Richtung und einen Platz von 0 oder mehr: alles angeben.',
    ],
    ['The room round {1} must be 0 or more.', 'Der Platz um {1} muss 0 oder mehr sein.'],
  ],
  'assembly/faces-on-faces': [
    [
      '{1} lies flush on the face in {2} places: move it in or out a little, then the hole is clear.',
      '{1} liegt an {2} Stellen bündig auf der Sichtseite: etwas hinein oder heraus schieben, dann ist das Loch klar.',
    ],
  ],
  'assembly/far': [
    [
      'The part stands more than a kilometre away: check the unit of its place.',
      'Das Teil steht über einen Kilometer entfernt: die Einheit seines Orts prüfen.',
    ],
    [
      'A copy would stand more than a kilometre away: check the distance from one to the next.',
      'Eine Kopie stünde über einen Kilometer entfernt: den Abstand von einer zur nächsten prüfen.',
    ],
  ],
  'assembly/hole-at-rim': [
    [
      'The hole for {1} runs out at an open edge: it is a notch there.',
      'Das Loch für {1} läuft an einer offenen Kante aus: dort ist es eine Kerbe.',
    ],
  ],
  'assembly/lost-part': [
    [
      'A part is joined to itself: forget that, or choose another.',
      'Ein Teil ist mit sich selbst verbunden: vergessen oder ein anderes wählen.',
    ],
    [
      'A part that is joined to another is not in the project or could not be made: forget that, or bring it back.',
      'Ein Teil, das mit einem anderen verbunden ist, ist nicht im Projekt oder ließ sich nicht machen: vergessen oder zurückholen.',
    ],
  ],
  'assembly/matrix': [
    [
      'The place of the part is no list of 16 numbers: give it anew.',
      'Der Ort des Teils ist keine Liste von 16 Zahlen: neu angeben.',
    ],
    [
      'The place of the part ends in another row than 0 0 0 1: give it anew.',
      'Der Ort des Teils endet nicht auf die Zeile 0 0 0 1: neu angeben.',
    ],
  ],
  'assembly/no-form': [
    [
      '{1} has no form, so where it meets {2} is not known.',
      '{1} hat keine Form; wo es auf {2} trifft, ist nicht bekannt.',
    ],
    [
      'Nothing of {1} has a form that could be parted to travel.',
      'Nichts von {1} hat eine Form, die sich für die Reise teilen ließe.',
    ],
  ],
  'assembly/no-ground': [
    [
      'Lines cannot be brought onto the pieces of {1}: hold {2} to it when it is put together, and mark it there.',
      'Auf die Stücke von {1} lassen sich keine Linien bringen: {2} beim Zusammensetzen anhalten und dort anzeichnen.',
    ],
    [
      '{1} runs through {2}, on whose pieces it cannot be drawn: saw it there {3} mm from the foot of the prop, when it is put together.',
      '{1} läuft durch {2}, auf dessen Stücken es sich nicht zeichnen lässt: dort {3} mm vom Fuß des Requisits absägen, wenn es zusammengesetzt ist.',
    ],
  ],
  'assembly/no-hole': [
    [
      '{1} is said to go through {2}, and does not reach its foam: move it, or forget that.',
      '{1} soll durch {2} gehen, erreicht dessen Schaumstoff aber nicht: verschieben oder vergessen.',
    ],
  ],
  'assembly/no-seat': [
    [
      '{1} is said to sit on {2}, and its outline does not fall on it: move it, or say in which direction it is set down.',
      '{1} soll auf {2} sitzen, sein Umriss fällt aber nicht darauf: verschieben oder angeben, in welcher Richtung es aufgesetzt wird.',
    ],
  ],
  'assembly/not-through': [
    [
      '{1} enters the face but does not come out at the back: it ends in the foam, or its hole is closed there.',
      '{1} geht in die Sichtseite hinein, kommt an der Rückseite aber nicht heraus: es endet im Schaumstoff, oder das Loch ist dort geschlossen.',
    ],
  ],
  'assembly/one-hand': [
    [
      'Of {1} {2} of {3} are mirror images, and {4} is drawn as it lies on the others: turn those templates over to draw it on the mirror images.',
      'Von {1} sind {2} von {3} Spiegelbilder, und {4} ist gezeichnet, wie es auf den anderen liegt: für die Spiegelbilder die Schablonen umdrehen.',
    ],
  ],
  'assembly/one-place': [
    [
      'The prop has {1} of {2}, and only where the first of them stands is it drawn on {3}: hold the others to it when it is put together, and mark them there.',
      'Das Requisit hat {1} von {2}; auf {3} ist nur gezeichnet, wo das erste steht: die anderen beim Zusammensetzen anhalten und anzeichnen.',
    ],
  ],
  'assembly/only-back': [
    [
      '{1} touches the back of the foam without coming out at the face: take it back, or let the pocket into the foam by hand.',
      '{1} berührt die Rückseite des Schaumstoffs, ohne an der Sichtseite herauszukommen: zurückziehen oder die Tasche von Hand einlassen.',
    ],
  ],
  'assembly/place': [
    [
      'The place of the part lacks a number: give x, y, z and the turn.',
      'Dem Ort des Teils fehlt eine Zahl: x, y, z und die Drehung angeben.',
    ],
    [
      'The direction the part faces has no length: give one number that is not 0.',
      'Die Richtung des Teils hat keine Länge: eine Zahl angeben, die nicht 0 ist.',
    ],
    [
      'The mirror lacks a point or a direction: give both.',
      'Dem Spiegel fehlt ein Punkt oder eine Richtung: beides angeben.',
    ],
    [
      'The copies would all stand on one spot: give the way from one to the next.',
      'Alle Kopien stünden an einer Stelle: den Weg von einer zur nächsten angeben.',
    ],
    [
      'The axis of the copies lacks a point, a direction or a turn: give all three.',
      'Der Achse der Kopien fehlt ein Punkt, eine Richtung oder eine Drehung: alle drei angeben.',
    ],
  ],
  'assembly/runs-into': [
    [
      '{1} and {2} are in each other {a}: say whether one goes through the other by a hole or sits on it, or move them apart.',
      '{1} und {2} stecken {a} ineinander: angeben, ob eines durch ein Loch im anderen geht oder darauf sitzt, oder auseinander schieben.',
    ],
  ],
  'assembly/scaled': [
    [
      'The place of the part would change its size: set the size in the part itself, then place it.',
      'Der Ort des Teils änderte seine Größe: die Größe im Teil selbst festlegen, dann setzen.',
    ],
  ],
  'assembly/sheared': [
    [
      'The place of the part would skew it: only turn, move or mirror it.',
      'Der Ort des Teils verzöge es: nur drehen, schieben oder spiegeln.',
    ],
  ],
  'assembly/stands-off': [
    [
      '{1} stands {2} mm off {3}, on which it is glued: it is drawn where it comes down.',
      '{1} steht {2} mm von {3} ab, auf das es geklebt wird: gezeichnet ist, wo es aufkommt.',
    ],
  ],
  'assembly/too-many': [
    [
      '{1} and the shell have too many triangles on one spot to hold all against each other: simplify one of them.',
      '{1} und die Schale haben an einer Stelle zu viele Dreiecke, um alle zu vergleichen: eines von beiden vereinfachen.',
    ],
  ],
  'assembly/too-steep': [
    [
      "The hole for {1} leans {2}° from square, more than the blade's {3}°: cut it square and sand, or let {4} in less aslant.",
      'Das Loch für {1} neigt sich um {2}°, mehr als die {3}° der Klinge: gerade schneiden und schleifen oder {4} weniger schräg einlassen.',
    ],
  ],
};
