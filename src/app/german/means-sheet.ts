import type { MEANS_SHEET } from '../help/means-sheet-words.ts';
import type { TranslationInPart } from '../language/spoken.ts';

/** What fields about pieces, sheets, paper and files mean, and those of the picture. */
export const SHEET: TranslationInPart<typeof MEANS_SHEET> = {
  lap: 'Wie weit eine Seite einer [Überlappung|lap] über die andere reicht: Schaumstoff außerhalb der Naht, auf den geklebt wird. 10 bis 15 mm halten gut.',
  'piece-name': 'Wie dieses Stück heißt, auf dem Schaumstoff und in jeder Liste.',
  'piece-quantity': 'Wie viele von diesem Stück aus seiner einen Schablone geschnitten werden.',
  'piece-foam': 'Der Schaumstoff dieses einen Stücks, wo er vom Rest seiner Platte abweicht.',
  'piece-colour': 'Die Farbe, in der dieses Stück gestrichen wird.',
  grain:
    'Wie das Stück zur [Laufrichtung|grain] der Platte liegt. Schaumstoff dehnt sich in einer Richtung mehr; ein stark gebogenes Teil liegt darin.',
  'grain-angle': 'Wohin der Pfeil der Laufrichtung auf dem Stück zeigt.',
  'done-printed': 'Abhaken, wenn die Seite auf dem Tisch liegt. Ein Stück, das sich danach ändert, sagt es.',
  'done-cut': 'Abhaken, wenn es geschnitten ist. Es behält dann seine Form, bis es freigegeben wird.',
  'to-sheet': 'Die Platte, auf die dieses Stück gelegt wird.',
  together: 'Stücke, die auf einer Platte nebeneinanderliegen, damit Laufrichtung und Farbe zusammenpassen.',
  'shop-text': 'Die Liste als Text, zum Kopieren in eine Nachricht oder eine Notiz.',
  'shop-bought': 'Abhaken, wenn es im Korb liegt. Was sich danach ändert, sagt, wie viel fehlt.',
  'version-name':
    'Wie diese Fassung heißt. Unter dem Namen ist sie wiederzufinden, in diesem Auftrag und in seiner Datei.',
  'compare-state':
    'Welcher Stand des Auftrags: wie er jetzt ist, eine aufbewahrte Fassung oder ein Schritt dieses Besuchs.',
  'stock-name': 'Was auf der Platte oder dem [Reststück|offcut] steht, um es wiederzufinden.',
  'stock-count': 'Wie viele davon da sind.',
  'stock-widthMm': 'Wie breit die vorhandene Platte ist.',
  'stock-heightMm': 'Wie hoch die vorhandene Platte ist, in [Laufrichtung|grain].',
  'outline-corner': 'Die gewählte Ecke des Umrisses.',
  'outline-place': 'Wo diese Ecke liegt, von der unteren Ecke der Zeichnung aus.',
  'fill-borderMm':
    'Ein Rand der Platte, aus dem nichts geschnitten wird: Kanten bekommen beim Versand Dellen. Üblich sind 5 mm.',
  'fill-spacingMm':
    'Schaumstoff, der zwischen Stücken frei bleibt, damit der Schnitt das Nachbarstück nicht verdirbt. Ein Messer braucht 2 mm, eine Säge 5.',
  'fill-cut': 'Womit geschnitten wird. Danach richtet sich der Abstand zwischen Stücken.',
  'fill-turns':
    'Ob Stücke gedreht werden dürfen, um die Platte besser zu füllen. Schaumstoff mit [Laufrichtung|grain] soll nur in ihr liegen.',
  'fill-turnOver':
    'Stücke dürfen auch mit der Rückseite oben liegen. Nur für Schaumstoff, der auf beiden Seiten gleich ist.',
  'fill-buys': 'Neue Platten kommen dazu, wenn die vorhandenen voll sind. Aus: Was keinen Platz findet, wird gesagt.',

  paper:
    'Das Papier im Drucker. Eine Rolle druckt ganze Stücke; einzelne Seiten werden an ihrer [Überlappung|overlap] zusammengeklebt.',
  'paper-stands': 'Wie das Papier im Drucker liegt. Beides versuchen: Eines braucht oft weniger Seiten.',
  'twins-paper':
    'Eine Schablone lässt sich für das gespiegelte Stück wenden; je eine ist sicherer bei bedrucktem Schaumstoff.',
  'paper-language':
    'Die Sprache von Schablonen, Übersicht und Bauplan. Sie bleibt beim Auftrag, so druckt derselbe Auftrag überall dieselben Seiten.',
  'ruled-paper': 'Lange gerade Streifen gehen mit Lineal und Messer schneller als vom Papier.',
  'page-widthMm': 'Breite des eigenen Papiers.',
  'page-heightMm': 'Höhe des eigenen Papiers.',
  'page-marginMm':
    'Ein Rand, den der Drucker nicht erreicht. Die meisten brauchen 5 mm; ist er zu klein, fehlen Linien am Rand.',
  'page-overlapMm':
    'Wie weit Seiten beim Zusammenkleben übereinanderliegen. 10 mm lassen Platz für Kleber und eine Kontrolle.',
  printer: 'Drucker dehnen eine Seite ein wenig. Ein einmal ausgemessener Drucker wird auf jeder Seite berichtigt.',
  'printer-name': 'Wie dieser Drucker heißt. Seine Werte bleiben für den nächsten Auftrag.',
  'printer-acrossMm': 'Was das Lineal am Quadrat auf Seite 1 von links nach rechts zeigt. Es sollen 100 mm sein.',
  'printer-upMm': 'Was das Lineal am Quadrat von unten nach oben zeigt.',
  'printer-risingMm': 'Die Diagonale von unten links nach oben rechts. Sie zeigt, ob der Druck schief ist.',
  'printer-fallingMm': 'Die Diagonale von oben links nach unten rechts.',
  'mock-up-scale':
    'Wie viel kleiner das Modell aus Karton ist. 1:4 bringt einen Helm auf wenige Seiten und zeigt jede Naht.',
  card: 'Dicke des Kartons. Er vertritt den Schaumstoff, im Maßstab.',
  'files-kind': 'Wofür die Datei ist, steht daneben. Was gewählt ist, kommt zusammen, mehrere als ein ZIP.',
  'files-dpi': 'Wie fein die Bilder sind. 150 Punkte je Zoll zeigen jede Linie; 300 drucken scharf.',
  'files-smaller': 'Wievielmal kleiner das Modell gemacht wird, um es als Probe zu drucken.',
  cutter:
    'Was die Platten schneidet. Ein Laser brennt einen Spalt und braucht Schaumstoff, der gelasert werden darf; eine Klinge nicht.',
  'cut-width':
    'Breite des Spalts, den die Maschine schneidet, ihr [Schlitz|kerf]. Linien rücken um die Hälfte hinaus, damit Stücke ihre Größe behalten.',
  bridges:
    'Kleine Stellen, die stehen bleiben, damit Stücke nicht herausfallen oder hängen bleiben. Sie werden von Hand durchtrennt.',
  'bridge-count': 'Wie viele Stege jedes Stück halten. Drei oder vier verhindern, dass es sich dreht.',
  'bridge-width': 'Wie breit ein Steg ist. 1 mm hält in Schaumstoff von 5 mm.',

  colours:
    'Was die Farben des Bildes sagen: [Dehnung|stretch], Biegungen, Spalte der [Passprobe|dry-fit], Luft oder Farbe. Die Skala daneben hat die Werte.',
  stage: 'Wo die Stücke sind: am Requisit, zerlegt, flach oder auf ihren Platten. Ziehen oder die Buchstaben drücken.',
  look: 'Welche Oberfläche der Wand zu sehen ist: Sichtseite, Rückseite, die Schicht, die ihre Länge behält, oder das fertige Requisit.',
  'section-place': 'Wo die Ebene steht, die das Bild aufschneidet. Am Auftrag wird nichts geschnitten.',
  'foot-unit':
    'Längen werden in dieser Einheit gezeigt und verstanden. Die andere lässt sich immer mit ihrem Namen eingeben, wie 2 in.',
  'foot-language': 'Was das Fenster spricht. Der Auftrag bleibt, wie er ist.',
  'foot-theme': 'Dunkle Schrift auf hellem Papier oder helle auf dunklem.',
  'foot-contrast': 'Stärkere Linien und Wörter.',
  'foot-picture': 'Einfache Bilder sind auf kleinen Rechnern schneller. Kein Maß hängt davon ab.',
  'foot-keys':
    'Einzelne Buchstaben als Tasten. Ausschalten, wenn der Rechner mit der Stimme bedient wird oder Tasten aus Versehen gedrückt werden.',
};
