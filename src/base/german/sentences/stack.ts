import type { Sentences } from '../saying.ts';

/** What is said of solids that are glued up of sheets. */
export const STACK: Sentences = {
  'stack/apart': [
    [
      'The stack falls into {1} parts, for where layers do not lie on each other nothing holds them: {a} is glued to no other piece.',
      'Der Stapel zerfällt in {1} Teile, denn wo Lagen nicht aufeinander liegen, hält sie nichts: {a} ist mit keinem anderen Stück verklebt.',
    ],
    [
      'The stack falls into {1} parts, for where layers do not lie on each other nothing holds them: {a} are glued to no other piece.',
      'Der Stapel zerfällt in {1} Teile, denn wo Lagen nicht aufeinander liegen, hält sie nichts: {a} sind mit keinem anderen Stück verklebt.',
    ],
    [
      'The model has {1} surfaces of its own that may lie apart; else take the larger face, thinner sheets or another axis.',
      'Das Modell hat {1} eigene Oberflächen, die getrennt liegen dürfen; sonst die größere Fläche, dünnere Platten oder eine andere Achse nehmen.',
    ],
    [
      'Take the larger face, thinner sheets or another axis.',
      'Die größere Fläche, dünnere Platten oder eine andere Achse nehmen.',
    ],
  ],
  'stack/axis': [
    [
      'The axis has no direction: give x, y, z or three numbers that are not all 0.',
      'Die Achse hat keine Richtung: x, y, z oder drei Zahlen angeben, die nicht alle 0 sind.',
    ],
  ],
  'stack/empty': [
    [
      'The surface holds no volume: a stack needs a solid.',
      'Die Oberfläche schließt keinen Raum ein: ein Stapel braucht einen Körper.',
    ],
  ],
  'stack/empty-layer': [
    [
      'Nothing is left of {a} by the middle: take thinner sheets there, or build it up.',
      'Nach der Mitte bleibt von {a} nichts: dort dünnere Platten nehmen oder auffüllen.',
    ],
    [
      'Nothing is left of {a} by the smaller face: take thinner sheets there, or build it up.',
      'Nach der kleineren Fläche bleibt von {a} nichts: dort dünnere Platten nehmen oder auffüllen.',
    ],
    [
      'Nothing is left of {a} by the larger face: take thinner sheets there, or build it up.',
      'Nach der größeren Fläche bleibt von {a} nichts: dort dünnere Platten nehmen oder auffüllen.',
    ],
  ],
  'stack/hangs': [
    [
      'Nothing lies under piece {1}: glue it under the next layer before that is set down.',
      'Unter Stück {1} liegt nichts: unter die nächste Lage kleben, bevor sie aufgesetzt wird.',
    ],
    [
      'Nothing lies under pieces {1}: glue each under the next layer before that is set down.',
      'Unter den Stücken {1} liegt nichts: jedes unter die nächste Lage kleben, bevor sie aufgesetzt wird.',
    ],
  ],
  'stack/height': [
    [
      'The layers come to {1} mm less than the solid: fill the rest, or add another thickness of sheet.',
      'Die Lagen ergeben {1} mm weniger als der Körper: den Rest füllen oder eine weitere Plattendicke zufügen.',
    ],
    [
      'The layers come to {1} mm less than the solid: fill the rest, or add another thickness of sheet, or take the larger face.',
      'Die Lagen ergeben {1} mm weniger als der Körper: den Rest füllen, eine weitere Plattendicke zufügen oder die größere Fläche nehmen.',
    ],
    [
      'The layers come to {1} mm more than the solid: sand the rest off, or add another thickness of sheet.',
      'Die Lagen ergeben {1} mm mehr als der Körper: den Rest abschleifen oder eine weitere Plattendicke zufügen.',
    ],
  ],
  'stack/inside-out': [
    [
      'The surface is inside out: turn its faces round, so that they look outward.',
      'Die Oberfläche ist umgestülpt: ihre Flächen wenden, damit sie nach außen schauen.',
    ],
  ],
  'stack/layers': [
    [
      'There would be more than {1} layers: take thicker sheets, or check the size of the model.',
      'Es wären mehr als {1} Lagen: dickere Platten nehmen oder die Größe des Modells prüfen.',
    ],
  ],
  'stack/narrow': [
    ['Nowhere as wide as {1} mm: {a}.', 'Nirgends {1} mm breit: {a}.'],
    [
      'Cut it larger and sand, or leave it to filler.',
      'Größer schneiden und schleifen oder der Spachtelmasse überlassen.',
    ],
    [
      'Cut them larger and sand, or leave them to filler.',
      'Größer schneiden und schleifen oder der Spachtelmasse überlassen.',
    ],
  ],
  'stack/no-core': [
    [
      'No sheet fits under the cover: the solid is {1} mm high along the axis.',
      'Unter die Deckschicht passt keine Platte: der Körper ist längs der Achse {1} mm hoch.',
    ],
    [
      'Take a thinner cover or thinner sheets, or build it of clay alone.',
      'Eine dünnere Deckschicht oder dünnere Platten nehmen oder nur aus Modelliermasse bauen.',
    ],
  ],
  'stack/no-core-room': [
    [
      'The core has no room in {a}, which has no hole for it: end the core there, or move it.',
      'Der Kern hat in {a} keinen Platz, dort ist kein Loch für ihn: den Kern dort enden lassen oder verschieben.',
    ],
    [
      'The core has no room in {a}, which have no hole for it: end the core there, or move it.',
      'Der Kern hat in {a} keinen Platz, dort ist kein Loch für ihn: den Kern dort enden lassen oder verschieben.',
    ],
  ],
  'stack/no-dowel-room': [
    [
      'There is no room for two dowels in every part where these layers meet: {1}.',
      'Wo sich diese Lagen treffen, ist nicht in jedem Teil Platz für zwei Dübel: {1}.',
    ],
    [
      'Set them down by the placing lines, or take thinner dowels.',
      'Nach den Anlegelinien aufsetzen oder dünnere Dübel nehmen.',
    ],
  ],
  'stack/not-hollow': [
    [
      'No hollow with a wall of {1} mm fits into {a}, so it stays whole.',
      'Kein Hohlraum mit einer Wand von {1} mm findet in {a} Platz, dort bleibt alles voll.',
    ],
    [
      'No hollow with a wall of {1} mm fits into {a}, so they stay whole.',
      'Kein Hohlraum mit einer Wand von {1} mm findet in {a} Platz, dort bleibt alles voll.',
    ],
  ],
  'stack/overlap': [
    [
      'The surface runs through itself: about {1} cm³ are counted twice in the volumes of the solid and of sanding; the outlines are right.',
      'Die Oberfläche läuft durch sich selbst: etwa {1} cm³ sind im Raum des Körpers und des Schleifens doppelt gezählt; die Umrisse stimmen.',
    ],
    ['Unite the bodies first where the volumes matter.', 'Die Körper zuerst vereinen, wenn es auf den Raum ankommt.'],
  ],
  'stack/too-low': [
    [
      'The solid is {1} mm high, less than the thinnest sheet: take thinner sheets, or the larger face.',
      'Der Körper ist {1} mm hoch, weniger als die dünnste Platte: dünnere Platten oder die größere Fläche nehmen.',
    ],
  ],
  'stack/web': [
    ['Held together by a web under {1} mm: {a}.', 'Von einem Steg unter {1} mm zusammengehalten: {a}.'],
    [
      'Glue the layer down before you lift it, or take a thicker wall, larger margin or thinner dowel.',
      'Die Lage vor dem Abheben aufkleben oder eine dickere Wand, mehr Abstand oder einen dünneren Dübel nehmen.',
    ],
  ],
  'stack/hollow-shut': [
    [
      'The hollow of {a} is shut {b} by whole foam: let the glue air before the last layer goes on, or open an end where the inside is to be reached.',
      'Der Hohlraum in {a} ist {b} von vollem Schaumstoff verschlossen: den Kleber auslüften lassen, bevor die letzte Lage kommt, oder ein Ende öffnen, wo das Innere erreichbar sein soll.',
    ],
  ],
  'stack/open': [
    [
      'The surface is not closed: 1 side of a triangle has no neighbour, the first at {2} mm, so that inside and outside cannot be told; close the holes first.',
      'Die Oberfläche ist nicht geschlossen: 1 Seite eines Dreiecks hat keinen Nachbarn, bei {2} mm; innen und außen sind nicht zu unterscheiden, zuerst die Löcher schließen.',
    ],
    [
      'The surface is not closed: {1} sides of triangles have no neighbour, the first at {2} mm, so that inside and outside cannot be told; close the holes first.',
      'Die Oberfläche ist nicht geschlossen: {1} Seiten von Dreiecken haben keinen Nachbarn, die erste bei {2} mm; innen und außen sind nicht zu unterscheiden, zuerst die Löcher schließen.',
    ],
  ],
  'stack/sheets': [
    [
      'A sheet has no thickness: give thicknesses in mm over 0, as {1}.',
      'Eine Platte hat keine Dicke: Dicken in mm über 0 angeben, etwa {1}.',
    ],
  ],
};
