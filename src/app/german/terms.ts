import type { GLOSSARY_WORDS, Term } from '../help/glossary-words.ts';
import type { TranslationInPart } from '../language/spoken.ts';

const term = (word: string, also: string, says: string): Term => ({ word, also, says });

/** The words of the trade. Words in brackets lead to others: what is shown, then the name it has in English. */
export const TERMS: TranslationInPart<typeof GLOSSARY_WORDS> = {
  allowance: term(
    'Klebezugabe',
    'zugabe rand nahtzugabe',
    'Schaumstoff außerhalb einer [Naht|seam], auf den geklebt wird. Eine Naht auf [Stoß|butt] hat keine.',
  ),
  apart: term(
    'zerlegt',
    'explosion auseinander',
    'Die Stücke, jedes gerade nach außen vom Requisit abgezogen, damit jede [Naht|seam] zu sehen ist.',
  ),
  back: term(
    'Rückseite',
    'innen hinten',
    'Die Innenseite des fertigen Requisits. Gegenüber liegt die [Sichtseite|face].',
  ),
  badge: term(
    'Abzeichen',
    'emblem relief',
    'Eine flache Form, aus dünnem Schaumstoff geschnitten und auf die [Sichtseite|face] geklebt.',
  ),
  bend: term(
    'Biegung',
    'rollen kurve',
    'Schaumstoff, ohne [Falz|fold] gerollt. Außerhalb der [neutralen Schicht|neutral] wird er gedehnt, innerhalb gedrückt.',
  ),
  bevel: term(
    'Gehrung',
    'schräge abschrägung neigung',
    'Eine schräg geschnittene Kante, damit zwei Stücke an einer Ecke ohne Spalt schließen. Jedes nimmt die Hälfte der Wendung; so weit neigt sich die Klinge zur Senkrechten.',
  ),
  butt: term(
    'Stoß',
    'stumpf kante an kante',
    'Eine [Naht|seam], deren Schnittkanten Fläche an Fläche stehen. Die [Gehrung|bevel] lässt sie schließen.',
  ),
  clearance: term(
    'Luft',
    'spiel abstand',
    'Abstand zwischen der Innenseite des Schaumstoffs und dem, worüber er geht: Rohr, Stab, Kopf.',
  ),
  core: term(
    'Kern',
    'rohr stab dübel',
    'Worum der Schaumstoff liegt und worauf er bleibt: ein Rohr, ein Stab, eine Helmschale.',
  ),
  corner: term('Ecke', 'punkt', 'Wo sich Kanten des Modells treffen. Wege laufen von Ecke zu Ecke.'),
  'cut-line': term(
    'Schnittlinie',
    'umriss',
    'Die breite Linie auf einer Schablone. Auf ihr wird geschnitten; die [andere Kante|other-edge] der Gehrung ist schmal.',
  ),
  dart: term(
    'Abnäher',
    'keil zwickel',
    'Eine [Naht|seam], die in einem Stück endet. Wird sie geschlossen, rundet sich das flache Stück, wie an einer Jacke.',
  ),
  'dry-fit': term(
    'Passprobe',
    'anprobe zusammenbau',
    'Alle Stücke ohne Kleber zusammengesetzt. Das Fenster tut es zuerst, mit Dicke und Gehrungen, und misst jeden Spalt.',
  ),
  ease: term(
    'Zugabe',
    'bequemlichkeit spiel',
    'Luft über das Körpermaß hinaus, am [Umfang|girth] gemessen: für Polster, Ärmel, Atem.',
  ),
  edge: term(
    'Kante',
    'linie',
    'Eine Linie des Modells, an der sich zwei Flächen treffen. Eine [Naht|seam] folgt Kanten oder läuft über Flächen.',
  ),
  face: term(
    'Sichtseite',
    'außen vorn',
    'Die Außenseite des fertigen Requisits. Gegenüber liegt die [Rückseite|back].',
  ),
  fold: term(
    'Falz',
    'knick grat kehle',
    'Eine Linie, an der sich ein Stück wendet, aber ganz bleibt. Auf Papier eine Linie aus langen Strichen und Punkten.',
  ),
  gap: term(
    'Spalt',
    'öffnung fuge',
    'Wie weit zwei Kanten bei der [Passprobe|dry-fit] auseinander bleiben. Kleber überbrückt einen halben Millimeter.',
  ),
  girth: term(
    'Umfang',
    'rundum',
    'Was ein Maßband um einen Körper zeigt. Es überspannt Höhlungen, wie ein Band es tut.',
  ),
  grain: term(
    'Laufrichtung',
    'strich faser richtung',
    'Die Richtung, in der die Platte hergestellt ist. Schaumstoff dehnt sich und schrumpft in einer Richtung mehr; der Pfeil auf dem Stück zeigt, was längs der Platte liegt.',
  ),
  groove: term(
    'Nut',
    'v-nut rille',
    'Ein Schnitt, der längs eines [Falzes|fold] nur ein Stück hineingeht: Dicker Schaumstoff wendet sich scharf, und seine Haut bleibt ganz.',
  ),
  hinge: term(
    'Steg',
    'haut scharnier',
    'Der dünne Rest unter einer [Nut|groove]. Er behält seine Länge, wenn das Stück gefalzt wird.',
  ),
  kerf: term(
    'Schlitz',
    'sägeschnitt schnittbreite',
    'Was eine Klinge wegnimmt, oder einer von vielen Schnitten nebeneinander, mit denen sich dicker Schaumstoff biegen lässt. Seine Breite bestimmt, wie weit.',
  ),
  lap: term(
    'Überlappung',
    'überlappt klebelasche',
    'Eine [Naht|seam], bei der eine Seite über die andere reicht und darauf geklebt wird. Fest, und dort dicker.',
  ),
  layer: term(
    'Lage',
    'schicht',
    'Eine Platte einer Wand aus mehreren. Jede hat ihre eigene Größe, denn außen ist länger.',
  ),
  'mate-mark': term(
    'Passmarke',
    'passzeichen kerbe',
    'Ein kurzer Strich quer zum Schnitt. Er trifft die Marke mit derselben Nummer am anderen Stück, damit Kanten nicht wandern.',
  ),
  margin: term('Rand', 'druckrand', 'Papier am Rand, das ein Drucker weiß lässt.'),
  neutral: term(
    'neutrale Schicht',
    'neutrale faser k',
    'Die Schicht im Schaumstoff, die in einer [Biegung|bend] ihre Länge behält. Nach ihr werden Stücke ausgelegt; so passen sie, wenn sie gerollt sind.',
  ),
  offcut: term('Reststück', 'rest verschnitt', 'Übriger Schaumstoff, groß genug, um wieder daraus zu schneiden.'),
  'open-edge': term(
    'offene Kante',
    'rand saum',
    'Ein Rand des Requisits, wo der Schaumstoff aufhört: der Saum eines Helms.',
  ),
  'other-edge': term(
    'andere Kante',
    'zweite linie',
    'Wo eine [Gehrung|bevel] auf der fernen Seite des Schaumstoffs austritt. Die schmale Linie neben der [Schnittlinie|cut-line].',
  ),
  overlap: term(
    'Überstand',
    'überlappen klebestreifen',
    'Wie weit Seiten übereinanderliegen oder zwei Kanten bei der [Passprobe|dry-fit] ineinanderragen.',
  ),
  page: term(
    'Seite',
    'papier blatt',
    'Ein bedrucktes Blatt. Ein größeres Stück läuft über mehrere, mit Marken zum Aneinanderlegen.',
  ),
  panel: term('Feld', 'facette', 'Ein nahezu flacher Teil eines Stücks zwischen [Falzen|fold].'),
  piece: term(
    'Stück',
    'teil schablone',
    'Was am Stück aus Schaumstoff geschnitten wird. Es hat eine Nummer, und an jeder Kante einen Buchstaben.',
  ),
  pitch: term(
    'Steigung',
    'wickeln gang',
    'Wie weit ein gewickelter Streifen bei einer Umdrehung am [Kern|core] weiterläuft.',
  ),
  ridge: term('Grat', 'kamm knick', 'Eine Linie scharfer Kanten am Modell, nach außen oder nach innen.'),
  'scale-square': term(
    'Maßquadrat',
    'prüfquadrat 100 mm',
    'Das Quadrat auf der ersten Seite. Mit dem Lineal messen: Sind es nicht 100 mm, sind auch die Schablonen falsch.',
  ),
  seam: term(
    'Naht',
    'schnitt fuge',
    'Eine Linie, an der der Schaumstoff getrennt ist und zwei Kanten zusammengeklebt werden. Beide tragen denselben Buchstaben.',
  ),
  sheet: term('Platte', 'bogen bestand', 'Schaumstoff, wie er verkauft wird. Auf Platten werden Stücke angeordnet.'),
  shrinkage: term(
    'Schrumpfen',
    'wärme schrumpf',
    'Wie viel kleiner Schaumstoff beim Erwärmen wird, längs und quer zur Platte.',
  ),
  squash: term(
    'Stauchung',
    'drücken kräuseln',
    'Wie viel kürzer der Schaumstoff irgendwo werden muss, in Prozent. Er wirft eher Falten, als dass er reißt.',
  ),
  stack: term(
    'Stapel',
    'scheiben schichten',
    'Ein Körper aus flachen, aufeinandergeklebten Lagen, jede eine Platte dick, und geschliffen.',
  ),
  stagger: term(
    'Versatz',
    'versetzen',
    'Wie weit die [Nähte|seam] einer [Lage|layer] neben denen der nächsten liegen, damit keine ganz hindurchgeht.',
  ),
  strain: term(
    'Beanspruchung',
    'haut randfaser',
    'Wie stark die äußere Haut in einer engen [Biegung|bend] gedehnt und die innere gedrückt wird, in Prozent.',
  ),
  stretch: term(
    'Dehnung',
    'ziehen längen',
    'Wie viel länger der Schaumstoff irgendwo werden muss, in Prozent. Warmer Schaumstoff gibt mehr nach.',
  ),
  template: term(
    'Schablone',
    'vorlage',
    'Ein [Stück|piece] auf Papier in wahrer Größe. Es wird auf Schaumstoff umfahren und lässt sich wieder benutzen.',
  ),
  thread: term(
    'Faden',
    'verbindung',
    'Die dünne Linie auf der Werkbank, die die beiden Kanten einer [Naht|seam] verbindet, wo immer sie liegen.',
  ),
  trim: term(
    'Zierleiste',
    'einfassung streifen borte',
    'Ein Streifen, an einer [Naht|seam] oder einer [offenen Kante|open-edge] aufgeklebt, um sie zu verbergen oder zu schmücken.',
  ),
  twin: term(
    'Gegenstück',
    'spiegelbild paar',
    'Ein Stück, das ein anderes spiegelt. Eine [Schablone|template], gewendet, schneidet beide.',
  ),
  wrap: term(
    'Mantel',
    'wickel rolle',
    'Schaumstoff, ohne Spalt um einen [Kern|core] gelegt: gerollt um ein Rohr, gefächert um einen Kegel.',
  ),
};
