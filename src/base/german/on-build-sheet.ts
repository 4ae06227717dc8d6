import type { Saying } from './saying.ts';

const EVENT = ['Ask your event what it allows.', 'Bei der Veranstaltung fragen, was erlaubt ist.'] as const;
const WITHOUT = [
  ' Middle and length leave out {9} g whose place is not known: further copies of parts, and parts without a form.',
  ' Schwerpunkt und Länge ohne {9} g, deren Platz nicht bekannt ist: weitere Exemplare von Teilen und Teile ohne Form.',
] as const;

/** What the prop weighs, with its middle and its length where they are known. */
const BARE: readonly Saying[] = [
  ['', ''],
  [', its middle at {2} mm of the sculpt', ', Schwerpunkt bei {2} mm im Modell'],
  [', its middle at {2} mm of the prop', ', Schwerpunkt bei {2} mm im Requisit'],
].flatMap(([middle, schwerpunkt]) =>
  [
    ['', ''],
    ['; it is {3} mm at its longest', '; an der längsten Stelle misst es {3} mm'],
  ].flatMap(([length, laenge]) =>
    [['', ''] as const, WITHOUT].map(([without, ohne]): Saying => [
      `Bare it weighs {1} g${middle}, by the weight of foam you gave${length}.${without} ${EVENT[0]}`,
      `Unbemalt wiegt es {1} g${schwerpunkt}, nach dem angegebenen Gewicht des Schaumstoffs${laenge}.${ohne} ${EVENT[1]}`,
    ]),
  ),
);

