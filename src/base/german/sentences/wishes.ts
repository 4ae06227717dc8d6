import type { Sentences } from '../saying.ts';

/** What is said of wishes that cannot be met, of what was ticked, and of what a new version of the sculpt lost. */
export const WISHES: Sentences = {
  'carry/lost': [
    [
      '1 {a} has no place within {2} mm on the new version of the sculpt: {b}.',
      '1 {a} hat auf der neuen Fassung des Modells keinen Platz im Umkreis von {2} mm: {b}.',
    ],
    [
      '{1} {a} have no place within {2} mm on the new version of the sculpt: {b}.',
      '{1} {a} haben auf der neuen Fassung des Modells keinen Platz im Umkreis von {2} mm: {b}.',
    ],
  ],
  'compare/no-source': [
    [
      'The file {1} is not at hand: open it again, then compare.',
      'Die Datei {1} ist nicht zur Hand: wieder öffnen, dann vergleichen.',
    ],
  ],
  'done/changed': [
    [
      '{1} is ticked as cut, but is no longer what was cut (now revision {2}): take the last change back, or release the piece and cut it anew.',
      '{1} ist als geschnitten abgehakt, aber nicht mehr, was geschnitten wurde (jetzt Stand {2}): die letzte Änderung zurücknehmen oder das Stück freigeben und neu schneiden.',
    ],
  ],
  'done/gone': [
    [
      'A piece that is ticked as cut is no more: take the last change back, or forget what was ticked.',
      'Ein Stück, das als geschnitten abgehakt ist, gibt es nicht mehr: die letzte Änderung zurücknehmen oder den Haken vergessen.',
    ],
    [
      '{1} pieces that are ticked as cut are no more: take the last change back, or forget what was ticked.',
      '{1} Stücke, die als geschnitten abgehakt sind, gibt es nicht mehr: die letzte Änderung zurücknehmen oder die Haken vergessen.',
    ],
  ],
  'done/stale': [
    [
      'Printed paper is out of date for {1}: save the pages of what changed, and throw the old ones away.',
      'Gedrucktes Papier ist überholt für {1}: die Seiten des Geänderten speichern und die alten wegwerfen.',
    ],
  ],
  'wish/area-in-part': [
    [
      'Of the {1} faces of the area “{2}” the sculpt lacks {3} ({4}, counted from 0), and what is said holds for the rest alone: mark the area anew if it should be larger.',
      'Von den {1} Flächen des Bereichs „{2}“ fehlen dem Modell {3} ({4}, von 0 gezählt); was gesagt ist, gilt nur für den Rest: den Bereich neu anzeichnen, wenn er größer sein soll.',
    ],
  ],
  'wish/no-foam-edge': [
    [
      'The edge {a} is to {b}, but the foam has no edge there: part it there, or forget the wish.',
      'Die Kante {a} soll {b}, der Schaumstoff hat dort aber keine Kante: dort teilen oder den Wunsch vergessen.',
    ],
  ],
  'wish/no-seam': [
    [
      'The seam through {a} is to {b}, but the foam is not parted there: part it there, or forget the wish.',
      'Die Naht durch {a} soll {b}, der Schaumstoff ist dort aber nicht geteilt: dort teilen oder den Wunsch vergessen.',
    ],
    [
      'The seam through {a} is to {b}, but that is an open edge of the foam, with nothing to meet: forget the wish.',
      'Die Naht durch {a} soll {b}, das ist aber eine offene Kante des Schaumstoffs, an der nichts liegt: den Wunsch vergessen.',
    ],
  ],
  'wish/no-such-area': [
    [
      'The area “{1}” {a}, but names no face: forget it, or mark it anew.',
      'Der Bereich „{1}“ {a}, nennt aber keine Fläche: vergessen oder neu anzeichnen.',
    ],
    [
      'The area “{1}” {a}, but names no face of the sculpt ({2}, counted from 0): forget it, or mark it anew.',
      'Der Bereich „{1}“ {a}, nennt aber keine Fläche des Modells ({2}, von 0 gezählt): vergessen oder neu anzeichnen.',
    ],
  ],
  'wish/no-such-edge': [
    [
      'The edge {a} is to {b}, but the sculpt has no such edge: forget the wish, or say it of the edge you mean.',
      'Die Kante {a} soll {b}, das Modell hat aber keine solche Kante: den Wunsch vergessen oder an die gemeinte Kante richten.',
    ],
    [
      'The seam through {a} is to {b}, but the sculpt has no such edge: forget the wish, or say it of the seam you mean.',
      'Die Naht durch {a} soll {b}, das Modell hat aber keine solche Kante: den Wunsch vergessen oder an die gemeinte Naht richten.',
    ],
  ],
  'wish/no-such-piece': [
    [
      'What was wished for the piece with face {1} of the file (counted from 0) is lost, because the sculpt has no such face: forget it, or say it of the piece you mean.',
      'Was für das Stück mit Fläche {1} der Datei (von 0 gezählt) gewünscht war, ist verloren, denn das Modell hat keine solche Fläche: vergessen oder für das gemeinte Stück wünschen.',
    ],
    [
      'What was wished for the piece “{2}” with face {1} of the file (counted from 0) is lost, because the sculpt has no such face: forget it, or say it of the piece you mean.',
      'Was für das Stück „{2}“ mit Fläche {1} der Datei (von 0 gezählt) gewünscht war, ist verloren, denn das Modell hat keine solche Fläche: vergessen oder für das gemeinte Stück wünschen.',
    ],
  ],
  'wish/no-such-side': [
    [
      'Seam {1} is to have the piece with face {2} of the file (counted from 0) stand on its neighbour, but neither of its sides is that piece: choose the side anew.',
      'An Naht {1} soll das Stück mit Fläche {2} der Datei (von 0 gezählt) auf dem Nachbarn stehen, aber keine ihrer Seiten ist dieses Stück: die Seite neu wählen.',
    ],
    [
      'Seam {1} is to carry its allowance on the piece with face {2} of the file (counted from 0), but neither of its sides is that piece: choose the side anew.',
      'Naht {1} soll ihre Zugabe am Stück mit Fläche {2} der Datei (von 0 gezählt) tragen, aber keine ihrer Seiten ist dieses Stück: die Seite neu wählen.',
    ],
  ],
  'wish/nothing-holds': [
    [
      'Seam {1} through {a} is to hold its length, but seam lengths have no price, so nothing holds it: give “seam lengths against stretch” more than 0, or forget the wish.',
      'Naht {1} durch {a} soll ihre Länge halten, Nahtlängen haben aber kein Gewicht, also hält sie nichts: „Nahtlängen gegen Dehnung“ höher als 0 setzen oder den Wunsch vergessen.',
    ],
    [
      'The open edge through {a} is to hold its length, but seam lengths have no price, so nothing holds it: give “seam lengths against stretch” more than 0, or forget the wish.',
      'Die offene Kante durch {a} soll ihre Länge halten, Nahtlängen haben aber kein Gewicht, also hält sie nichts: „Nahtlängen gegen Dehnung“ höher als 0 setzen oder den Wunsch vergessen.',
    ],
  ],
  'wish/shrinkage-unknown': [
    [
      'Pieces are to be cut larger for shrinkage, but it is not known what {1} loses, so they are not: warm a square of {2} mm and enter what it loses along and across, or forget the wish.',
      'Stücke sollen wegen des Schrumpfens größer geschnitten werden, aber was {1} verliert, ist nicht bekannt, also bleiben sie: ein Quadrat von {2} mm erwärmen und eintragen, was es längs und quer verliert, oder den Wunsch vergessen.',
    ],
  ],
  'wish/straight-costs': [
    ['Seam {1} of {2} is to be straight, but {a}: {b}.', 'Naht {1} von {2} soll gerade sein, sie {a}: {b}.'],
    [
      'The open edge of {2} is to be straight, but {a}: {b}.',
      'Die offene Kante von {2} soll gerade sein, sie {a}: {b}.',
    ],
    [
      'Let it curve, or part the piece where the edge turns.',
      'Gebogen lassen oder das Stück teilen, wo die Kante dreht.',
    ],
  ],
  'wish/straight-ring': [
    [
      'Seam {1} through {a} is to be straight, but closes in a ring: let a seam run into it from each piece that lies along it, or let it curve.',
      'Naht {1} durch {a} soll gerade sein, schließt sich aber zum Ring: von jedem Stück an ihr eine Naht hineinlaufen lassen oder sie gebogen lassen.',
    ],
    [
      'The open edge through {a} is to be straight, but closes in a ring: let a seam run into it from each piece that lies along it, or let it curve.',
      'Die offene Kante durch {a} soll gerade sein, schließt sich aber zum Ring: von jedem Stück an ihr eine Naht hineinlaufen lassen oder sie gebogen lassen.',
    ],
  ],
};
