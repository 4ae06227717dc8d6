import type { Sentences } from '../saying.ts';

/** What is said of shapes that are made from sizes. */
export const SHAPES: Sentences = {
  'shape/bend-tight': [
    [
      'The sheet is bent so tightly that a skin changes by {1} %: {a}.',
      'Die Platte ist so eng gebogen, dass sich eine Haut um {1} % ändert: {a}.',
    ],
  ],
  'shape/flip': [['The matrix turns the piece over.', 'Die Matrix wendet das Stück.']],
  'shape/net-overlaps': [
    ['The net lies over itself: cut it as panels.', 'Das Netz liegt über sich selbst: in Feldern schneiden.'],
  ],
  'shape/overlap': [
    [
      'Where turns overlap the strip stands up: its edge runs longer than stated there.',
      'Wo sich Windungen überlappen, steht der Streifen auf: seine Kante läuft dort länger als angegeben.',
    ],
    [
      'The overlap is longer than the wrap: use two layers instead.',
      'Die Überlappung ist länger als der Mantel: stattdessen zwei Lagen nehmen.',
    ],
  ],
  'shape/rebate': [
    [
      'One bevel would lean the wrong way: use a rebate instead.',
      'Eine Gehrung neigte sich verkehrt herum: stattdessen einen Stufenfalz nehmen.',
    ],
  ],
  'shape/rim': [
    [
      'The rim of this dome is not level: use an even frequency for a level one.',
      'Der Rand dieser Kuppel ist nicht eben: für einen ebenen eine gerade Teilung nehmen.',
    ],
  ],
  'shape/size-missing': [['Give both h_min and h_max.', 'Beide Höhen angeben, h_min und h_max.']],
  'shape/sizes': [
    [
      'A box joint has an odd number of fingers and gaps, at least 3: change fingers.',
      'Eine Fingerzinkung hat eine ungerade Zahl Zinken und Lücken, mindestens 3: fingers ändern.',
    ],
    [
      'A comb joint has an even number of fingers and gaps, at least 2: change fingers.',
      'Eine Kammverbindung hat eine gerade Zahl Zinken und Lücken, mindestens 2: fingers ändern.',
    ],
    [
      'A closed frame has at least three sides: give more, or closed=no.',
      'Ein geschlossener Rahmen hat mindestens drei Seiten: mehr angeben oder closed=no.',
    ],
    [
      'A corner is so sharp that its mitre would be longer than any edging: make its angle larger.',
      'Eine Ecke ist so spitz, dass ihre Gehrung länger wäre als jedes Profil: ihren Winkel größer machen.',
    ],
    [
      'A star of {1} points needs a step less than {2}: give a smaller step or an inner_radius.',
      'Ein Stern mit {1} Zacken braucht einen Schritt unter {2}: einen kleineren Schritt oder inner_radius angeben.',
    ],
    [
      'A whole sphere has no rim: make cap_half_angle_deg less than 180.',
      'Eine ganze Kugel hat keinen Rand: cap_half_angle_deg kleiner als 180 machen.',
    ],
    [
      'Give two of radius, cap_half_angle_deg, cap_height and base_radius.',
      'Zwei von radius, cap_half_angle_deg, cap_height und base_radius angeben.',
    ],
    ['Give two of {1} and arc_length.', 'Zwei von {1} und arc_length angeben.'],
    [
      'Panels of two thicknesses in one plane need a rebate, not a bevel: change dihedral_deg.',
      'Felder zweier Dicken in einer Ebene brauchen einen Stufenfalz, keine Gehrung: dihedral_deg ändern.',
    ],
    ['Tangent bands this wide do not meet: use more zones.', 'So breite Bänder treffen sich nicht: mehr Zonen nehmen.'],
    [
      'The angles inside a frame of {1} sides add up to {2} degrees: change corner_angles_deg.',
      'Die Innenwinkel eines Rahmens mit {1} Seiten ergeben zusammen {2} Grad: corner_angles_deg ändern.',
    ],
    [
      'corner_angles_deg takes one angle or {1}, one for the end of each side.',
      'corner_angles_deg nimmt einen Winkel oder {1}, einen für das Ende jeder Seite.',
    ],
    [
      'The branch would end inside the body: make branch_length more than {1} mm.',
      'Der Abzweig endete im Körper: branch_length größer als {1} mm machen.',
    ],
    [
      'The branch would reach past the side of the body: make branch_radius and offset together no more than body_radius.',
      'Der Abzweig reichte über die Seite des Körpers hinaus: branch_radius und offset zusammen höchstens so groß wie body_radius machen.',
    ],
    [
      'The cut would pass through the base: make the height at least {1} mm or the angle smaller.',
      'Der Schnitt ginge durch den Boden: die Höhe mindestens {1} mm oder den Winkel kleiner machen.',
    ],
    ['The matrix leaves no area: change J.', 'Die Matrix lässt keine Fläche: J ändern.'],
    [
      'J takes four numbers: the first row of the matrix, then the second.',
      'J nimmt vier Zahlen: die erste Zeile der Matrix, dann die zweite.',
    ],
    ['The overlap must be less than what a page shows.', 'Die Überlappung muss kleiner sein, als eine Seite zeigt.'],
    [
      'Give one of each, or {1} of each: the rows are of different lengths.',
      'Von jedem eines oder {1} angeben: die Reihen sind verschieden lang.',
    ],
    ['base_radius must be at most the radius.', 'base_radius darf höchstens so groß sein wie radius.'],
    ['cap_height must be at most twice the radius.', 'cap_height darf höchstens das Doppelte von radius sein.'],
    [
      'major_radius must be at least minor_radius: a torus that runs through itself has no rings.',
      'major_radius muss mindestens so groß sein wie minor_radius: ein Torus, der durch sich selbst läuft, hat keine Ringe.',
    ],
    [
      'top_radius must be less than base_radius: turn the shape over, or use a truncated cylinder for equal circles.',
      'top_radius muss kleiner sein als base_radius: die Form umdrehen oder für gleiche Kreise einen schrägen Zylinder nehmen.',
    ],
    [
      'Bent about its inner face round no radius nothing is left of the bend: give an inner_radius or a K over 0.',
      'Ohne Radius um die Innenseite gebogen bleibt von der Biegung nichts: inner_radius oder K über 0 angeben.',
    ],
    [
      'Bent about its inner face round no radius the stretch has no bound: give an inner_radius or a K over 0.',
      'Ohne Radius um die Innenseite gebogen ist die Dehnung unbegrenzt: inner_radius oder K über 0 angeben.',
    ],

    [
      'The legs must reach past the bend: make both at least {1} mm.',
      'Die Schenkel müssen über die Biegung hinausreichen: beide mindestens {1} mm lang machen.',
    ],
    ['The skin must be thinner than the sheet.', 'Die Haut muss dünner sein als die Platte.'],
    [
      'Edging {1} mm wide does not go round so small a circle: make ring_radius larger.',
      'Ein Profil von {1} mm Breite geht nicht um einen so kleinen Kreis: ring_radius größer machen.',
    ],
    [
      'Edging {1} mm wide does not fit on sides so short: make the sides longer.',
      'Ein Profil von {1} mm Breite passt nicht auf so kurze Seiten: die Seiten länger machen.',
    ],
    [
      'The joints would lean more than 80 degrees: use more pieces.',
      'Die Verbindungen neigten sich um mehr als 80 Grad: mehr Stücke nehmen.',
    ],
    [
      'The pieces would come to a point at the throat: make bend_radius a little larger.',
      'Die Stücke liefen an der Innenseite spitz zu: bend_radius etwas größer machen.',
    ],
    [
      'The pipe would run through itself at the throat: make bend_radius at least half the diameter.',
      'Das Rohr liefe an der Innenseite durch sich selbst: bend_radius mindestens halb so groß wie den Durchmesser machen.',
    ],
    [
      'There would be more than {1} fingers: make finger_width larger.',
      'Es wären mehr als {1} Zinken: finger_width größer machen.',
    ],
    ['There would be more than {1} layers: make layer thicker.', 'Es wären mehr als {1} Lagen: layer dicker machen.'],
    [
      'The clearance leaves hardly anything of a finger: make it smaller or the fingers wider.',
      'Das Spiel lässt von einer Zinke kaum etwas übrig: kleiner oder die Zinken breiter machen.',
    ],
    [
      'slab_length must be more than the thickness of both slabs.',
      'slab_length muss größer sein als die Dicke beider Platten.',
    ],
    [
      'The development would lap over itself: make the shape higher.',
      'Die Abwicklung überlappte sich selbst: die Form höher machen.',
    ],
    [
      'The development would lap over itself: make the height larger.',
      'Die Abwicklung überlappte sich selbst: die Höhe größer machen.',
    ],
    [
      'major_axis must be at least minor_axis: exchange them.',
      'major_axis muss mindestens so groß sein wie minor_axis: vertauschen.',
    ],
    ['inner_radius must be less than outer_radius.', 'inner_radius muss kleiner sein als outer_radius.'],
    ['major_radius must be more than minor_radius.', 'major_radius muss größer sein als minor_radius.'],
    ['to_latitude_deg must be more than from_latitude_deg.', 'to_latitude_deg muss größer sein als from_latitude_deg.'],
    ['h_max must be at least h_min: exchange them.', 'h_max muss mindestens so groß sein wie h_min: vertauschen.'],
    [
      'The overlap must be less than the width of the strip, or the winding never gets on.',
      'Die Überlappung muss kleiner sein als die Breite des Streifens, sonst kommt die Wicklung nicht voran.',
    ],
    [
      'The strip must advance by less than once round, {1} mm: take a narrower strip or wrap it once instead.',
      'Der Streifen muss um weniger als einen Umfang vorrücken, {1} mm: einen schmaleren nehmen oder stattdessen einen Mantel.',
    ],
    [
      'The strip must advance by less than once round the thin end, {1} mm: take a narrower strip.',
      'Der Streifen muss um weniger als einen Umfang am dünnen Ende vorrücken, {1} mm: einen schmaleren nehmen.',
    ],
  ],
  'shape/steep': [
    [
      'The cut leans more than 45 degrees: most saws do not; spread the turn over two edges.',
      'Der Schnitt neigt sich um mehr als 45 Grad, die meisten Sägen nicht: die Drehung auf zwei Kanten verteilen.',
    ],
    [
      'The walls lean more than 45 degrees: part the sheet here instead.',
      'Die Wände neigen sich um mehr als 45 Grad: die Platte stattdessen hier teilen.',
    ],
  ],
  'shape/straight': [
    [
      'Both rims are alike, so the development is a rectangle.',
      'Beide Ränder sind gleich, die Abwicklung ist also ein Rechteck.',
    ],
  ],
  'shape/stretch': [
    [
      'The edges must be gathered by {1} %: use more gores.',
      'Die Kanten müssen um {1} % gestaucht werden: mehr Segmente nehmen.',
    ],
    [
      'One disc must change its scale by at least {1} %: part it into petals.',
      'Eine Scheibe muss ihren Maßstab um mindestens {1} % ändern: in Blätter teilen.',
    ],
  ],
  'shape/taper': [
    [
      'A straight strip must give {1} % along its edges to follow this taper: cut it curved, or take a narrower strip.',
      'Ein gerader Streifen muss an seinen Kanten um {1} % nachgeben, um dieser Verjüngung zu folgen: gebogen schneiden oder einen schmaleren nehmen.',
    ],
  ],
  'shape/too-many-sizes': [
    ['Give fingers or finger_width, not both.', 'Entweder fingers oder finger_width angeben, nicht beide.'],
    ['Give one of side, circumradius and across_flats.', 'Eines von side, circumradius und across_flats angeben.'],
    [
      'Give one of edge, circumscribed_diameter and inscribed_diameter.',
      'Eines von edge, circumscribed_diameter und inscribed_diameter angeben.',
    ],
    ['Give inner_radius or step, not both.', 'Entweder inner_radius oder step angeben, nicht beide.'],
    [
      'Give h_min and h_max, or centreline_height and cut_angle_deg, not both.',
      'Entweder h_min und h_max oder centreline_height und cut_angle_deg angeben, nicht beides.',
    ],
  ],
  'shape/too-thick': [
    [
      'Nothing is left inside: take a thinner sheet or a larger box.',
      'Innen bleibt nichts: eine dünnere Platte oder einen größeren Kasten nehmen.',
    ],
    [
      'Nothing is left inside: take a thinner sheet or a larger prism.',
      'Innen bleibt nichts: eine dünnere Platte oder ein größeres Prisma nehmen.',
    ],
    [
      'Nothing is left inside: take a thinner sheet or a larger pyramid.',
      'Innen bleibt nichts: eine dünnere Platte oder eine größere Pyramide nehmen.',
    ],
    [
      'Nothing is left inside: the faces stand {1} mm from the middle, so take a thinner sheet or a larger solid.',
      'Innen bleibt nichts: die Flächen stehen {1} mm von der Mitte; eine dünnere Platte oder einen größeren Körper nehmen.',
    ],
    [
      'Nothing is left inside for the sheet to be rolled round: make the diameter larger.',
      'Innen bleibt nichts, um das sich die Platte rollen ließe: den Durchmesser größer machen.',
    ],
    [
      'A wall of {1} mm leaves no room inside: take a thinner sheet or larger radii.',
      'Eine Wand von {1} mm lässt innen keinen Platz: eine dünnere Platte oder größere Radien nehmen.',
    ],
    [
      'The sheet does not fit into the branch: take a thinner sheet or a larger branch.',
      'Die Platte passt nicht in den Abzweig: eine dünnere Platte oder einen größeren Abzweig nehmen.',
    ],
    [
      'The sheet does not fit into the diameter: take a thinner sheet or a larger diameter.',
      'Die Platte passt nicht in den Durchmesser: eine dünnere Platte oder einen größeren Durchmesser nehmen.',
    ],
    [
      'The sheet does not fit into the sphere: take a thinner sheet or a larger radius.',
      'Die Platte passt nicht in die Kugel: eine dünnere Platte oder einen größeren Radius nehmen.',
    ],
    [
      'The sheet does not fit into the tube: take a thinner sheet or a larger tube.',
      'Die Platte passt nicht in das Rohr: eine dünnere Platte oder ein größeres Rohr nehmen.',
    ],
    [
      'The sheet leaves no room inside the circle or the rectangle: take a thinner sheet or a larger shape.',
      'Die Platte lässt im Kreis oder Rechteck keinen Platz: eine dünnere Platte oder eine größere Form nehmen.',
    ],
    [
      'A sheet of {1} mm does not fit into {2} mm: take a thinner sheet or a larger diameter.',
      'Eine Platte von {1} mm passt nicht in {2} mm: eine dünnere Platte oder einen größeren Durchmesser nehmen.',
    ],
  ],
  'shape/no-choice': [
    ['{1} is one of {2}, not nothing.', '{1} ist eines von {2}, nicht leer.'],
    ['{1} is one of {2}, not {3}.', '{1} ist eines von {2}, nicht {3}.'],
  ],
  'shape/no-pieces': [
    [
      '{1} is a table of figures and has no pieces to draw: leave --out out.',
      '{1} ist eine Zahlentabelle und hat keine Stücke zum Zeichnen: --out weglassen.',
    ],
  ],
  'shape/no-size': [
    ['The shape {1} has no size {2}: it takes none.', 'Die Form {1} hat kein Maß {2}: sie nimmt keines.'],
    ['The shape {1} has no size {2}: it takes {3}.', 'Die Form {1} hat kein Maß {2}: sie nimmt {3}.'],
  ],
  'shape/out-of-range': [
    ['{1} must be {a} mm, not {2} mm.', '{1} muss {a} mm sein, nicht {2} mm.'],
    ['{1} must be {a}°, not {2}°.', '{1} muss {a}° sein, nicht {2}°.'],
    ['{1} must be {a} in, not {2} in.', '{1} muss {a} in sein, nicht {2} in.'],
    ['{1} must be {a}, not {2}.', '{1} muss {a} sein, nicht {2}.'],
  ],
  'shape/twice': [
    ['The shape {1} is given {2} twice: leave one of them out.', 'Die Form {1} bekommt {2} zweimal: eines weglassen.'],
    [
      'The shape {1} is told that its size is of the {2}, and {3}: leave one of them out.',
      'Der Form {1} ist gesagt, ihr Maß gelte für {2}, und {3}: eines weglassen.',
    ],
  ],
  'shape/unreadable': [
    ['{1} is {a}, not nothing.', '{1} ist {a}, nicht leer.'],
    ['{1} is {a}, not {2}.', '{1} ist {a}, nicht {2}.'],
    [
      '{1} is {a} or several with commas between, not {2}.',
      '{1} ist {a} oder mehrere mit Kommas dazwischen, nicht {2}.',
    ],
  ],
};
