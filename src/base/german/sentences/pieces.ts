import type { Sentences } from '../saying.ts';

/** What is said while a sculpt is parted, laid flat and put together again. */
export const PIECES: Sentences = {
  'cut/closed': [
    [
      'A closed surface cannot be laid flat: it needs at least one seam along a line that opens it.',
      'Eine geschlossene Oberfläche lässt sich nicht flach legen: sie braucht mindestens eine Naht, die sie öffnet.',
    ],
    [
      'A closed surface with {a} cannot be laid flat: it needs at least {1} seams that each go all the way round.',
      'Eine geschlossene Oberfläche mit {a} lässt sich nicht flach legen: sie braucht mindestens {1} Nähte, die jede ganz herumgehen.',
    ],
  ],
  'cut/handle': [
    [
      'A piece has 1 handle like a mug and cannot be laid flat: it needs at least {2} seams round and along it.',
      'Ein Stück hat 1 Henkel wie eine Tasse und lässt sich nicht flach legen: es braucht mindestens {2} Nähte um ihn herum und an ihm entlang.',
    ],
    [
      'A piece has {1} handles like a mug and cannot be laid flat: it needs at least {2} seams round and along them.',
      'Ein Stück hat {1} Henkel wie eine Tasse und lässt sich nicht flach legen: es braucht mindestens {2} Nähte um sie herum und an ihnen entlang.',
    ],
  ],
  'cut/nothing-flat': [
    ['Nothing can be laid flat yet: mark a seam.', 'Noch lässt sich nichts flach legen: eine Naht anzeichnen.'],
  ],
  'cut/stagger-crease': [
    [
      'Seam {1} of a staggered sheet stays over the seam of the sheet that is seen: a sheet does not bend over the crease it runs along.',
      'Naht {1} einer versetzten Lage bleibt über der Naht der sichtbaren Lage: eine Platte biegt sich nicht über den Knick, an dem sie entlangläuft.',
    ],
    [
      'Seams {1} of a staggered sheet stay over the seam of the sheet that is seen: a sheet does not bend over the crease it runs along.',
      'Die Nähte {1} einer versetzten Lage bleiben über der Naht der sichtbaren Lage: eine Platte biegt sich nicht über den Knick, an dem sie entlangläuft.',
    ],
    ['Glue there with care.', 'Dort sorgfältig kleben.'],
  ],
  'cut/stagger-dart': [
    [
      'Seam {1} of a staggered sheet stays over the seam of the sheet that is seen: a seam that ends inside a piece cannot go elsewhere.',
      'Naht {1} einer versetzten Lage bleibt über der Naht der sichtbaren Lage: eine Naht, die in einem Stück endet, kann nirgends anders hin.',
    ],
    [
      'Seams {1} of a staggered sheet stay over the seam of the sheet that is seen: a seam that ends inside a piece cannot go elsewhere.',
      'Die Nähte {1} einer versetzten Lage bleiben über der Naht der sichtbaren Lage: eine Naht, die in einem Stück endet, kann nirgends anders hin.',
    ],
  ],
  'cut/stagger-form': [
    [
      'Seam {1} of a staggered sheet stays over the seam of the sheet that is seen: moved by {2} mm, a piece would come apart, close to a ring, or end in an edge too short to cut.',
      'Naht {1} einer versetzten Lage bleibt über der Naht der sichtbaren Lage: um {2} mm versetzt zerfiele ein Stück, schlösse sich zum Ring oder endete in einer Kante, die zum Schneiden zu kurz ist.',
    ],
    [
      'Seams {1} of a staggered sheet stay over the seam of the sheet that is seen: moved by {2} mm, a piece would come apart, close to a ring, or end in an edge too short to cut.',
      'Die Nähte {1} einer versetzten Lage bleiben über der Naht der sichtbaren Lage: um {2} mm versetzt zerfiele ein Stück, schlösse sich zum Ring oder endete in einer Kante, die zum Schneiden zu kurz ist.',
    ],
    ['Give the sheet less, or part it otherwise there.', 'Die Lage weniger versetzen oder dort anders teilen.'],
  ],
  'cut/stagger-narrow': [
    [
      'Seam {1} of a staggered sheet stays over the seam of the sheet that is seen: the piece beside it is too narrow for {2} mm, {3} mm beside it would work; give the sheet that, or a wider piece.',
      'Naht {1} einer versetzten Lage bleibt über der Naht der sichtbaren Lage: das Stück daneben ist für {2} mm zu schmal, mit {3} mm ginge es; die Lage um so viel versetzen oder ein breiteres Stück machen.',
    ],
    [
      'Seam {1} of a staggered sheet stays over the seam of the sheet that is seen: the piece beside it is too narrow for {2} mm, no distance works there; give the sheet a wider piece.',
      'Naht {1} einer versetzten Lage bleibt über der Naht der sichtbaren Lage: das Stück daneben ist für {2} mm zu schmal, dort geht kein Abstand; ein breiteres Stück machen.',
    ],
  ],
  'cut/window': [
    [
      'A piece has {1} hole in it: fine for a window, but a ring or a tube needs a cut from edge to edge before it lies flat.',
      'Ein Stück hat {1} Loch: gut für ein Fenster, aber ein Ring oder Rohr braucht einen Schnitt von Kante zu Kante, bevor es flach liegt.',
    ],
    [
      'A piece has {1} holes in it: fine for a window, but a ring or a tube needs a cut from edge to edge before it lies flat.',
      'Ein Stück hat {1} Löcher: gut für Fenster, aber ein Ring oder Rohr braucht einen Schnitt von Kante zu Kante, bevor es flach liegt.',
    ],
  ],
  'dryfit/corner': [
    [
      'Put together, the corners of {1} and {2} run up to {3} mm into each other: they share no seam there, so trim one against the other when the pieces between them are in place.',
      'Zusammengesetzt laufen die Ecken von {1} und {2} bis zu {3} mm ineinander: sie teilen dort keine Naht; eine an der anderen anpassen, wenn die Stücke dazwischen sitzen.',
    ],
    [
      'Put together, the corners of {1} and {2} run up to {3} mm into each other, the worst of {4} such corners: they share no seam there, so trim one against the other when the pieces between them are in place.',
      'Zusammengesetzt laufen die Ecken von {1} und {2} bis zu {3} mm ineinander, die schlimmste von {4} solchen Ecken: sie teilen dort keine Naht; eine an der anderen anpassen, wenn die Stücke dazwischen sitzen.',
    ],
  ],
  'dryfit/gap': [
    [
      'Put together, the edges of seam {1} stand up to {2} mm apart on the {a}: fill the place or use thinner foam, or move the seam where the surface bends less.',
      'Zusammengesetzt stehen die Kanten von Naht {1} auf der {a} bis zu {2} mm auseinander: die Stelle füllen, dünneren Schaumstoff nehmen oder die Naht dorthin legen, wo sich die Oberfläche weniger biegt.',
    ],
    [
      'Put together, the edges of seam {1} run up to {2} mm into each other on the {a}: sand the place down until it closes, or move the seam where the surface bends less.',
      'Zusammengesetzt laufen die Kanten von Naht {1} auf der {a} bis zu {2} mm ineinander: die Stelle abschleifen, bis sie schließt, oder die Naht dorthin legen, wo sich die Oberfläche weniger biegt.',
    ],
    [
      'Put together, the edges of seam {1} stand up to {2} mm apart on the {a}, because {b}.',
      'Zusammengesetzt stehen die Kanten von Naht {1} auf der {a} bis zu {2} mm auseinander, denn {b}.',
    ],
    [
      'Put together, the edges of seam {1} run up to {2} mm into each other on the {a}, because {b}.',
      'Zusammengesetzt laufen die Kanten von Naht {1} auf der {a} bis zu {2} mm ineinander, denn {b}.',
    ],
    [
      'Use thinner foam, or end the pieces before that place and carve it of solid foam.',
      'Dünneren Schaumstoff nehmen oder die Stücke vor dieser Stelle enden lassen und sie aus vollem Schaumstoff schnitzen.',
    ],
  ],
  'dryfit/springing': [
    [
      'The foam wants to spring open most at seam {1}: warm and form the pieces there first, or tape the joints while the glue sets (a guide, for foam bent cold that is all elastic).',
      'Am stärksten will der Schaumstoff an Naht {1} aufspringen: die Stücke dort zuerst erwärmen und formen oder die Fugen mit Klebeband sichern, bis der Kleber fest ist (ein Anhalt, für kalt gebogenen, ganz elastischen Schaumstoff).',
    ],
    [
      'The foam wants to spring open most at seams {1}: warm and form the pieces there first, or tape the joints while the glue sets (a guide, for foam bent cold that is all elastic).',
      'Am stärksten will der Schaumstoff an den Nähten {1} aufspringen: die Stücke dort zuerst erwärmen und formen oder die Fugen mit Klebeband sichern, bis der Kleber fest ist (ein Anhalt, für kalt gebogenen, ganz elastischen Schaumstoff).',
    ],
  ],
  'files/unfinished': [
    ['A piece cannot be laid flat yet: part it first.', 'Ein Stück lässt sich noch nicht flach legen: zuerst teilen.'],
  ],
  'flatten/no-area': [
    [
      'A piece made only of faces without area cannot be cut: drop the empty faces.',
      'Ein Stück nur aus Flächen ohne Inhalt lässt sich nicht schneiden: die leeren Flächen weglassen.',
    ],
  ],
  'flatten/no-start': [
    [
      'A limb of this piece is too long and thin to lay flat: mark a seam along it.',
      'Ein Arm dieses Stücks ist zu lang und dünn zum Flachlegen: eine Naht an ihm entlang anzeichnen.',
    ],
  ],
  'flatten/not-flat-able': [
    [
      'A piece without an edge, or with a handle, cannot be laid flat: part it first.',
      'Ein Stück ohne Rand oder mit einem Henkel lässt sich nicht flach legen: zuerst teilen.',
    ],
  ],
  'flatten/too-large': [
    [
      'A piece of so many triangles is more than memory holds: part it, or thin out its mesh.',
      'Ein Stück aus so vielen Dreiecken passt nicht in den Speicher: teilen oder sein Netz ausdünnen.',
    ],
  ],
  'raised/left-out': [
    [
      'The raised sheet on {1} cannot be made and is left out: {a}',
      'Die aufgesetzte Platte auf {1} lässt sich nicht machen und ist weggelassen: {a}',
    ],
  ],
  'seams/lost': [
    [
      '1 marked edge is no longer part of the sculpt and left out: mark the seam again where it is missing (corners {2}).',
      '1 angezeichnete Kante gehört nicht mehr zum Modell und ist weggelassen: die Naht neu anzeichnen, wo sie fehlt (Ecken {2}).',
    ],
    [
      '{1} marked edges are no longer part of the sculpt and left out: mark the seam again where it is missing (corners {2}).',
      '{1} angezeichnete Kanten gehören nicht mehr zum Modell und sind weggelassen: die Naht neu anzeichnen, wo sie fehlt (Ecken {2}).',
    ],
  ],
  'seams/missed': [
    [
      'The plane does not cut the sculpt there: move it onto the sculpt.',
      'Die Ebene schneidet das Modell dort nicht: auf das Modell schieben.',
    ],
  ],
  'seams/no-edge': [
    [
      'In {1} both corners lie on one spot: take it out of the file.',
      'In {1} liegen beide Ecken an einer Stelle: aus der Datei nehmen.',
    ],
    [
      'In {1} the two corners are not joined by an edge: seams follow the edges of the model.',
      'In {1} sind die beiden Ecken durch keine Kante verbunden: Nähte folgen den Kanten des Modells.',
    ],
  ],
  'seams/no-path': [
    [
      'No line leads from one place to the other: they lie on separate surfaces.',
      'Keine Linie führt von der einen Stelle zur anderen: sie liegen auf getrennten Oberflächen.',
    ],
    [
      'No edges lead from one point to the other: they lie on separate surfaces.',
      'Keine Kanten führen von dem einen Punkt zum anderen: sie liegen auf getrennten Oberflächen.',
    ],
    [
      'Points {1} and {2} of path {3} lie on separate surfaces, so no line leads from one to the other: draw it on one surface.',
      'Die Punkte {1} und {2} der Linie {3} liegen auf getrennten Oberflächen, keine Linie führt vom einen zum anderen: auf einer Oberfläche zeichnen.',
    ],
  ],
  'seams/no-sculpt': [['Open a sculpt first.', 'Zuerst ein Modell öffnen.']],
  'seams/no-section': [
    [
      'The plane only touches the sculpt at this place: pick another place or turn the plane.',
      'Die Ebene berührt das Modell an dieser Stelle nur: eine andere Stelle wählen oder die Ebene drehen.',
    ],
  ],
  'seams/no-vertex': [
    [
      'In {1} corner {2} is not used by any face of the model (corners are counted from 0 to {3}).',
      'In {1} wird Ecke {2} von keiner Fläche des Modells benutzt (Ecken zählen von 0 bis {3}).',
    ],
  ],
  'seams/not-proven-shortest': [
    [
      'This line is shorter than all near it; the sculpt has too many triangles to tell whether it is the shortest of all.',
      'Diese Linie ist kürzer als alle in ihrer Nähe; das Modell hat zu viele Dreiecke, um zu sagen, ob sie die kürzeste von allen ist.',
    ],
  ],
  'seams/path-short': [
    [
      'Path {1} has fewer than two points: give it two or more, or take it out.',
      'Linie {1} hat weniger als zwei Punkte: ihr zwei oder mehr geben oder sie wegnehmen.',
    ],
  ],
  'seams/too-many-planes': [
    [
      'At {1} mm apart {2} planes meet the sculpt: give a distance of at least {3} mm.',
      'Im Abstand von {1} mm treffen {2} Ebenen das Modell: einen Abstand von mindestens {3} mm angeben.',
    ],
  ],
  'shell/corner-of-many-planes': [
    [
      'At {a} more than three panels meet that no single inner point suits: expect to trim up to {1} mm on the inside there.',
      'An {a} treffen sich mehr als drei Felder, denen kein einzelner innerer Punkt passt: dort innen mit bis zu {1} mm Nachschneiden rechnen.',
    ],
  ],
  'shell/corner-trimmed': [
    [
      'At {a} more than three panels meet that no single inner point suits: the templates are trimmed by up to {1} mm there, so cut small corners as drawn.',
      'An {a} treffen sich mehr als drei Felder, denen kein einzelner innerer Punkt passt: die Schablonen sind dort um bis zu {1} mm beschnitten, kleine Ecken schneiden, wie gezeichnet.',
    ],
  ],
  'shell/folds-over': [
    [
      'The {a} of {1} mm foam folds over itself at {b} where the sculpt is tighter than the foam is thick: use at most {3} mm there, or smooth the sculpt.',
      'Die {a} des Schaumstoffs von {1} mm faltet sich an {b} über sich selbst, wo das Modell enger ist als der Schaumstoff dick: dort höchstens {3} mm nehmen oder das Modell glätten.',
    ],
    [
      'The {a} of {1} mm foam folds over itself at {b} where the sculpt is tighter than the foam is thick: use thinner or fewer sheets of foam there, or smooth the sculpt.',
      'Die {a} des Schaumstoffs von {1} mm faltet sich an {b} über sich selbst, wo das Modell enger ist als der Schaumstoff dick: dort dünnere oder weniger Platten nehmen oder das Modell glätten.',
    ],
  ],
  'shell/no-room': [
    [
      'Foam {1} mm thick runs into foam of another side of the sculpt at {b}: use at most {3} mm in all there, or move the two sides of the sculpt apart.',
      'Schaumstoff von {1} mm läuft an {b} in den Schaumstoff einer anderen Seite des Modells: dort insgesamt höchstens {3} mm nehmen oder die beiden Seiten des Modells auseinander rücken.',
    ],
    [
      'Foam {1} mm thick runs into foam of another side of the sculpt at {b}: there is no room for foam there, or move the two sides of the sculpt apart.',
      'Schaumstoff von {1} mm läuft an {b} in den Schaumstoff einer anderen Seite des Modells: dort ist kein Platz für Schaumstoff; die beiden Seiten des Modells auseinander rücken.',
    ],
  ],
  'shell/spike': [
    [
      '1 spike is too sharp for foam of this thickness and was blunted on the far side: part the foam there, or round the sculpt.',
      '1 Spitze ist zu scharf für so dicken Schaumstoff und wurde auf der anderen Seite gekappt: den Schaumstoff dort teilen oder das Modell runden.',
    ],
    [
      '{1} spikes are too sharp for foam of this thickness and were blunted on the far side: part the foam there, or round the sculpt.',
      '{1} Spitzen sind zu scharf für so dicken Schaumstoff und wurden auf der anderen Seite gekappt: den Schaumstoff dort teilen oder das Modell runden.',
    ],
  ],
  'seams/path-point': [
    [
      'Point {1} of path {2} is corner {3}, which no face of the model uses (corners are counted from 0 to {4}).',
      'Punkt {1} der Linie {2} ist Ecke {3}, die keine Fläche des Modells benutzt (Ecken zählen von 0 bis {4}).',
    ],
    [
      'Point {1} of path {2} lies on face {3}, which the model does not have (faces are counted from 0 to {4}).',
      'Punkt {1} der Linie {2} liegt auf Fläche {3}, die das Modell nicht hat (Flächen zählen von 0 bis {4}).',
    ],
    [
      'Point {1} of path {2} has weights that are not all 0 or more and 1 together: give each corner of face {3} its share.',
      'Punkt {1} der Linie {2} hat Gewichte, die nicht alle mindestens 0 und zusammen 1 sind: jeder Ecke der Fläche {3} ihren Anteil geben.',
    ],
    [
      'Point {1} of path {2} has {3} weights for the {4} corners of face {5}: give each corner one.',
      'Punkt {1} der Linie {2} hat {3} Gewichte für die {4} Ecken der Fläche {5}: jeder Ecke eines geben.',
    ],
  ],
};
