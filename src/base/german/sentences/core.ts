import type { Sentences } from '../saying.ts';

/** What is said of foam that is built up round a core. */
export const CORE: Sentences = {
  'core/bend-tight': [
    ['In {a} a skin changes by up to {1} %: {b}.', 'In {a} ändert sich eine Haut um bis zu {1} %: {b}.'],
  ],
  'core/cap': [
    ['A cap stands off the core by {1} mm or more.', 'Eine Kappe steht um {1} mm oder mehr vom Kern ab.'],
    [
      'A cap is of 1 to 20 discs of a sheet from 0.1 to 200 mm thick, as 10x2.',
      'Eine Kappe besteht aus 1 bis 20 Scheiben einer Platte von 0,1 bis 200 mm Dicke, etwa 10x2.',
    ],
    ['The diameter of a cap is over {1} mm.', 'Der Durchmesser einer Kappe ist größer als {1} mm.'],
    [
      'The caps stand off by all of the length: make the whole longer, or the caps flatter.',
      'Die Kappen nehmen die ganze Länge ein: das Ganze länger oder die Kappen flacher machen.',
    ],
  ],
  'core/clash': [
    [
      '{1} and {2} both take up the core from {3} mm: move one by {4} mm.',
      '{1} und {2} belegen beide den Kern von {3} mm: eines um {4} mm verschieben.',
    ],
    [
      '{1} sits on the bare core from {2} mm, where foam is built up: leave the core bare there, or let it sit on the foam.',
      '{1} sitzt von {2} mm auf dem bloßen Kern, wo Schaumstoff aufgebaut ist: den Kern dort frei lassen oder es auf den Schaumstoff setzen.',
    ],
  ],
  'core/inside-core': [
    [
      'Corner {1} of the profile, {2} mm, lies inside the core, whose radius is {3} mm: make it larger, or take a thinner core.',
      'Ecke {1} des Profils, {2} mm, liegt im Kern, dessen Radius {3} mm ist: größer machen oder einen dünneren Kern nehmen.',
    ],
  ],
  'core/layers': [
    [
      'More than {1} layers would lie over one another: take thicker sheets, or a thicker core.',
      'Mehr als {1} Lagen lägen übereinander: dickere Platten oder einen dickeren Kern nehmen.',
    ],
  ],
  'core/pipe': [
    [
      'There is no pipe “{1}” here: choose one of {2}, or give its diameter in mm.',
      'Ein Rohr „{1}“ gibt es hier nicht: eines von {2} wählen oder den Durchmesser in mm angeben.',
    ],
  ],
  'core/place': [
    ['At most {1} parts sit on one core.', 'Auf einem Kern sitzen höchstens {1} Teile.'],
    [
      '{1} does not lie on the core, which is cut to {2} mm: say where it begins and ends along it, as head=700-860.',
      '{1} liegt nicht auf dem Kern, der auf {2} mm geschnitten ist: angeben, wo es auf ihm beginnt und endet, etwa head=700-860.',
    ],
  ],
  'core/seams-near': [
    [
      'In {a} seams come nearer than {1}° to those beneath, because there are several: they stand as far apart as they can.',
      'In {a} kommen Nähte denen darunter näher als {1}°, weil es mehrere sind: sie stehen so weit auseinander, wie es geht.',
    ],
  ],
  'core/sheet-size': [
    [
      'Layer {1}, {2} mm, would come in too many parts of its sheet: take a larger sheet.',
      'Lage {1}, {2} mm, zerfiele in zu viele Teile ihrer Platte: eine größere Platte nehmen.',
    ],
  ],
  'core/size': [
    [
      'The length from end to end is from 1 to {1} mm, which is 20 m.',
      'Die Länge von Ende zu Ende ist 1 bis {1} mm, also 20 m.',
    ],
    ['A core is from {1} mm across its outside.', 'Ein Kern misst außen {1} mm.'],
    ['Room for glue is from {1} mm on either side.', 'Platz für Kleber ist {1} mm auf jeder Seite.'],
  ],
  'core/skin': [
    [
      'The skin would come in {1} bands: let it stand off smooth stretches by more, or use fewer.',
      'Die Haut zerfiele in {1} Bänder: von glatten Strecken mehr abstehen lassen oder weniger nehmen.',
    ],
    [
      'A skin of {1} mm has no room in the hollow at {2} mm: take a thinner one, or a gentler profile.',
      'Eine Haut von {1} mm hat in der Kehle bei {2} mm keinen Platz: eine dünnere oder ein sanfteres Profil nehmen.',
    ],
    [
      'A skin of {1} mm does not fit between profile and core at {2} mm: raise the profile there by {3} mm, or take a thinner one.',
      'Eine Haut von {1} mm passt bei {2} mm nicht zwischen Profil und Kern: das Profil dort um {3} mm anheben oder eine dünnere nehmen.',
    ],
  ],
  'core/staves': [
    [
      'Staves from {1} to {2} mm have no length: say where they begin and end, as 300-350.',
      'Dauben von {1} bis {2} mm haben keine Länge: angeben, wo sie beginnen und enden, etwa 300-350.',
    ],
    [
      'Staves from {1} to {2} mm: there are 3 to 60 of them, not {3}.',
      'Dauben von {1} bis {2} mm: Davon gibt es 3 bis 60, nicht {3}.',
    ],
    [
      'Staves from {1} to {2} mm: their sheet is from 0.1 to 200 mm thick.',
      'Dauben von {1} bis {2} mm: Ihre Platte ist 0,1 bis 200 mm dick.',
    ],
    [
      'Staves from {1} to {2} mm must lie within one straight stretch of the profile: one set for each.',
      'Dauben von {1} bis {2} mm müssen auf einer geraden Strecke des Profils liegen: ein Satz für jede.',
    ],
    [
      'Staves from {1} to {2} mm: {3} mm does not fit between profile and core, by {4} mm: take a thinner sheet.',
      'Dauben von {1} bis {2} mm: {3} mm passt zwischen Profil und Kern nicht, um {4} mm: eine dünnere Platte nehmen.',
    ],
    [
      'Two sets of staves lie over one another at {1} mm: let one end where the other begins.',
      'Zwei Sätze Dauben liegen bei {1} mm übereinander: einen enden lassen, wo der andere beginnt.',
    ],
  ],
  'core/staves-steep': [
    [
      'The long edges of {1} staves lean {2}°, beyond what a saw table tilts: take more staves.',
      'Die langen Kanten von {1} Dauben neigen sich um {2}°, mehr als ein Sägetisch: mehr Dauben nehmen.',
    ],
  ],
  'core/ways': [
    [
      'These sheets can be laid in too many ways: leave some out, or give thicknesses in whole mm.',
      'Diese Platten lassen sich auf zu viele Arten legen: einige weglassen oder Dicken in ganzen mm angeben.',
    ],
  ],
  'core/winding': [
    [
      'Laid flat the strip of {1} mm curls over itself: cut it straight, keep it straight, or wind in parts.',
      'Flach gelegt rollt sich der Streifen von {1} mm über sich selbst: gerade schneiden, gerade halten oder in Teilen wickeln.',
    ],
    [
      'The strip is too wide to follow this taper: take a narrower strip, or cover it with a wrap.',
      'Der Streifen ist zu breit für diese Verjüngung: einen schmaleren nehmen oder mit einem Mantel bedecken.',
    ],
    [
      'A strip cannot lie over the step of {1} mm at {2} mm: wind each side of it by itself.',
      'Über der Stufe von {1} mm bei {2} mm kann kein Streifen liegen: jede Seite für sich wickeln.',
    ],
    [
      'The strip would go round more than {1} times: take a wider strip, or wind in parts.',
      'Der Streifen liefe mehr als {1}-mal herum: einen breiteren nehmen oder in Teilen wickeln.',
    ],
    [
      'The strip cannot get past {1} mm: there it would have to run straight round or advance by more than once round.',
      'Der Streifen kommt über {1} mm nicht hinaus: dort müsste er gerade herumlaufen oder um mehr als einen Umfang vorrücken.',
    ],
    ['Take another pitch, or a narrower strip.', 'Eine andere Steigung oder einen schmaleren Streifen nehmen.'],
    [
      'At {1} mm the strip would run along the core rather than round it: take a smaller pitch.',
      'Bei {1} mm liefe der Streifen am Kern entlang statt um ihn herum: eine kleinere Steigung nehmen.',
    ],
    [
      'At {1} mm the surface is bent too tightly for a strip so thick: take a thinner one.',
      'Bei {1} mm ist die Oberfläche für einen so dicken Streifen zu eng gebogen: einen dünneren nehmen.',
    ],
    [
      'A strip of {1} mm would advance by more than once round the core at its start: take a narrower strip, fewer starts, or wrap it once instead.',
      'Ein Streifen von {1} mm rückte am Anfang um mehr als einen Umfang vor: einen schmaleren, weniger Anfänge oder stattdessen einen Mantel nehmen.',
    ],
  ],
  'core/winding-bend': [
    [
      'The strip is bent so tightly that a skin changes by {1} %: take a thinner one.',
      'Der Streifen ist so eng gebogen, dass sich eine Haut um {1} % ändert: einen dünneren nehmen.',
    ],
  ],
  'core/winding-crease': [
    [
      'The strip turns by {1}° at the corner at {2} mm and may crease there: round the corner, or keep the strip straight.',
      'Der Streifen dreht sich an der Ecke bei {2} mm um {1}° und kann dort knicken: die Ecke runden oder den Streifen gerade halten.',
    ],
  ],
  'core/winding-crossed': [
    [
      'Strips cross {1} times: where they do the winding is {2} mm thick, unless one passes under the other.',
      'Streifen kreuzen sich {1}-mal: dort ist die Wicklung {2} mm dick, wenn nicht einer unter dem anderen durchläuft.',
    ],
  ],
  'core/winding-mixed': [
    [
      'The strip overlaps by up to {1} mm in places and leaves gaps of up to {2} mm in others: keep the overlap if it should cover alike.',
      'Der Streifen überlappt stellenweise um bis zu {1} mm und lässt anderswo Spalte von bis zu {2} mm: die Überlappung halten, wenn er gleichmäßig decken soll.',
    ],
  ],
  'core/winding-sideways': [
    [
      'A straight strip must give {1} % along its edges to follow the taper: cut it curved, to a radius of {2} mm at least, keep it straight, or take a narrower one.',
      'Ein gerader Streifen muss an seinen Kanten um {1} % nachgeben, um der Verjüngung zu folgen: gebogen schneiden, mit einem Radius von mindestens {2} mm, gerade halten oder einen schmaleren nehmen.',
    ],
  ],
};
