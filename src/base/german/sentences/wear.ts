import type { Sentences } from '../saying.ts';

/** What is said of wearing, clay, finish and travel. */
export const WEAR: Sentences = {
  'wear/core-file': [
    [
      'The core {1} cannot be used, so its room is not measured. {a}',
      'Der Kern {1} lässt sich nicht verwenden, sein Platz ist nicht gemessen. {a}',
    ],
  ],
  'wear/core-misses': [
    [
      '{1} stands outside of the foam, {2} mm off it: check its place, its turn and its unit.',
      '{1} steht außerhalb des Schaumstoffs, {2} mm davon entfernt: Ort, Drehung und Einheit prüfen.',
    ],

    [
      'No foam lies along {1}: check where its axis runs and how long it is.',
      'An {1} liegt kein Schaumstoff: prüfen, wo die Achse läuft und wie lang sie ist.',
    ],
  ],
  'wear/core-open': [
    [
      'The file of {1} is not closed: {2} of its edges have one face only.',
      'Die Datei von {1} ist nicht geschlossen: {2} ihrer Kanten haben nur eine Fläche.',
    ],
    [
      'Which side is inside is told by the nearest face; close the model if a figure looks wrong.',
      'Welche Seite innen ist, sagt die nächste Fläche; das Modell schließen, wenn eine Zahl falsch aussieht.',
    ],
  ],
  'wear/core-pierces': [
    [
      'The axis of {1} runs through the foam at one place: cut a hole of {2} mm there, or give the length that lies inside.',
      'Die Achse von {1} läuft an einer Stelle durch den Schaumstoff: dort ein Loch von {2} mm schneiden oder die Länge angeben, die innen liegt.',
    ],
    [
      'The axis of {1} runs through the foam at {3} places: cut a hole of {2} mm there, or give the length that lies inside.',
      'Die Achse von {1} läuft an {3} Stellen durch den Schaumstoff: dort ein Loch von {2} mm schneiden oder die Länge angeben, die innen liegt.',
    ],
  ],
  'wear/core-too-tight': [
    [
      '{1} does not fit: at the worst place it stands {2} mm deep in the foam, so make the part larger, move the core, or take thinner foam.',
      '{1} passt nicht: an der schlimmsten Stelle steht es {2} mm tief im Schaumstoff; das Teil größer machen, den Kern verschieben oder dünneren Schaumstoff nehmen.',
    ],
    [
      '{1} does not fit: it runs into the foam, so make the part larger, move the core, or take thinner foam.',
      '{1} passt nicht: es läuft in den Schaumstoff; das Teil größer machen, den Kern verschieben oder dünneren Schaumstoff nehmen.',
    ],

    [
      '{1} does not fit: at the tightest place it stands {2} mm deep in the foam, so make the part larger, move the axis, or take thinner foam.',
      '{1} passt nicht: an der engsten Stelle steht es {2} mm tief im Schaumstoff; das Teil größer machen, die Achse verschieben oder dünneren Schaumstoff nehmen.',
    ],
    [
      '{1} has {2} mm of room at the tightest place, less than the {3} mm wanted.',
      '{1} hat an der engsten Stelle {2} mm Platz, weniger als die gewünschten {3} mm.',
    ],
  ],
  'wear/does-not-go-on': [
    ['{a}, too little for what must pass: {b}.', '{a}, zu wenig für das, was hindurch muss: {b}.'],
  ],
  'wear/joint-hangs-together': [
    [
      '{1} cannot bend: all the foam lies on one side of it or hangs together across it.',
      '{1} kann sich nicht beugen: aller Schaumstoff liegt auf einer Seite oder hängt darüber hinweg zusammen.',
    ],
    [
      'Move the joint between two things of the sculpt that do not touch; what touches there will be glued.',
      'Das Gelenk zwischen zwei Dinge des Modells setzen, die sich nicht berühren; was sich dort berührt, wird verklebt.',
    ],
  ],
  'wear/joint-meets': [
    [
      '{1}: foam meets foam after {2}° of {3}°: cut the edges back there, or leave more room at the joint.',
      '{1}: Schaumstoff stößt nach {2}° von {3}° an Schaumstoff: dort die Kanten zurückschneiden oder am Gelenk mehr Platz lassen.',
    ],
  ],
  'wear/no-air': [
    [
      'It covers the face, and no opening is said to be for air: say where the wearer breathes, or cut openings near mouth and nose.',
      'Es bedeckt das Gesicht, und keine Öffnung ist für Luft vorgesehen: angeben, wo geatmet wird, oder nahe Mund und Nase Öffnungen schneiden.',
    ],
  ],
  'wear/no-sight': [
    [
      'It covers the face, and no opening is said to be for sight: say which one is looked through, or cut one; nobody should walk or work blind in it.',
      'Es bedeckt das Gesicht, und keine Öffnung ist zum Sehen vorgesehen: angeben, durch welche gesehen wird, oder eine schneiden; niemand soll darin blind gehen oder arbeiten.',
    ],
  ],
  'wear/tape-bridges': [
    [
      '{1}: the tape goes straight over an opening, {2} mm wide: the foam ends there and does not hold the body.',
      '{1}: das Maßband geht gerade über eine Öffnung von {2} mm: dort endet der Schaumstoff und hält den Körper nicht.',
    ],
    [
      '{1}: the tape goes straight over {3} openings, {2} mm wide together: the foam ends there and does not hold the body.',
      '{1}: das Maßband geht gerade über {3} Öffnungen, zusammen {2} mm breit: dort endet der Schaumstoff und hält den Körper nicht.',
    ],
  ],
  'wear/tape-misses': [
    [
      'The tape {1} lies beside the part: move its plane until it cuts the part.',
      'Das Maßband {1} liegt neben dem Teil: seine Ebene verschieben, bis sie das Teil schneidet.',
    ],
  ],
  'wear/too-narrow': [
    [
      '{1}: the inside is {2} mm broad where the body is {3} mm: it is too tight that way whatever the girth says, so make the part broader there.',
      '{1}: innen ist es {2} mm breit, wo der Körper {3} mm hat: so herum ist es zu eng, was der Umfang auch sagt; das Teil dort breiter machen.',
    ],
    [
      '{1}: the inside is {2} mm long where the body is {3} mm: it is too tight that way whatever the girth says, so make the part longer there.',
      '{1}: innen ist es {2} mm lang, wo der Körper {3} mm hat: so herum ist es zu eng, was der Umfang auch sagt; das Teil dort länger machen.',
    ],
  ],
  'wear/too-tight': [
    [
      '{1}: the inside comes to {2}, {3} mm less than the body’s {4} mm: make the part larger, take thinner foam, or let it open.',
      '{1}: innen kommen {2} zusammen, {3} mm weniger als die {4} mm des Körpers: das Teil größer machen, dünneren Schaumstoff nehmen oder es öffnen lassen.',
    ],
    [
      '{1}: the inside comes to {2}, {3} mm less than the body’s {4} mm and {5} mm of ease: make the part larger, take thinner foam, or let it open.',
      '{1}: innen kommen {2} zusammen, {3} mm weniger als die {4} mm des Körpers und {5} mm Zugabe: das Teil größer machen, dünneren Schaumstoff nehmen oder es öffnen lassen.',
    ],
  ],
  'clay/all': [
    [
      'With {1} in clay nothing of the sculpt is left to lay flat, so it stays in foam: mark a smaller area.',
      'Mit {1} in Modelliermasse bliebe vom Modell nichts zum Flachlegen, also bleibt es aus Schaumstoff: einen kleineren Bereich anzeichnen.',
    ],
  ],
  'clay/axis': [
    [
      'The axis of the core has no direction: give x, y, z or three numbers that are not all 0.',
      'Die Achse des Kerns hat keine Richtung: x, y, z oder drei Zahlen angeben, die nicht alle 0 sind.',
    ],
  ],
  'clay/base-crosses': [
    [
      "The base across the area's rim runs through the area near {1} mm, so that the volume of clay is rough: mark an area whose rim is nearer to flat.",
      'Der Boden über dem Rand des Bereichs läuft bei {1} mm durch den Bereich, die Menge an Modelliermasse ist nur grob: einen Bereich mit ebenerem Rand anzeichnen.',
    ],
  ],
  'clay/core': [
    [
      '{1} is of clay over {2} {a} of core: {3} cm³ of {4}, at most {5} mm deep, {6} h to dry there.',
      '{1} ist aus Modelliermasse über {2} {a} Kern: {3} cm³ {4}, höchstens {5} mm tief, dort {6} h Trockenzeit.',
    ],
  ],
  'clay/hollow': [
    [
      'The area is flat or a hollow, so that no solid lies under it: mark an area that stands out, or build it up in clay on the foam.',
      'Der Bereich ist flach oder hohl, unter ihm liegt kein Körper: einen Bereich anzeichnen, der vorsteht, oder in Modelliermasse auf dem Schaumstoff aufbauen.',
    ],
  ],
  'clay/many-coats': [
    [
      'The clay is up to {1} mm deep: {2} coats of {3} mm, each dried before the next, take {4} h.',
      'Die Modelliermasse ist bis zu {1} mm tief: {2} Schichten von {3} mm, jede vor der nächsten getrocknet, dauern {4} h.',
    ],
    ['Thinner sheets in the core save clay and time.', 'Dünnere Platten im Kern sparen Masse und Zeit.'],
  ],
  'clay/no-area': [
    [
      'The area has no faces on this sculpt: mark it again.',
      'Der Bereich hat auf diesem Modell keine Flächen: neu anzeichnen.',
    ],
  ],
  'clay/no-core': [
    [
      'No sheet fits under this cover, so the area is of clay alone: take a thinner cover or thinner sheets for a core.',
      'Unter diese Deckschicht passt keine Platte, der Bereich ist nur aus Modelliermasse: für einen Kern eine dünnere Deckschicht oder dünnere Platten nehmen.',
    ],
  ],
  'clay/parts-sculpt': [
    [
      'Without {1}, which is of clay, the foam falls into {2} parts that only its core holds together: mark a smaller area, or fix the core well to each.',
      'Ohne {1} aus Modelliermasse zerfällt der Schaumstoff in {2} Teile, die nur der Kern zusammenhält: einen kleineren Bereich anzeichnen oder den Kern an jedem gut befestigen.',
    ],
  ],
  'clay/rims': [
    [
      'The area ends at {1} rims, and no single core fills it from one of them: mark it in parts that have one rim each.',
      'Der Bereich endet an {1} Rändern, kein einzelner Kern füllt ihn von einem aus: in Teilen anzeichnen, die je einen Rand haben.',
    ],
  ],
  'clay/seams-inside': [
    [
      '1 marked edge lies within what is modelled in clay and is left out: no foam is parted there.',
      '1 angezeichnete Kante liegt in dem, was modelliert wird, und ist weggelassen: dort wird kein Schaumstoff geteilt.',
    ],
    [
      '{1} marked edges lie within what is modelled in clay and are left out: no foam is parted there.',
      '{1} angezeichnete Kanten liegen in dem, was modelliert wird, und sind weggelassen: dort wird kein Schaumstoff geteilt.',
    ],
  ],
  'finish/fillet-lost': [
    [
      'A fillet of {1} mm was wanted along a seam that is no more: mark it again on a seam there is.',
      'Eine Hohlkehle von {1} mm war an einer Naht gewünscht, die es nicht mehr gibt: an einer vorhandenen Naht neu anzeichnen.',
    ],
  ],
  'finish/fillet-none': [
    [
      'Seam {1} is nowhere hollow on its face: no fillet of clay goes there; take it off, or choose a seam with an inner corner.',
      'Naht {1} ist auf der Sichtseite nirgends hohl: dort kommt keine Hohlkehle hin; wegnehmen oder eine Naht mit Innenecke wählen.',
    ],
  ],
  'finish/painted-twice': [
    [
      '{1} goes on all over, and the base colour on top of it: take it out of the coats if the base colour is that paint.',
      '{1} kommt auf alles, und die Grundfarbe darüber: aus den Anstrichen nehmen, wenn die Grundfarbe dieser Anstrich ist.',
    ],
  ],
  'travel/ask-event': [
    [
      'How long a prop may be, and whether it may be put together on the spot, is for each event to say: ask your event.',
      'Wie lang ein Requisit sein darf und ob es an Ort und Stelle zusammengesetzt werden darf, bestimmt jede Veranstaltung: dort nachfragen.',
    ],
  ],
  'travel/magnet-care': [
    [
      'Keep strong magnets away from pacemakers and from children: two that are swallowed can kill.',
      'Starke Magnete von Herzschrittmachern und Kindern fernhalten: zwei verschluckte können töten.',
    ],
  ],
  'travel/many-magnets': [
    [
      '{1} pairs of magnets would be needed at one joint: use a peg and let one pair keep it from slipping out.',
      '{1} Magnetpaare wären an einer Trennstelle nötig: einen Zapfen nehmen und ein Paar ihn am Herausrutschen hindern lassen.',
    ],
  ],
  'travel/no-place': [
    [
      'No joints let the prop into a bag of {1} mm: give a longer bag, shorter pegs, or let fewer stretches stay whole.',
      'Mit keinen Trennstellen passt das Requisit in eine Tasche von {1} mm: eine längere Tasche, kürzere Zapfen oder weniger Strecken, die ganz bleiben.',
    ],
  ],
  'travel/short-peg': [
    [
      'The peg goes in by {1} mm; under {2} times its diameter a joint wobbles: make it longer.',
      'Der Zapfen geht {1} mm hinein; unter dem {2}-Fachen seines Durchmessers wackelt die Verbindung: länger machen.',
    ],
  ],
  'wear/core-larger': [
    [
      '{1} is larger than the part: all of the foam lies within it.',
      '{1} ist größer als das Teil: aller Schaumstoff liegt darin.',
    ],
    ['Check its unit and the size of the part.', 'Seine Einheit und die Größe des Teils prüfen.'],
  ],
};
