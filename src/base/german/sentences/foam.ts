import type { Sentences } from '../saying.ts';

/** What is said of the foam of a piece and of its seams. */
export const FOAM: Sentences = {
  'foam/stretch': [
    [
      '{1} must be pulled by {2} % in places (at most {3} %), over the {4} % {a} by shop rule: {b}.',
      '{1} muss stellenweise um {2} % gedehnt werden (höchstens {3} %), mehr als die {4} %, {a} (Werkstattregel): {b}.',
    ],
    [
      'Nothing known of its shape rules out less, so another seam is not the only way.',
      'Nach allem, was von seiner Form bekannt ist, ginge auch weniger; eine weitere Naht ist nicht der einzige Weg.',
    ],
    [
      'No way of laying it flat keeps all of it under {1} %, for it holds {2}° of {a} within {3} mm: only another seam through that place, a dart there, or warmth helps.',
      'Wie es auch flach gelegt wird, bleibt es nicht überall unter {1} %, denn es enthält {2}° {a} auf {3} mm: nur eine weitere Naht durch diese Stelle, ein Abnäher dort oder Wärme hilft.',
    ],
  ],
  'foam/squash': [
    [
      '{1} must be gathered by {2} % in places (at most {3} %), over the {4} % {a} by shop rule: {b}.',
      '{1} muss stellenweise um {2} % gestaucht werden (höchstens {3} %), mehr als die {4} %, {a} (Werkstattregel): {b}.',
    ],
  ],
  'foam/bend-tight': [
    [
      '{1} bends to a radius of {2} mm: its outside stretches by {3} % and its inside is squashed by {4} %, over the {5} % {a} by shop rule: use foam of {6} mm or less, glue up {7} layers of {8} mm on the bend, or warm it and hold it round a form until it is cold.',
      '{1} biegt sich auf einen Radius von {2} mm: außen dehnt es sich um {3} %, innen wird es um {4} % gestaucht, mehr als die {5} %, {a} (Werkstattregel): Schaumstoff von höchstens {6} mm nehmen, {7} Lagen von {8} mm an der Biegung verkleben oder erwärmen und um eine Form halten, bis es kalt ist.',
    ],
    [
      '{1} bends to a radius of {2} mm: its outside stretches by {3} % and its inside is squashed by {4} %, over the {5} % {a} by shop rule: use foam of {6} mm or less, glue up {7} layers of {8} mm on the bend, cut kerfs {b} into its inside every {c}, or warm it and hold it round a form until it is cold.',
      '{1} biegt sich auf einen Radius von {2} mm: außen dehnt es sich um {3} %, innen wird es um {4} % gestaucht, mehr als die {5} %, {a} (Werkstattregel): Schaumstoff von höchstens {6} mm nehmen, {7} Lagen von {8} mm an der Biegung verkleben, innen Schlitze schneiden, {b}, {c}, oder erwärmen und um eine Form halten, bis es kalt ist.',
    ],
  ],
  'foam/bevel-steep': [
    [
      'At seam {1} the foam of {2} mm leans {3}° from square to meet foam of {4} mm, and a blade or saw table leans at most {5}°: make it a rebate, or cut both pieces from one foam.',
      'An Naht {1} neigt sich der Schaumstoff von {2} mm um {3}°, um auf Schaumstoff von {4} mm zu treffen; Klinge oder Sägetisch neigen sich höchstens um {5}°: einen Stufenfalz daraus machen oder beide Stücke aus einem Schaumstoff schneiden.',
    ],
    [
      'At seam {1} the foam of {2} mm leans {3}° from square to meet foam of {4} mm, and a blade or saw table leans at most {5}°: cut both pieces from one foam.',
      'An Naht {1} neigt sich der Schaumstoff von {2} mm um {3}°, um auf Schaumstoff von {4} mm zu treffen; Klinge oder Sägetisch neigen sich höchstens um {5}°: beide Stücke aus einem Schaumstoff schneiden.',
    ],
    [
      'Seam {1} is so sharp that its edges lean {2}° from square, and a blade or saw table leans at most {3}°: spread the fold over {a} seams with {b} {4} mm wide on the face and {5} mm on the back, which leaves bevels of {6}°; or cut both edges at {7}°, glue them where they touch and fill the gap, {8} mm wide at the {c}; or cover that gap with a thin trim strip {9} mm wide.',
      'Naht {1} ist so scharf, dass sich ihre Kanten um {2}° neigen; Klinge oder Sägetisch neigen sich höchstens um {3}°: den Falz auf {a} Nähte verteilen mit {b}, {4} mm breit auf der Sichtseite und {5} mm auf der Rückseite, dann bleiben Gehrungen von {6}°; oder beide Kanten mit {7}° schneiden, kleben, wo sie sich berühren, und den Spalt füllen, {8} mm breit auf der {c}; oder den Spalt mit einer dünnen Zierleiste von {9} mm Breite abdecken.',
    ],
  ],
  'foam/corner-cut': [
    [
      'A corner of {1} is cut back {2} mm, because a piece it shares no seam with would be in its way: cut it as drawn, and fill what stays open there, at most {3} mm wide.',
      'Eine Ecke von {1} ist um {2} mm zurückgeschnitten, weil ein Stück im Weg wäre, mit dem sie keine Naht teilt: schneiden, wie gezeichnet, und füllen, was offen bleibt, höchstens {3} mm breit.',
    ],
    [
      'A corner of {1} is cut back {2} mm, the most of {4} such corners, because a piece it shares no seam with would be in its way: cut it as drawn, and fill what stays open there, at most {3} mm wide.',
      'Eine Ecke von {1} ist um {2} mm zurückgeschnitten, am meisten von {4} solchen Ecken, weil ein Stück im Weg wäre, mit dem sie keine Naht teilt: schneiden, wie gezeichnet, und füllen, was offen bleibt, höchstens {3} mm breit.',
    ],
  ],
  'foam/corner-step': [
    [
      'At a corner of {1} two cut lines would only meet far off and are joined by a step of {2} mm: cut it as drawn and fill what stays open, or part the piece there.',
      'An einer Ecke von {1} träfen sich zwei Schnittlinien erst weit draußen und sind durch eine Stufe von {2} mm verbunden: schneiden, wie gezeichnet, und füllen, was offen bleibt, oder das Stück dort teilen.',
    ],
    [
      'At a corner of {1} two cut lines would only meet far off and are joined by a step of {2} mm, {a}: cut it as drawn and fill what stays open, or part the piece there.',
      'An einer Ecke von {1} träfen sich zwei Schnittlinien erst weit draußen und sind durch eine Stufe von {2} mm verbunden, {a}: schneiden, wie gezeichnet, und füllen, was offen bleibt, oder das Stück dort teilen.',
    ],
  ],
  'foam/groove-deep': [
    [
      '{1} is grooved {2} mm deep, which leaves a hinge of {3} mm, and less than {4} mm tears when it is bent (shop rule): leave more, or part it at the fold.',
      '{1} ist {2} mm tief genutet, als Scharnier bleiben {3} mm; unter {4} mm reißt es beim Biegen (Werkstattregel): mehr stehen lassen oder am Falz teilen.',
    ],
  ],
  'foam/groove-wide': [
    [
      '{1} has {a} with a groove wider than the panel beside it: it needs {2} mm to the edge and has {3} mm, so use thinner foam there or part the piece at the fold.',
      '{1} hat {a} mit einer Nut, die breiter ist als das Feld daneben: sie braucht {2} mm bis zur Kante und hat {3} mm; dort dünneren Schaumstoff nehmen oder das Stück am Falz teilen.',
    ],
  ],
  'foam/groove-meet': [
    [
      '{1} has {a} whose grooves run into the next one: they need {2} mm from fold to fold and have {3} mm, so use thinner foam, roll the piece, or bend it over fewer folds.',
      '{1} hat {a}, deren Nuten in die nächste laufen: von Falz zu Falz brauchen sie {2} mm und haben {3} mm; dünneren Schaumstoff nehmen, das Stück rollen oder über weniger Falze biegen.',
    ],
  ],
  'foam/kerf-close': [
    [
      '{1} has kerfs {2} mm apart where they are nearest, and only {3} mm of foam between two: the bend is too tight there for {4} mm of foam; use thinner foam, leave more under the kerfs, or part the piece there.',
      '{1} hat Schlitze, die an der engsten Stelle {2} mm auseinander liegen, dazwischen nur {3} mm Schaumstoff: die Biegung ist dort zu eng für {4} mm; dünneren Schaumstoff nehmen, unter den Schlitzen mehr stehen lassen oder das Stück dort teilen.',
    ],
    [
      '{1} has kerfs {2} mm apart where they are nearest, and they run into each other: the bend is too tight there for {4} mm of foam; use thinner foam, leave more under the kerfs, or part the piece there.',
      '{1} hat Schlitze, die an der engsten Stelle {2} mm auseinander liegen und ineinander laufen: die Biegung ist dort zu eng für {4} mm Schaumstoff; dünneren nehmen, unter den Schlitzen mehr stehen lassen oder das Stück dort teilen.',
    ],
  ],
  'foam/kerf-deep': [
    [
      '{1} has kerfs {2} mm deep, which leave {3} mm, and less than {4} mm tears when it is bent (shop rule): leave more.',
      '{1} hat Schlitze von {2} mm Tiefe, es bleiben {3} mm; unter {4} mm reißt es beim Biegen (Werkstattregel): mehr stehen lassen.',
    ],
  ],
  'foam/kerf-thin': [
    [
      '{1} is {2} mm thick and a kerf leaves {3} mm (shop rule): there is nothing to cut, so it is rolled.',
      '{1} ist {2} mm dick, ein Schlitz lässt {3} mm stehen (Werkstattregel): es gibt nichts zu schneiden, es wird gerollt.',
    ],
  ],
  'foam/kerf-tight': [
    [
      '{1} turns {2}° at each kerf: what is left under it stretches by {3} %, over the {4} % {a} by shop rule: leave less under the kerfs, or roll it.',
      '{1} dreht sich an jedem Schlitz um {2}°: was darunter bleibt, dehnt sich um {3} %, mehr als die {4} %, {a} (Werkstattregel): unter den Schlitzen weniger stehen lassen oder rollen.',
    ],
    [
      '{1} turns {2}° at each kerf: what is left under it stretches by {3} %, over the {4} % {a} by shop rule: leave less under the kerfs, or roll it, since the foam is hardly thicker than what is left.',
      '{1} dreht sich an jedem Schlitz um {2}°: was darunter bleibt, dehnt sich um {3} %, mehr als die {4} %, {a} (Werkstattregel): unter den Schlitzen weniger stehen lassen oder rollen, denn der Schaumstoff ist kaum dicker als das, was bleibt.',
    ],
  ],
  'foam/kerf-unfit': [['{1} is rolled and not kerfed: it {a}.', '{1} wird gerollt und nicht geschlitzt: es {a}.']],
  'foam/narrow': [
    [
      '{1} is nowhere wider than {2} mm, under {3} thicknesses of its foam: hard to cut clean and to glue, so join it to a neighbour if you can.',
      '{1} ist nirgends breiter als {2} mm, weniger als {3} Dicken seines Schaumstoffs: schwer sauber zu schneiden und zu kleben, wenn möglich mit einem Nachbarn verbinden.',
    ],
  ],
  'foam/no-rebate': [
    [
      'Seam {1} is to be a rebate, but its fold is up to {2}° off a right angle and a rebate can be cut up to {3}° off: it is cut as a butt seam; choose butt or lap for it, or part the piece elsewhere.',
      'Naht {1} soll ein Stufenfalz sein, ihr Falz weicht aber bis zu {2}° vom rechten Winkel ab, ein Stufenfalz verträgt {3}°: sie wird als Stoß geschnitten; Stoß oder Überlappung wählen oder das Stück anderswo teilen.',
    ],
  ],
  'foam/overlap': [
    [
      '{1} lies over itself when flat and cannot be cut from one sheet: part it once more.',
      '{1} liegt flach über sich selbst und lässt sich nicht aus einer Platte schneiden: noch einmal teilen.',
    ],
  ],
  'foam/rebate-corner': [
    [
      'Seams {1} meet {a}, some as rebates and some bevelled, which leaves a hole up to {2} mm wide on the back: make all of them rebates, or none, or fill it.',
      'Die Nähte {1} treffen sich {a}, teils als Stufenfalz, teils auf Gehrung; auf der Rückseite bleibt ein Loch von bis zu {2} mm: alle zu Stufenfalzen machen oder keine, oder füllen.',
    ],
  ],
  'foam/rebate-ring': [
    [
      'The pieces at seams {1} stand on each other in a ring {a}, which leaves a hole up to {2} mm wide: let the other piece stand at one of these seams.',
      'Die Stücke an den Nähten {1} stehen {a} im Ring aufeinander, es bleibt ein Loch von bis zu {2} mm: an einer dieser Nähte das andere Stück aufstehen lassen.',
    ],
  ],
  'foam/score-deep': [
    [
      '{1} has a scored line {2} mm deep, which goes through its {3} mm of foam: score no deeper than {4} mm, or take thicker foam.',
      '{1} hat eine Ritzlinie von {2} mm Tiefe, die durch seine {3} mm Schaumstoff geht: höchstens {4} mm tief ritzen oder dickeren Schaumstoff nehmen.',
    ],
    [
      '{1} has a scored line {2} mm deep, which leaves {3} mm of its {5} mm of foam: score no deeper than {4} mm, or take thicker foam.',
      '{1} hat eine Ritzlinie von {2} mm Tiefe, die von seinen {5} mm Schaumstoff {3} mm stehen lässt: höchstens {4} mm tief ritzen oder dickeren Schaumstoff nehmen.',
    ],
  ],
  'foam/score-lost': [
    [
      'A scored line lies along seams or open edges, where the foam is cut through anyway, or on no edge of the sculpt: nothing is scored there.',
      'Eine Ritzlinie liegt auf Nähten oder offenen Kanten, wo ohnehin durchgeschnitten wird, oder auf keiner Kante des Modells: dort wird nichts geritzt.',
    ],
    [
      'Part of a scored line ({1} of {2} edges) lies along seams or open edges, where the foam is cut through anyway, or on no edge of the sculpt: nothing is scored there.',
      'Ein Teil einer Ritzlinie ({1} von {2} Kanten) liegt auf Nähten oder offenen Kanten, wo ohnehin durchgeschnitten wird, oder auf keiner Kante des Modells: dort wird nichts geritzt.',
    ],
    ['Join the foam along it or take the line away.', 'Den Schaumstoff dort verbinden oder die Linie wegnehmen.'],
  ],
  'foam/seam-difference': [
    [
      'The two sides of seam {1} differ by {2} mm over {3} mm: ease the longer one in between the marks, or move the seam where the surface bends less both ways.',
      'Die beiden Seiten von Naht {1} unterscheiden sich um {2} mm auf {3} mm: die längere zwischen den Marken einhalten oder die Naht dorthin legen, wo sich die Oberfläche weniger in beide Richtungen biegt.',
    ],
  ],
  'foam/seam-slip': [
    [
      'Seam {1} runs {2} mm apart between two marks: warm the shorter side and stretch it to meet, or part the piece once more.',
      'Naht {1} läuft zwischen zwei Marken um {2} mm auseinander: die kürzere Seite erwärmen und passend dehnen oder das Stück noch einmal teilen.',
    ],
  ],
  'foam/seam-step': [
    [
      'At seam {1} foam of {2} mm meets foam of {3} mm, and its fold is too small to share between them: there is a step of {a}.',
      'An Naht {1} trifft Schaumstoff von {2} mm auf Schaumstoff von {3} mm, und ihr Falz ist zu klein, um ihn zu teilen: es bleibt eine Stufe von {a}.',
    ],
    ['Sand it off or leave it.', 'Abschleifen oder lassen.'],
    ['Sand it off or leave it, or make it a rebate.', 'Abschleifen, lassen oder einen Stufenfalz daraus machen.'],
  ],
  'foam/side-gone': [
    [
      '{1} is smaller than its bevels: nothing is left of its {a}.',
      '{1} ist kleiner als seine Gehrungen: von seiner {a} bleibt nichts.',
    ],
    [
      'Its edges are drawn square on that side; use thinner foam or join it to a neighbour.',
      'Auf dieser Seite sind seine Kanten gerade gezeichnet; dünneren Schaumstoff nehmen oder mit einem Nachbarn verbinden.',
    ],
  ],
  'foam/side-parted': [
    [
      'The bevels of {1} part its {a} in two: only the larger area is drawn on that side.',
      'Die Gehrungen von {1} teilen seine {a} in zwei: gezeichnet ist auf dieser Seite nur der größere Teil.',
    ],
    ['Use thinner foam or join it to a neighbour.', 'Dünneren Schaumstoff nehmen oder mit einem Nachbarn verbinden.'],
  ],
  'foam/steep-built': [
    [
      'Seam {1}: a strip of {2} mm foam, {3} mm wide on the face and {4} mm on the back, {5} mm long, long edges at {6}°: its fold is beyond the blade, and this is how you chose to build it.',
      'Naht {1}: ein Streifen aus Schaumstoff von {2} mm, {3} mm breit auf der Sichtseite und {4} mm auf der Rückseite, {5} mm lang, lange Kanten mit {6}°: ihr Falz ist zu scharf für die Klinge, so ist der Bau gewählt.',
    ],
    [
      'Seam {1}: {7} strips of {2} mm foam, {3} mm wide on the face and {4} mm on the back, {5} mm long, long edges at {6}°: its fold is beyond the blade, and this is how you chose to build it.',
      'Naht {1}: {7} Streifen aus Schaumstoff von {2} mm, {3} mm breit auf der Sichtseite und {4} mm auf der Rückseite, {5} mm lang, lange Kanten mit {6}°: ihr Falz ist zu scharf für die Klinge, so ist der Bau gewählt.',
    ],
    [
      'Seam {1}: fill the gap, {2} mm wide at the {a}, {3} mm long, {4} mm deep, at most {5} cm³ of filling: its fold is beyond the blade, and this is how you chose to build it.',
      'Naht {1}: den Spalt füllen, {2} mm breit auf der {a}, {3} mm lang, {4} mm tief, höchstens {5} cm³ Füllung: ihr Falz ist zu scharf für die Klinge, so ist der Bau gewählt.',
    ],
    [
      'Seam {1}: a thin trim strip {4} mm wide over the gap, {2} mm wide at the {a}, {3} mm long: its fold is beyond the blade, and this is how you chose to build it.',
      'Naht {1}: eine dünne Zierleiste von {4} mm Breite über den Spalt, der auf der {a} {2} mm breit und {3} mm lang ist: ihr Falz ist zu scharf für die Klinge, so ist der Bau gewählt.',
    ],
  ],
  'foam/tip-lost': [
    [
      'A round hole is left out, because no dart ends there any more.',
      'Ein rundes Loch ist weggelassen, weil dort kein Abnäher mehr endet.',
    ],
    [
      '{1} round holes are left out, because no dart ends there any more.',
      '{1} runde Löcher sind weggelassen, weil dort kein Abnäher mehr endet.',
    ],
  ],
};
