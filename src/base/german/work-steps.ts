import type { Saying } from './saying.ts';

/** Work on parts that no sculpt was parted for: steps, and what stands on their templates. Names of pieces are kept. */
export const WORK_STEPS: readonly Saying[] = [
  // Shapes.
  ['Roll {N} round.', '{N} rund rollen.'],
  ['Warm {N} and form it round.', '{N} erwärmen und rund formen.'],
  ['Bend {N} round between its flat parts.', '{N} zwischen den flachen Teilen rund biegen.'],
  ['Fold {N} along its one line.', '{N} an der Linie falzen.'],
  ['Fold {N} along its {1} lines.', '{N} an den {1} Linien falzen.'],
  ['Close {N} on itself along seam {1}, {O} to {P}: {2}.', '{N} an Naht {1} in sich schließen, {O} an {P}: {2}.'],
  ['Join one {N} to the next along seam {1}: {2}.', 'Ein {N} mit dem nächsten an Naht {1} verbinden: {2}.'],
  ['Join {N} and {O} along seam {1}: {2}.', '{N} und {O} an Naht {1} verbinden: {2}.'],
  ['Glue {N} on {O}, middle on middle.', '{N} auf {O} kleben, Mitte auf Mitte.'],
  ['Glue {N} on {O}, centred.', '{N} mittig auf {O} kleben.'],
  ['Sand the steps away: {1}.', 'Die Stufen abschleifen: {1}.'],
  ['Fill the steps and sand them: {1}.', 'Die Stufen füllen und schleifen: {1}.'],
  ['Wrap {N} round {O}, its seam turned away from the last.', '{N} um {O} legen, die Naht von der letzten weggedreht.'],
  [
    'Set the branch on the body along its coped end: {1}.',
    'Den Abzweig mit seinem ausgeklinkten Ende auf den Körper setzen: {1}.',
  ],
  ['Glue the slabs at their corners: {1} in all.', 'Die Platten an den Ecken kleben: {1} insgesamt.'],
  [
    'Wind the strip round, {1} times, its edge along the last turn.',
    'Den Streifen {1} Mal herumwickeln, die Kante an der letzten Windung.',
  ],
  [
    'Wind the strip round, its edge along the last turn.',
    'Den Streifen herumwickeln, die Kante an der letzten Windung.',
  ],
  ['Glue the fingers of both slabs into each other.', 'Die Zinken beider Platten ineinander kleben.'],
  ['Seam {1} closes on itself: {N} to {O}.', 'Naht {1} schließt in sich: {N} an {O}.'],
  ['Seam {1} joins the next one like it.', 'Naht {1} verbindet mit dem nächsten gleichen Stück.'],
  ['Seam {1} joins {N}.', 'Naht {1} verbindet mit {N}.'],
  [
    'Cut this opening in the body, then lay the piece aside.',
    'Diese Öffnung in den Körper schneiden, dann das Stück weglegen.',
  ],
  ['The coped end lies on the body.', 'Das ausgeklinkte Ende liegt auf dem Körper.'],
  [
    'The outline is the covered side; the round stands up from it.',
    'Der Umriss ist die verdeckte Seite; die Rundung steht darüber.',
  ],
  [
    'Keep the triangles flat and bend round what is between them.',
    'Die Dreiecke flach lassen und rund biegen, was dazwischen liegt.',
  ],
  ['Fold along the lines.', 'An den Linien falzen.'],
  ['Form {N} round, warm.', '{N} warm rund formen.'],
  ['Form {N} round, warm, to {1} mm inside radius.', '{N} warm rund formen, auf einen Innenradius von {1} mm.'],
  ['Roll it round, along the lines of the bend.', 'Entlang der Biegelinien rund rollen.'],
  ['Roll to {1} mm inside radius.', 'Auf einen Innenradius von {1} mm rollen.'],
  [
    'Roll to a point, and to {1} mm inside radius at the wide end.',
    'Spitz zurollen, am weiten Ende auf einen Innenradius von {1} mm.',
  ],
  [
    'Roll to {1} mm inside radius at the tight end, {2} mm at the wide end.',
    'Am engen Ende auf einen Innenradius von {1} mm rollen, am weiten auf {2} mm.',
  ],

  // Stacks.
  [
    'Glue layer {N} ({1} mm) on layer {2}, up marks the same way, over the dowels.',
    'Lage {N} ({1} mm) auf Lage {2} kleben, Pfeile gleich gerichtet, über die Dübel.',
  ],
  [
    'Glue layer {N} ({1} mm) on layer {2}, up marks the same way, inside the placing line.',
    'Lage {N} ({1} mm) auf Lage {2} kleben, Pfeile gleich gerichtet, innerhalb der Anlegelinie.',
  ],
  [
    'Glue the pieces of layer {3} ({1} mm) on layer {2}, up marks the same way, over the dowels.',
    'Die Stücke von Lage {3} ({1} mm) auf Lage {2} kleben, Pfeile gleich gerichtet, über die Dübel.',
  ],
  [
    'Glue the pieces of layer {3} ({1} mm) on layer {2}, up marks the same way, inside the placing line.',
    'Die Stücke von Lage {3} ({1} mm) auf Lage {2} kleben, Pfeile gleich gerichtet, innerhalb der Anlegelinie.',
  ],
  [
    'Slide the stack on its core, through holes of {1} mm.',
    'Den Stapel auf den Kern schieben, durch Löcher von {1} mm.',
  ],
  ['Stand one dowel in layer {1}: {2} mm to layer {3}.', 'Einen Dübel in Lage {1} stellen: {2} mm bis Lage {3}.'],
  ['Stand {4} dowels in layer {1}: {2} mm to layer {3}.', '{4} Dübel in Lage {1} stellen: {2} mm bis Lage {3}.'],
  ['Layer {N} of {1}, {2} mm.', 'Lage {N} von {1}, {2} mm.'],
  ['{3} alike, layers {N} of {1}, {2} mm each.', '{3} gleiche, Lagen {N} von {1}, je {2} mm.'],
  ['Arrow: up mark, the same way in every layer.', 'Pfeil: oben, in jeder Lage gleich gerichtet.'],
  ['Sand off up to {1} mm.', 'Bis zu {1} mm abschleifen.'],
  ['Fill up to {1} mm.', 'Bis zu {1} mm füllen.'],
  ['up mark', 'oben'],

  // Clay, artwork, trim, what stands in or on something else.
  [
    'Set the core into the opening of the wall, its base level with the rim ({1} mm round), and fix it there until the clay holds it.',
    'Den Kern in die Öffnung der Wand setzen, die Grundfläche bündig mit dem Rand ({1} mm ringsum), und halten, bis die Modelliermasse ihn hält.',
  ],
  [
    'Model {1} cm³ of {N} over it, {2} mm deep, in 1 coat where it is deepest: dry without forced heat, {3} h there.',
    '{1} cm³ {N} darüber modellieren, {2} mm dick, wo es am dicksten ist in 1 Schicht: ohne Wärme trocknen, dort {3} h.',
  ],
  [
    'Model {1} cm³ of {N} over it, {2} mm deep, in {4} coats where it is deepest: dry each without forced heat, {3} h together there.',
    '{1} cm³ {N} darüber modellieren, {2} mm dick, wo es am dicksten ist in {4} Schichten: jede ohne Wärme trocknen, dort zusammen {3} h.',
  ],
  ['Sand the clay when it is dry right through.', 'Die Modelliermasse schleifen, wenn sie durchgetrocknet ist.'],
  [
    'Glue each of {1} of {N} flat in its place: brush its back and what it lies on, {2} in all, and press it down from the middle outward.',
    'Alle {1} {N} flach an ihren Platz kleben: Rückseite und Untergrund einstreichen, insgesamt {2}, und von der Mitte nach außen andrücken.',
  ],
  [
    'Glue {N} flat in its place: brush its back and what it lies on, {2} in all, and press it down from the middle outward.',
    '{N} flach an seinen Platz kleben: Rückseite und Untergrund einstreichen, insgesamt {2}, und von der Mitte nach außen andrücken.',
  ],
  ['Sand {N} to its profile: {1} cm³ come off.', '{N} auf sein Profil schleifen: {1} cm³ kommen weg.'],
  ['Glue {N} on {O} inside its dotted line.', '{N} innerhalb der gepunkteten Linie auf {O} kleben.'],
  [
    'Cut the hole for {N} in {O} while it is flat, then slide {P} in: it has {1} mm of room all round, which the glue fills.',
    'Das Loch für {N} in {O} schneiden, solange es flach liegt, dann {P} einschieben: ringsum sind {1} mm Luft, die der Kleber füllt.',
  ],
  [
    'Cut the {2} holes for {N} in {O} while it is flat, then slide {P} in: it has {1} mm of room all round, which the glue fills.',
    'Die {2} Löcher für {N} in {O} schneiden, solange es flach liegt, dann {P} einschieben: ringsum sind {1} mm Luft, die der Kleber füllt.',
  ],
  ['Long edges lean in towards the face.', 'Lange Kanten neigen sich zur Sichtseite hin nach innen.'],
  ['Half-round edging.', 'Halbrunde Kantenleiste.'],
  ['Quarter-round edging.', 'Viertelrunde Kantenleiste.'],
  [
    'Wrap it over the rim round its cord; the left edge in the drawing lies as the marks say.',
    'Um die Kordel über den Rand legen; die linke Kante der Zeichnung liegt, wie die Marken sagen.',
  ],
  [
    'Fold it square over the rim, the same way down on both faces.',
    'Rechtwinklig über den Rand falzen, auf beiden Seiten gleich weit herab.',
  ],
  ['Bends to a radius of {1} mm or more.', 'Biegt sich auf einen Radius von {1} mm oder mehr.'],
  ['Twists by up to {1} degrees in 100 mm.', 'Verdreht sich um bis zu {1} Grad auf 100 mm.'],
  ['Sand off {1} cm³.', '{1} cm³ abschleifen.'],

  // What is let in.
  ['Glue the frame round the pocket on the face.', 'Den Rahmen auf der Sichtseite um die Tasche kleben.'],
  ['Glue the frame round the pocket on the back.', 'Den Rahmen auf der Rückseite um die Tasche kleben.'],
  [
    'Let in the pocket for the {N} from the back, {1} mm deep into the wall.',
    'Die Tasche für {N} von der Rückseite einlassen, {1} mm tief in die Wand.',
  ],
  [
    'Let in the pocket for the {N} from the face, {1} mm deep into the wall.',
    'Die Tasche für {N} von der Sichtseite einlassen, {1} mm tief in die Wand.',
  ],
  [
    'Let in the rebate for the {N} from the back, {1} mm deep into the wall.',
    'Den Stufenfalz für {N} von der Rückseite einlassen, {1} mm tief in die Wand.',
  ],
  [
    'Cut the way for its wires, {1} mm wide and {2} mm deep, and lay them with a loop to spare.',
    'Den Weg für die Kabel schneiden, {1} mm breit und {2} mm tief, und sie mit einer Schlaufe Reserve legen.',
  ],
  [
    'When all heat work is done, bed the pane in its rebate with glue that stays soft.',
    'Nach aller Arbeit mit Wärme die Scheibe mit weich bleibendem Kleber in den Stufenfalz betten.',
  ],
  [
    'Hold the {N} to its other half, mark the side that looks out, and glue it in.',
    '{N} an die andere Hälfte halten, die Seite anzeichnen, die nach außen zeigt, und einkleben.',
  ],
  [
    'Put in the {N}, run it for an hour, and feel its pocket before all is closed.',
    '{N} einsetzen, eine Stunde betreiben und die Tasche fühlen, bevor alles geschlossen wird.',
  ],
  [
    'Put in the {N}; a fuse sits beside it, and nothing sharp looks into its pocket.',
    '{N} einsetzen; eine Sicherung sitzt daneben, und nichts Scharfes ragt in die Tasche.',
  ],
  ['Set the {N} into its plate and join its wires.', '{N} in die Platte setzen und die Kabel verbinden.'],
  [
    'Lead the webbing through the slots and sew it back on itself.',
    'Das Gurtband durch die Schlitze führen und auf sich selbst vernähen.',
  ],
  [
    'Try it once more, then close the pocket of the {N}.',
    'Noch einmal ausprobieren, dann die Tasche von {N} schließen.',
  ],
  [
    'Hold the lid with hook-and-loop tape or screws: it must come off again.',
    'Den Deckel mit Klettband oder Schrauben halten: Er muss wieder abgehen.',
  ],

  // Built up on a core.
  ['Fill {N}: {1}, at most {2} mm.', '{N} füllen: {1}, höchstens {2} mm.'],
  ['Sand {N}: {1}, at most {2} mm deep.', '{N} schleifen: {1}, höchstens {2} mm tief.'],
  ['Sand {N}: {1}.', '{N} schleifen: {1}.'],
];
