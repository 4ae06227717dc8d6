import type { Sentences } from '../saying.ts';

/** What is said of a file that is read as a sculpt and of its faces. */
export const READ: Sentences = {
  'read/bad-index': [
    [
      'The face on line {1} names “{2}” where the number of a vertex belongs: export the sculpt again as OBJ.',
      'Die Fläche in Zeile {1} nennt „{2}“, wo die Nummer einer Ecke stehen muss: das Modell neu als OBJ ausgeben.',
    ],
  ],
  'read/bad-number': [
    ['The vertex {a} has “{1}” where a number belongs: {b}.', 'Die Ecke {a} hat „{1}“, wo eine Zahl stehen muss: {b}.'],
  ],
  'read/bent-faces': [
    [
      '1 face of the sculpt is not flat and had to be cut into triangles; {a}. Cut it in your modelling program if the fold matters.',
      '1 Fläche des Modells ist nicht eben und musste in Dreiecke zerlegt werden; {a}. Im 3D-Programm zerlegen, wenn es auf den Falz ankommt.',
    ],
    [
      '{1} faces of the sculpt are not flat and had to be cut into triangles; {a}. Cut them in your modelling program if the fold matters.',
      '{1} Flächen des Modells sind nicht eben und mussten in Dreiecke zerlegt werden; {a}. Im 3D-Programm zerlegen, wenn es auf den Falz ankommt.',
    ],
  ],
  'read/corner-twice': [
    [
      '1 face has the same corner twice in a row ({a}), which was read as if it stood there once.',
      '1 Fläche hat dieselbe Ecke zweimal hintereinander ({a}); sie wurde gelesen, als stünde sie einmal da.',
    ],
    [
      '{1} faces have the same corner twice in a row ({a}), which was read as if it stood there once.',
      '{1} Flächen haben dieselbe Ecke zweimal hintereinander ({a}); sie wurde gelesen, als stünde sie einmal da.',
    ],
  ],
  'read/crossing-unknown': [
    [
      'So many triangles crowd together that the search for places where the sculpt runs through itself was stopped: look it over yourself.',
      'So viele Dreiecke drängen sich zusammen, dass die Suche nach Stellen abgebrochen wurde, an denen das Modell durch sich selbst läuft: das Modell selbst durchsehen.',
    ],
  ],
  'read/doubled-faces': [
    [
      '1 face has the same corners as another one: drop it (repair: drop doubled).',
      '1 Fläche hat dieselben Ecken wie eine andere: weglassen.',
    ],
    [
      '{1} faces have the same corners as another one: drop them (repair: drop doubled).',
      '{1} Flächen haben dieselben Ecken wie eine andere: weglassen.',
    ],
  ],
  'read/empty': [
    ['The file is empty: save or copy it again.', 'Die Datei ist leer: noch einmal speichern oder kopieren.'],
  ],
  'read/empty-faces': [
    ['1 face has no area: drop it (repair: drop empty).', '1 Fläche hat keinen Inhalt: weglassen.'],
    ['{1} faces have no area: drop them (repair: drop empty).', '{1} Flächen haben keinen Inhalt: weglassen.'],
  ],
  'read/face-left-out': [
    [
      '1 face has two corners on one spot and was left out ({a}): look for a hole there.',
      '1 Fläche hat zwei Ecken an einer Stelle und wurde weggelassen ({a}): dort nach einem Loch sehen.',
    ],
    [
      '{1} faces have two corners on one spot and were left out ({a}): look for a hole there.',
      '{1} Flächen haben zwei Ecken an einer Stelle und wurden weggelassen ({a}): dort nach einem Loch sehen.',
    ],
  ],
  'read/face-too-large': [
    [
      'The face on line {1} has {2} corners, and {3} is the most: let your modelling program cut it into triangles.',
      'Die Fläche in Zeile {1} hat {2} Ecken, erlaubt sind {3}: im 3D-Programm in Dreiecke zerlegen.',
    ],
  ],
  'read/far-from-origin': [
    [
      'The sculpt lies so far from the origin that single precision blurs its corners, so only exactly equal ones were joined: move it to the origin in your modelling program and export again.',
      'Das Modell liegt so weit vom Ursprung, dass einfache Genauigkeit seine Ecken verwischt; nur genau gleiche wurden verbunden: im 3D-Programm zum Ursprung schieben und neu ausgeben.',
    ],
  ],
  'read/hole': [
    [
      'There is a small hole with {1} edges: close it (repair: close hole), unless it is meant.',
      'Ein kleines Loch mit {1} Kanten: schließen, wenn es nicht gewollt ist.',
    ],
    [
      'There is {1} more small hole: so many are quicker to close in your modelling program.',
      'Dazu kommt {1} kleines Loch: so viele sind im 3D-Programm schneller geschlossen.',
    ],
    [
      'There are {1} more small holes: so many are quicker to close in your modelling program.',
      'Dazu kommen {1} kleine Löcher: so viele sind im 3D-Programm schneller geschlossen.',
    ],
  ],
  'read/hole-stays': [
    [
      'This hole cannot be closed here, because {a}: close it in your modelling program.',
      'Dieses Loch lässt sich hier nicht schließen, denn {a}: im 3D-Programm schließen.',
    ],
  ],
  'read/huge-number': [
    [
      'The vertex {a} lies at {1}, farther out than any sculpt: repair the mesh in your modelling program.',
      'Die Ecke {a} liegt bei {1}, weiter draußen als jedes Modell: das Netz im 3D-Programm reparieren.',
    ],
  ],
  'read/index-range': [
    [
      'The face on line {1} names vertex {2}, far more than the file can hold: export the sculpt again.',
      'Die Fläche in Zeile {1} nennt Ecke {2}, viel mehr, als die Datei fassen kann: das Modell neu ausgeben.',
    ],
    [
      'The face on line {1} counts back {2} vertices, but only {3} came before it: export the sculpt again as OBJ.',
      'Die Fläche in Zeile {1} zählt {2} Ecken zurück, vor ihr stehen aber nur {3}: das Modell neu als OBJ ausgeben.',
    ],
    [
      'The face on line {1} names vertex {2}, but the file has {3}: it may be cut short, so export the sculpt again.',
      'Die Fläche in Zeile {1} nennt Ecke {2}, die Datei hat aber nur {3}: sie ist wohl abgeschnitten, das Modell neu ausgeben.',
    ],
  ],
  'read/index-zero': [
    [
      'The face on line {1} names vertex 0, and OBJ counts from 1: export the sculpt again as OBJ.',
      'Die Fläche in Zeile {1} nennt Ecke 0, OBJ zählt aber ab 1: das Modell neu als OBJ ausgeben.',
    ],
  ],
  'read/inside-out': [
    [
      'A surface looks inward, so the foam would lie on the wrong side: turn the faces (repair: turn faces), unless a hollow is meant.',
      'Eine Oberfläche schaut nach innen, der Schaumstoff läge auf der falschen Seite: die Flächen wenden, wenn kein Hohlraum gemeint ist.',
    ],
    [
      '{1} surfaces look inward, so the foam would lie on the wrong side: turn the faces (repair: turn faces), unless a hollow is meant.',
      '{1} Oberflächen schauen nach innen, der Schaumstoff läge auf der falschen Seite: die Flächen wenden, wenn kein Hohlraum gemeint ist.',
    ],
  ],
  'read/many-triangles': [
    [
      'The sculpt has {1} triangles, and each change will take a while: foam shows no detail that fine, so reduce it in your modelling program.',
      'Das Modell hat {1} Dreiecke, jede Änderung dauert eine Weile: Schaumstoff zeigt so feine Einzelheiten nicht, im 3D-Programm verringern.',
    ],
  ],
  'read/no-area': [
    [
      'No face of the file has an area, because the corners of each lie on one line: export the sculpt again.',
      'Keine Fläche der Datei hat einen Inhalt, weil ihre Ecken auf einer Linie liegen: das Modell neu ausgeben.',
    ],
  ],
  'read/no-faces': [
    [
      'The file holds curved surfaces but no polygons: export the sculpt as a polygon mesh.',
      'Die Datei enthält gekrümmte Flächen, aber keine Vielecke: das Modell als Netz aus Vielecken ausgeben.',
    ],
    [
      'The file holds {1} point but no faces: export the sculpt as a mesh, not as points or lines.',
      'Die Datei enthält {1} Punkt, aber keine Flächen: das Modell als Netz ausgeben, nicht als Punkte oder Linien.',
    ],
    [
      'The file holds {1} points but no faces: export the sculpt as a mesh, not as points or lines.',
      'Die Datei enthält {1} Punkte, aber keine Flächen: das Modell als Netz ausgeben, nicht als Punkte oder Linien.',
    ],
    [
      'The file holds no faces: export the sculpt as OBJ or STL.',
      'Die Datei enthält keine Flächen: das Modell als OBJ oder STL ausgeben.',
    ],
    [
      'The file is an ASCII STL without a facet: export the sculpt again.',
      'Die Datei ist ein Text-STL ohne Dreieck: das Modell neu ausgeben.',
    ],
    [
      'The file is a binary STL without a facet: export the sculpt again.',
      'Die Datei ist ein binäres STL ohne Dreieck: das Modell neu ausgeben.',
    ],
  ],
  'read/no-open-edge': [
    [
      'There is no open edge between vertices {1} and {2}: choose an edge of the hole.',
      'Zwischen den Ecken {1} und {2} ist keine offene Kante: eine Kante des Lochs wählen.',
    ],
  ],
  'read/no-size': [
    [
      'All corners of the file lie as good as on one spot: make the sculpt larger in your modelling program and export it again.',
      'Alle Ecken der Datei liegen so gut wie an einer Stelle: das Modell im 3D-Programm größer machen und neu ausgeben.',
    ],
  ],
  'read/no-source': [['The file {1} is not here: choose it again.', 'Die Datei {1} ist nicht da: noch einmal wählen.']],
  'read/no-vertex': [
    [
      'The sculpt has no vertex {1}: choose one of the surface to keep.',
      'Das Modell hat keine Ecke {1}: eine der Oberfläche wählen, die bleiben soll.',
    ],
  ],
  'read/non-manifold-edge': [
    [
      '1 edge has more than two faces, so no single sheet of foam can pass there: part the surfaces in your modelling program, or drop doubled faces (repair: drop doubled).',
      '1 Kante hat mehr als zwei Flächen, dort kann keine einzelne Platte durchlaufen: die Oberflächen im 3D-Programm trennen oder doppelte Flächen weglassen.',
    ],
    [
      '{1} edges have more than two faces, so no single sheet of foam can pass there: part the surfaces in your modelling program, or drop doubled faces (repair: drop doubled).',
      '{1} Kanten haben mehr als zwei Flächen, dort kann keine einzelne Platte durchlaufen: die Oberflächen im 3D-Programm trennen oder doppelte Flächen weglassen.',
    ],
  ],
  'read/non-manifold-vertex': [
    [
      '1 vertex holds surfaces together that meet nowhere else round it: part them in your modelling program, or let a seam run through.',
      '1 Ecke hält Oberflächen zusammen, die sich ringsum sonst nicht treffen: im 3D-Programm trennen oder eine Naht hindurchführen.',
    ],
    [
      '{1} vertices hold surfaces together that meet nowhere else round it: part them in your modelling program, or let a seam run through.',
      '{1} Ecken halten Oberflächen zusammen, die sich ringsum sonst nicht treffen: im 3D-Programm trennen oder eine Naht hindurchführen.',
    ],
  ],
  'read/not-finite': [
    [
      'The vertex {a} has “{1}” for a coordinate, which is no place: repair the mesh in your modelling program.',
      'Die Ecke {a} hat „{1}“ als Koordinate, das ist kein Ort: das Netz im 3D-Programm reparieren.',
    ],
  ],
  'read/nothing-left': [
    [
      'Every face of the file has two corners on one spot, so none has an area: export the sculpt again.',
      'Jede Fläche der Datei hat zwei Ecken an einer Stelle, keine hat also einen Inhalt: das Modell neu ausgeben.',
    ],
    ['This would drop every face of the sculpt: undo it.', 'Das ließe jede Fläche des Modells weg: rückgängig machen.'],
  ],
  'read/one-sided': [
    [
      'A surface has only one side, like a Möbius band: cut it open in your modelling program.',
      'Eine Oberfläche hat nur eine Seite, wie ein Möbiusband: im 3D-Programm aufschneiden.',
    ],
    [
      '{1} surfaces have only one side, like a Möbius band: cut them open in your modelling program.',
      '{1} Oberflächen haben nur eine Seite, wie ein Möbiusband: im 3D-Programm aufschneiden.',
    ],
    [
      'One surface has only one side, like a Möbius band, and was not turned: cut it in your modelling program.',
      'Eine Oberfläche hat nur eine Seite, wie ein Möbiusband, und wurde nicht gewendet: im 3D-Programm aufschneiden.',
    ],
    [
      '{1} surfaces have only one side, like a Möbius band, and was not turned: cut it in your modelling program.',
      '{1} Oberflächen haben nur eine Seite, wie ein Möbiusband, und wurden nicht gewendet: im 3D-Programm aufschneiden.',
    ],
  ],
  'read/only-zeros': [
    [
      'The file holds nothing but zeros, as after a save that went wrong: save or copy it again.',
      'Die Datei enthält nur Nullen, wie nach einem misslungenen Speichern: noch einmal speichern oder kopieren.',
    ],
  ],
  'read/open-rim': [
    [
      'The surface is open along 1 edge, and the foam ends there.',
      'Die Oberfläche ist an 1 Kante offen, dort endet der Schaumstoff.',
    ],
    [
      'The surface is open along {1} edges, and the foam ends there.',
      'Die Oberfläche ist an {1} Kanten offen, dort endet der Schaumstoff.',
    ],
    [
      'The surface is open along {1} edges, and the foam ends there; where it should go on, close it (repair: close hole).',
      'Die Oberfläche ist an {1} Kanten offen, dort endet der Schaumstoff; wo er weitergehen soll, schließen.',
    ],
    [
      'There is {1} more open rim: so many are quicker to close in your modelling program.',
      'Dazu kommt {1} offener Rand: so viele sind im 3D-Programm schneller geschlossen.',
    ],
    [
      'There are {1} more open rims: so many are quicker to close in your modelling program.',
      'Dazu kommen {1} offene Ränder: so viele sind im 3D-Programm schneller geschlossen.',
    ],
  ],
  'read/other-ending': [
    [
      'The name ends in .{1}, but the file holds {2} and was read as that.',
      'Der Name endet auf .{1}, die Datei enthält aber {2} und wurde so gelesen.',
    ],
  ],
  'read/other-format': [
    [
      'The file looks like {a}, not like OBJ or STL: {b}.',
      'Die Datei sieht nach {a} aus, nicht nach OBJ oder STL: {b}.',
    ],
  ],
  'read/self-crossing': [
    [
      '1 pair of triangles runs through each other or lies on each other: foam cannot, so part the surfaces in your modelling program.',
      '1 Paar Dreiecke läuft durcheinander oder liegt aufeinander: Schaumstoff kann das nicht, die Oberflächen im 3D-Programm trennen.',
    ],
    [
      '{1} pairs of triangles run through each other or lie on each other: foam cannot, so part the surfaces in your modelling program.',
      '{1} Paare Dreiecke laufen durcheinander oder liegen aufeinander: Schaumstoff kann das nicht, die Oberflächen im 3D-Programm trennen.',
    ],
    [
      'At least {1} pairs of triangles run through each other or lie on each other, and the search stopped there: foam cannot, so part the surfaces in your modelling program.',
      'Mindestens {1} Paare Dreiecke laufen durcheinander oder liegen aufeinander, dort hörte die Suche auf: Schaumstoff kann das nicht, die Oberflächen im 3D-Programm trennen.',
    ],
  ],
  'read/separate-surfaces': [
    [
      'The sculpt is made of {1} separate surfaces, and each becomes pieces of its own; to work on one alone, keep it (repair: keep one shell).',
      'Das Modell besteht aus {1} getrennten Oberflächen, jede wird zu eigenen Stücken; um an einer allein zu arbeiten, nur diese behalten.',
    ],
  ],
  'read/short-face': [
    [
      'The face on line {1} has {a}, and a face needs three: export the sculpt again as polygons.',
      'Die Fläche in Zeile {1} hat {a}, eine Fläche braucht aber drei: das Modell neu als Vielecke ausgeben.',
    ],
  ],
  'read/stl-count': [
    [
      'The file promises {1} facets and holds {2}, so some would be lost: export the sculpt again.',
      'Die Datei verspricht {1} Dreiecke und enthält {2}, einige gingen verloren: das Modell neu ausgeben.',
    ],
  ],
  'read/stl-facet': [
    [
      'The vertex on line {1} stands outside of any facet: export the sculpt again.',
      'Die Ecke in Zeile {1} gehört zu keinem Dreieck: das Modell neu ausgeben.',
    ],
    ['The facet on line {1} {a}: export the sculpt again.', 'Das Dreieck in Zeile {1} {a}: das Modell neu ausgeben.'],
  ],
  'read/stl-no-end': [
    [
      'The file stops after {1} facets without the closing word endsolid: check that no part of the sculpt is missing.',
      'Die Datei hört nach {1} Dreiecken ohne das Schlusswort endsolid auf: prüfen, ob dem Modell nichts fehlt.',
    ],
  ],
  'read/stl-truncated': [
    [
      'The file is cut short: it ends inside a facet on line {1}, after {2} whole one, so copy or export it again.',
      'Die Datei ist abgeschnitten: sie endet mitten im Dreieck in Zeile {1}, nach {2} ganzen; noch einmal kopieren oder ausgeben.',
    ],
    [
      'The file is cut short: it ends inside a facet on line {1}, after {2} whole ones, so copy or export it again.',
      'Die Datei ist abgeschnitten: sie endet mitten im Dreieck in Zeile {1}, nach {2} ganzen; noch einmal kopieren oder ausgeben.',
    ],
    [
      'The file ends after {1} bytes, before a binary STL says how many facets it has: export the sculpt again.',
      'Die Datei endet nach {1} Bytes, bevor ein binäres STL sagt, wie viele Dreiecke es hat: das Modell neu ausgeben.',
    ],
    [
      'The file is cut short: it promises {1} facets and holds {2}, so copy or export it again.',
      'Die Datei ist abgeschnitten: sie verspricht {1} Dreiecke und enthält {2}; noch einmal kopieren oder ausgeben.',
    ],
  ],
  'read/text-encoding': [
    [
      'The file is text in UTF-16, two bytes a letter: save it as plain text or UTF-8, or export the sculpt again.',
      'Die Datei ist Text in UTF-16, zwei Bytes je Zeichen: als reinen Text oder UTF-8 speichern oder das Modell neu ausgeben.',
    ],
  ],
  'read/too-few-numbers': [
    [
      'The vertex {a} has fewer than three numbers: export the sculpt again.',
      'Die Ecke {a} hat weniger als drei Zahlen: das Modell neu ausgeben.',
    ],
  ],
  'read/too-large': [
    [
      'The file has more than {1} triangles, more than fits: reduce the mesh in your modelling program first.',
      'Die Datei hat mehr als {1} Dreiecke, mehr als hineinpassen: das Netz zuerst im 3D-Programm verringern.',
    ],
    [
      'The file has {1} triangles, more than the {2} that fit: reduce the mesh in your modelling program first.',
      'Die Datei hat {1} Dreiecke, mehr als die {2}, die hineinpassen: das Netz zuerst im 3D-Programm verringern.',
    ],
  ],
  'read/turned-faces': [
    [
      '1 face is turned against its neighbours, so inside and outside change over there: turn it (repair: turn faces).',
      '1 Fläche ist gegen ihre Nachbarn gewendet, innen und außen wechseln dort: wenden.',
    ],
    [
      '{1} faces are turned against their neighbours, so inside and outside change over there: turn them (repair: turn faces).',
      '{1} Flächen sind gegen ihre Nachbarn gewendet, innen und außen wechseln dort: wenden.',
    ],
  ],
  'read/unknown-format': [
    [
      'The file is neither OBJ nor STL: export the sculpt in one of the two.',
      'Die Datei ist weder OBJ noch STL: das Modell in einem der beiden ausgeben.',
    ],
  ],
};
