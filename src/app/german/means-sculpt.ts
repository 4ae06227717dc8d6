import type { MEANS_SCULPT } from '../help/means-sculpt-words.ts';
import type { TranslationInPart } from '../language/spoken.ts';

/** What fields about the sculpt mean. Words in brackets lead to the words of the trade by their English names. */
export const SCULPT: TranslationInPart<typeof MEANS_SCULPT> = {
  'job-name': 'Wie der Auftrag heißt. Der Name steht auf jeder Seite und an den gespeicherten Dateien.',
  'size-axis':
    'Die Seite des Modells, deren Länge bekannt ist. Die längste Seite lässt sich an einer Zeichnung am leichtesten messen.',
  'size-known':
    'Wie lang diese Seite am fertigen Requisit sein soll, mit Schaumstoff. Alles andere folgt daraus in wahrem Maßstab.',
  'size-between':
    'Die Länge zwischen den beiden gewählten Ecken, wie sie am fertigen Requisit sein soll. Bei einem Helm: von Ohr zu Ohr.',
  up: 'Was in der Datei oben ist. Danach drehen sich die Ansicht und die Pfeile der Stücke; an der Größe ändert es nichts.',
  triangles:
    'Wie viele Dreiecke das einfachere Modell haben soll. Weniger sind schneller ausgelegt; 5000 reichen für die meisten Requisiten.',
  deviation:
    'Wie weit die einfachere Oberfläche von der eigenen abweichen darf. Ein halber Millimeter ist weniger, als ein Messer abirrt.',
  mirror:
    'Was markiert wird, erscheint auch auf der anderen Hälfte, und was verbunden wird, wird auf beiden verbunden. Aus für alles Ungleiche.',
  group: 'Gruppen aus der Datei selbst, mit ihren Namen. Der Schaumstoff wird rund um die gewählte getrennt.',
  sharper:
    'Kanten, die sich schärfer wenden, werden auf einmal [getrennt|seam]: richtig für Requisiten aus Feldern. Üblich sind 30 bis 45 Grad.',
  'proposal-limit':
    'Wie viel [Dehnung|stretch] und [Stauchung|squash] ein Vorschlag dem Schaumstoff zumuten darf. Weniger heißt mehr Nähte. Leer heißt, was der Schaumstoff verträgt.',
  'proposal-hide':
    'Nähte kosten auf dieser Seite weniger und liegen dann, wo niemand hinsieht. Ein Helm versteckt sie hinten.',
  ridge:
    'Wie scharf sich eine Kante wenden muss, damit ihr als Grat gefolgt wird. Üblich sind 30 Grad; bei weichen Formen weniger.',
  spacing:
    'Wie weit die Ebenen auseinanderliegen, an denen getrennt wird, von der gehaltenen an. Rüstungsbänder: 40 bis 60 mm.',
  taut: 'Wie weit sich die Naht beim Begradigen von ihrer Stelle entfernen darf. 3 mm nehmen eine zackige Linie weg und nicht mehr.',
  'drawing-size': 'Größe der Zeichnung gegenüber ihrer Datei, in Prozent. 100 legt sie auf, wie sie gezeichnet ist.',
  'drawing-turn': 'Wie weit die Zeichnung auf der Oberfläche gedreht ist, in Grad gegen den Uhrzeigersinn.',
  'dart-end':
    'Wie ein [Abnäher|dart] endet. Ein rundes Loch verhindert, dass der Schaumstoff beim Ziehen weiterreißt; an einer Spitze ist weniger zu verbergen.',
  'tip-hole':
    'Weite des Lochs am Ende des Abnähers. Üblich sind 3 mm, mit einem Locheisen oder einem heißen Nagel gemacht.',
  'area-name': 'Wie diese Fläche heißt, in Listen und auf Papier.',
  'area-give':
    'Ob der Schaumstoff hier beim Formen nachgibt. Eine steife Fläche behält ihre Längen, eine zu erwärmende darf sich mehr [dehnen|stretch].',
  'area-seams': 'Ob hier Nähte laufen dürfen, wenn sie vorgeschlagen werden: freigehalten, frei oder bevorzugt.',
  'area-raised':
    'Eine Platte Schaumstoff, auf diese Fläche zugeschnitten und auf die Sichtseite geklebt: Zierleisten, Abzeichen, erhabene Felder.',
  within: 'Wie weit die Fläche von der angeklickten Stelle reicht. Leer nimmt das ganze Feld.',

  foam: 'Dicke der Platte. Sie versetzt die Schicht, die ihre Länge behält; Stücke ändern also ihre Form und nicht nur ihren Rand. 5 bis 10 mm für Rüstung, 2 für Zierleisten.',
  'sheet-size':
    'Größe der gekauften Platte. Stücke werden auf Platten dieser Größe angeordnet; ist eines größer, wird es gesagt.',
  thickness:
    'Was Lineal oder Messschieber am vorhandenen Schaumstoff zeigen. Als 5 mm verkaufte Platten haben oft 4,6: Eine falsche Dicke öffnet jede [Gehrung|bevel].',
  surface:
    'Welche Oberfläche des Schaumstoffs das Modell ist. Sichtseite: die modellierte Außenseite. Rückseite: ein Kopf, ein Arm oder ein Rohr, um das der Schaumstoff geht. Üblich ist die Sichtseite.',
  'wall-sheet': 'Die [Lage|layer] der Wand, die auf der Werkbank liegt und für die die Felder darunter gelten.',
  stagger:
    'Wie weit die Nähte dieser Platte neben denen der Platte außen liegen, damit keine durch die ganze Wand geht. 15 bis 30 mm; 0 lässt sie übereinander.',
  neutral:
    'Wo in der Dicke der Schaumstoff beim Biegen seine Länge behält: 0 innen, 1 außen. Danach richtet sich, wie lang ein gerolltes Stück ist. 0,5, bis gemessen ist.',
  traced:
    'Die Seite des Schaumstoffs, auf der die Schablone umfahren wird. Auf der Rückseite bleibt die Sichtseite ohne Tinte; die Schablone ist dann gespiegelt.',
  'neutral-length': 'Wie lang der Probestreifen flach ist. Der gedruckte Streifen sagt, wie lang er sein soll.',
  'neutral-thickness': 'Dicke des Probestreifens, an ihm selbst gemessen.',
  'neutral-across': 'Wie breit das runde Ding ist, um das der Streifen gebogen wird: eine Dose, ein Rohr, ein Glas.',
  'neutral-arc': 'Von Marke zu Marke außen am gebogenen Streifen entlang. Auf einen halben Millimeter genau ablesen.',
  'shrink-alongPct':
    'Wie viel kürzer der Schaumstoff beim Erwärmen längs der Platte wird, in Prozent. Üblich sind 0 bis 3; ein Quadrat von 100 mm messen.',
  'shrink-acrossPct':
    'Wie viel schmaler der Schaumstoff beim Erwärmen quer zur Platte wird, in Prozent. Oft weniger als längs.',
  'allow-shrinkage':
    'Stücke werden um das größer gezeichnet, was sie in der Wärme verlieren. Auslassen, wo der Schaumstoff nicht erwärmt wird.',
  'hold-seams':
    'Was nachgibt, wenn eine runde Oberfläche flach ausgelegt wird: die Längen der Nähte oder der Schaumstoff dazwischen. Üblich ist: Nahtlängen zuerst, damit Kanten sich treffen.',
  'squash-price':
    'Wie viel mehr Stauchung zählt als Dehnung. Schaumstoff wirft eher Falten, als dass er reißt: 2- bis 4-fach.',
  'laying-evenOut':
    'Die schlimmste Stelle eines Stücks wird auf mehr Schaumstoff verteilt. Für Schaumstoff nahe seiner Grenze.',
  'laying-keepApart': 'Kanten eines Stücks, die auf der Platte übereinanderlägen, werden auseinandergehalten.',
  'rule-foam': 'Der Schaumstoff, für den diese Regeln gelten. Jeder behält seine eigenen.',
  'rule-stretchNoticePct':
    'Von hier an sagt ein Hinweis, dass der Schaumstoff nachgeben muss. 3 Prozent bei kaltem Schaumstoff.',
  'rule-stretchTooMuchPct':
    'Von hier an ist es zu viel, und eine Naht oder ein [Abnäher|dart] wird gebraucht. 8 Prozent kalt, 20 warm: eine Werkstattregel, veröffentlicht hat es niemand.',
  'rule-bendNoticePct':
    'Beanspruchung der Außenhaut in einer engen Biegung, von der an ein Hinweis kommt. Üblich sind 10 Prozent.',
  'rule-bendTooMuchPct':
    'Beanspruchung der Außenhaut, die zu viel ist: dünneren Schaumstoff, zwei [Lagen|layer] oder [Nuten|groove] nehmen.',
  'rule-foldLimitDeg': 'Schärfere Falze werden von hinten [genutet|groove] und nicht nur gebogen. Üblich sind 20 Grad.',
  'rule-panelFlatDeg': 'Ein Feld gilt als flach, solange es sich von Ende zu Ende nicht weiter neigt.',
  'rule-hingeMm':
    'Schaumstoff, der unter einer [Nut|groove] ganz bleibt: die Haut, an der sie sich faltet. 1 bis 1,5 mm.',
  'rule-leastHingeMm': 'Eine dünnere Haut reißt beim Falzen. Solche Nuten werden gesagt.',
  'rule-kerfMm': 'Wie breit Klinge oder Säge einen [Schlitz|kerf] schneiden. Einen in Abfall schneiden und messen.',
  'rule-bevelLimitDeg':
    'Wie weit sich Sägetisch oder Klinge zur Senkrechten neigen. Die meisten enden bei 45 Grad; eine steilere [Gehrung|bevel] wird gesagt.',
  'rule-narrowThicknesses':
    'Ein Stück, das schmaler ist als so viele Dicken, wird gesagt: Es ist schwer zu schneiden und zu kleben.',
  'rule-markSpacingMm':
    '[Passmarken|mate-mark] stehen an einer Naht nicht weiter auseinander. Üblich sind 80 mm, an Kurven weniger.',
  'rule-markLeastSeamMm': 'Kürzere Nähte brauchen keine Passmarken.',

  'tape-axis': 'Wozu das Maßband quer steht. Ein Kopf wird quer zur Höhe gemessen.',
  'tape-bodyGirthMm':
    'Der am Körper gemessene [Umfang|girth], mit allem, was darunter getragen wird. Das Band anliegend ziehen, nicht fest.',
  'tape-easeMm':
    'Luft über das Körpermaß hinaus, am Umfang: [Zugabe|ease]. Zwei Finger unter einem Helm sind etwa 40 mm, eine Armschiene über einem Ärmel 20.',
  'tape-bodyBreadthMm':
    'Wie breit der Körper hier ist. Ein Helm mit richtigem Umfang kann an den Ohren noch zu schmal sein.',
  'tape-bodyLengthMm': 'Wie lang der Körper hier von vorn nach hinten ist.',
  place: 'Wo es steht. Ziehen oder die Pfeiltasten benutzen.',
  'core-axis': 'Wohin der Stab oder das Rohr läuft.',
  'core-diameterMm':
    'Außendurchmesser von Stab oder Rohr. Nachmessen: Rohre werden nach einem Namen verkauft, nicht nach diesem Maß.',
  'core-lengthMm': 'Wie weit der Stab in den Schaumstoff reicht.',
  'core-unit': 'Was die Zahlen in der Datei des Kerns bedeuten.',
  room: 'Kleinste [Luft|clearance] zwischen Schaumstoff und Kern, die ringsum gewünscht ist. 1 mm gleitet, 0 ist stramm, 5 nehmen Polster auf.',
  'joint-axis': 'Die Linie, um die sich das Gelenk dreht.',
  'joint-side': 'Die Seite, die sich dreht. Die andere bleibt.',
  'joint-bend': 'Wie weit es sich drehen muss, in Grad. Trifft vorher Schaumstoff auf Schaumstoff, wird es gesagt.',
  'covers-face': 'Es wird über dem Gesicht getragen. Dann wird nach Öffnungen zum Sehen und Atmen gefragt.',
  'opening-use': 'Wofür diese Öffnung ist. Ein Einstieg wird mit dem verglichen, was hindurchmuss.',
  'pass-girthMm': 'Umfang dessen, was auf dem Weg hinein durchmuss: beim Helm der Kopf, bei der Armschiene die Faust.',
  'pass-breadthMm': 'Breite dessen, was durchmuss, an der breitesten Stelle.',
  off: 'Versetzt den ganzen Schaumstoff vom Modell nach außen, mit einem Minus nach innen, und lässt seine Dicke. Für Polster.',
  'score-depthMm':
    'Wie tief die Sichtseite für eine Linie geschnitten wird, die Wärme öffnet. Üblich ist ein Drittel der Dicke.',
  'score-openMm': 'Wie weit die Linie nach dem Erwärmen klafft. Sie ist zu sehen, und kein Schaumstoff fehlt.',
};