/** The build sheet: what it takes, the cut list, gluing, finishing, what comes after. */
export const ON_BUILD_SHEET: readonly Saying[] = [
  ['build', 'Bau'],
  ['build {1}', 'Bau {1}'],
  ['1 piece', '1 Stück'],
  ['{1} pieces', '{1} Stücke'],
  ['1 seam', '1 Naht'],
  ['{1} seams', '{1} Nähte'],
  ['1 step of gluing', '1 Schritt Kleben'],
  ['{1} steps of gluing', '{1} Schritte Kleben'],
  ['1 step of work on parts', '1 Arbeitsschritt an Teilen'],
  ['{1} steps of work on parts', '{1} Arbeitsschritte an Teilen'],
  ['1 step of work on other parts', '1 Arbeitsschritt an anderen Teilen'],
  ['{1} steps of work on other parts', '{1} Arbeitsschritte an anderen Teilen'],
  ['Finished it weighs about {1} bare.', 'Fertig wiegt es unbemalt etwa {1}.'],
  [
    'Finished it measures {1} mm, {2} mm at its longest, and weighs about {3} bare.',
    'Fertig misst es {1} mm, an der längsten Stelle {2} mm, und wiegt unbemalt etwa {3}.',
  ],
  ['Will it work?', 'Wird es gehen?'],
  ['• and {1} more, told in report.json.', '• und {1} weitere, siehe report.json.'],
  ['• {a}', '• {a}'],
  ['It will work.', 'Es wird gehen.'],
  ['Nothing to print yet.', 'Noch nichts zu drucken.'],
  ['It will work if you look to one thing.', 'Es wird gehen, wenn eine Sache beachtet wird.'],
  ['It will work if you look to {1} things.', 'Es wird gehen, wenn {1} Sachen beachtet werden.'],
  ['It will not work: {1} things stop it.', 'Es wird nicht gehen: {1} Sachen halten es auf.'],
  ['It will not work: {a}', 'Es wird nicht gehen: {a}'],

  // What it takes.
  ['What it takes', 'Was gebraucht wird'],
  ['1 sheet', '1 Platte'],
  ['{1} sheets', '{1} Platten'],
  ['{1} in hand', '{1} vorhanden'],
  ['{1} to buy, {2} in hand', '{1} zu kaufen, {2} vorhanden'],
  ['{1} cm² of pieces', '{1} cm² Stücke'],
  ['{1} cm², both faces', '{1} cm², beide Seiten'],
  ['wet', 'nass'],
  ['what has a price, in all', 'alles, was einen Preis hat'],
  ['{1} days', '{1} Tage'],
  [
    'Not counted: a piece for which no sheet of {N} is large enough.',
    'Nicht gezählt: ein Stück, für das keine Platte {N} groß genug ist.',
  ],
  [
    'Not counted: {1} pieces for which no sheet of {N} is large enough.',
    'Nicht gezählt: {1} Stücke, für die keine Platte {N} groß genug ist.',
  ],
  [
    '{1} mm of seam. Volumes are what the coverage on the label comes to; have a third more for brush and tin.',
    '{1} mm Naht. Die Mengen folgen aus der Ergiebigkeit auf dem Etikett; ein Drittel mehr für Pinsel und Dose einplanen.',
  ],
  [
    'Volumes are what the coverage on the label comes to; have a third more for brush and tin.',
    'Die Mengen folgen aus der Ergiebigkeit auf dem Etikett; ein Drittel mehr für Pinsel und Dose einplanen.',
  ],
  ...BARE,
  [
    'Coats are counted on {1} cm² all round the parts, faces that are glued too.',
    'Anstriche sind auf {1} cm² rings um die Teile gerechnet, auch auf geklebten Flächen.',
  ],

  // Cut list.
  ['Cut list', 'Zuschnittliste'],
  ['size', 'Größe'],
  ['area', 'Fläche'],
  ['longest bevel', 'längste Gehrung'],
  ['all square', 'alle gerade'],
  ['{1} mm, to {2}°', '{1} mm, bis {2}°'],
  ['By the ruler, without paper: {a}.', 'Mit dem Lineal, ohne Papier: {a}.'],

  // Gluing.
  ['Warm and form', 'Erwärmen und formen'],
  [
    'All of it before the glue is opened, and each piece held in its form until it is cold.',
    'Alles, bevor der Kleber geöffnet wird; jedes Stück in seiner Form halten, bis es kalt ist.',
  ],
  ['Gluing', 'Kleben'],
  [
    'With {N}: touch-dry after {1} min, to be joined within {2} min, full strength after {3} h. If the label says otherwise, it is right.',
    'Mit {N}: abgelüftet nach {1} min, zu fügen innerhalb {2} min, volle Festigkeit nach {3} h. Sagt das Etikett etwas anderes, gilt das Etikett.',
  ],
  [
    'It grabs at once and cannot slide: put the edges together at the dot, then roll them shut along the arrows. What is added is drawn heavy. The inside of a seam is reached by hand unless it says otherwise.',
    'Er haftet sofort und lässt sich nicht verschieben: die Kanten am Punkt zusammensetzen, dann entlang der Pfeile zurollen. Was dazukommt, ist kräftig gezeichnet. Die Innenseite einer Naht ist mit der Hand zu erreichen, wenn nichts anderes dasteht.',
  ],
  ['Formed beforehand: {1}.', 'Vorher geformt: {1}.'],
  ['Painted beforehand: {1}.', 'Vorher bemalt: {1}.'],
  ['{1} of it', '{1} davon'],
  ['Caution', 'Vorsicht'],

  // Afterwards.
  ['Afterwards', 'Danach'],
  [
    'Leave the glue {1} h before the prop is bent or worn.',
    'Den Kleber {1} h ruhen lassen, bevor das Requisit gebogen oder getragen wird.',
  ],
  [
    '{N}: one coat, {1} min from one to the next, {2} h in all, then {3} h until it is worn.',
    '{N}: ein Anstrich, trocken nach {1} min, insgesamt {2} h, dann {3} h, bis es getragen wird.',
  ],
  [
    '{N}: {4} coats, {1} min from one to the next, {2} h in all, then {3} h until it is worn.',
    '{N}: {4} Anstriche, {1} min von einem zum nächsten, insgesamt {2} h, dann {3} h, bis es getragen wird.',
  ],

  // Finishing.
  ['Finishing', 'Oberfläche'],
  ['colour', 'Farbe'],
  ['on paper', 'auf Papier'],
  ['coats', 'Anstriche'],
  ['volume', 'Menge'],
  ['a litre covers', 'ein Liter reicht'],
  [' and {1} more', ' und {1} weitere'],
  ['your label', 'Etikett'],
  ['as usual', 'wie üblich'],
  ['the base', 'der Grundton'],
  ['in² on pieces', 'in² auf Stücken'],
  ['cm² on pieces', 'cm² auf Stücken'],
  ['Model in {N} on {a}', 'Modellieren mit {N} auf {a}'],
  ['Tape the edges of {a} that will be glued: {1} mm', 'Kanten abkleben, die geklebt werden, {a}: {1} mm'],
  ['Seal {a}: {N}', 'Versiegeln, {a}: {N}'],
  ['Prime {a}: {N}', 'Grundieren, {a}: {N}'],
  ['Paint {a} all over: {N}', 'Ganz streichen, {a}: {N}'],
  ['Clear coat over {a}: {N}', 'Klarlack, {a}: {N}'],
  ['{N} on {a}', '{N} auf {a}'],
  [
    'Glue does not hold on paint: the cut faces stay bare. Take the tape off when the last coat is dry.',
    'Kleber hält nicht auf Farbe: Die Schnittflächen bleiben frei. Das Klebeband abnehmen, wenn der letzte Anstrich trocken ist.',
  ],
  [
    'In all {1} of it, wet. Let each layer dry {2} in the air of the room, never with heat: {3} until the last can be sanded.',
    'Insgesamt {1}, nass. Jede Schicht {2} an der Raumluft trocknen lassen, nie mit Wärme: {3}, bis die letzte geschliffen werden kann.',
  ],
  [
    'Lay {1} mm of tape along its border, edge pressed down, and take it off before the last coat is hard.',
    '{1} mm Klebeband an der Grenze entlang legen, die Kante andrücken, und abnehmen, bevor der letzte Anstrich hart ist.',
  ],
  [
    'Lay {1} mm of tape along its border, on {N}, edge pressed down, and take it off before the last coat is hard.',
    '{1} mm Klebeband an der Grenze entlang auf {N} legen, die Kante andrücken, und abnehmen, bevor der letzte Anstrich hart ist.',
  ],
  ['{1} cm², one coat, {2}. Wait {3} in all.', '{1} cm², ein Anstrich, {2}. Insgesamt {3} warten.'],
  [
    '{1} cm², {2} coats, {3}, {4} from one to the next. Wait {5} in all.',
    '{1} cm², {2} Anstriche, {3}, {4} von einem zum nächsten. Insgesamt {5} warten.',
  ],
  ['When all is glued', 'Wenn alles geklebt ist'],
  ['{a}, before step {1} of gluing', '{a}, vor Schritt {1} des Klebens'],
  ['{a}, after step {1} and before step {2} of gluing', '{a}, nach Schritt {1} und vor Schritt {2} des Klebens'],
  ['No brush gets there when all is glued.', 'Kein Pinsel kommt mehr hin, wenn alles geklebt ist.'],
  ['Its seams are the border of its colour.', 'Die Nähte sind die Grenze der Farbe.'],
  ['Painted beforehand: {a}, finishing step {1}.', 'Vorher bemalt: {a}, Oberfläche, Schritt {1}.'],
  ['Painted beforehand: {a}, finishing steps {1}.', 'Vorher bemalt: {a}, Oberfläche, Schritte {1}.'],
  [
    'Order by common practice: the base first and a finger’s breadth past its borders, then the larger areas, what lies within another after it. Each border is taped once, on the paint that is dry.',
    'Übliche Reihenfolge: zuerst der Grundton, eine Fingerbreite über seine Grenzen, dann die größeren Flächen, danach, was in einer anderen liegt. Jede Grenze wird einmal abgeklebt, auf trockener Farbe.',
  ],
  [
    'What is painted before it is glued on is warmed and formed first, never after, and is hard before an edge of that step of gluing is brushed, whatever batch it is in.',
    'Was vor dem Kleben bemalt wird, wird vorher erwärmt und geformt, nie danach, und ist hart, bevor eine Kante dieses Schritts eingestrichen wird, in welchem Durchgang auch immer.',
  ],
  [
    '{1} mm of tape in all. Waiting comes to {2} if nothing dries beside anything else; times at 20 °C, longer where it is cold or damp. If a label says otherwise, it is right.',
    'Insgesamt {1} mm Klebeband. Das Warten dauert {2}, wenn nichts nebeneinander trocknet; Zeiten bei 20 °C, länger, wo es kalt oder feucht ist. Sagt ein Etikett etwas anderes, gilt das Etikett.',
  ],
  [
    'Waiting comes to {1} if nothing dries beside anything else; times at 20 °C, longer where it is cold or damp. If a label says otherwise, it is right.',
    'Das Warten dauert {1}, wenn nichts nebeneinander trocknet; Zeiten bei 20 °C, länger, wo es kalt oder feucht ist. Sagt ein Etikett etwas anderes, gilt das Etikett.',
  ],
  [
    'Seam {9}, {1} mm, hollow of {2} mm: {3} ml dry, {4} mm at its deepest, one layer.',
    'Naht {9}, {1} mm, Hohlkehle {2} mm: {3} ml trocken, an der tiefsten Stelle {4} mm, eine Schicht.',
  ],
  [
    'Seam {9}, {1} mm, hollow of {2} mm: {3} ml dry, {4} mm at its deepest, {5} layers.',
    'Naht {9}, {1} mm, Hohlkehle {2} mm: {3} ml trocken, an der tiefsten Stelle {4} mm, {5} Schichten.',
  ],
];
