/** Where a piece gives most, and which way. */
export const PLACES: Readonly<Record<string, string>> = {
  'over more than half of it': 'über mehr als die Hälfte',
  'in the middle': 'in der Mitte',
  'at one side, half way up': 'an einer Seite, auf halber Höhe',
  'near the top': 'nahe der oberen Kante',
  'near the bottom': 'nahe der unteren Kante',
  'at the middle of a long side': 'in der Mitte einer langen Seite',
  'near one end': 'nahe einem Ende',
  'in every direction': 'in alle Richtungen',
  'along the edge': 'an der Kante entlang',
  'the way the strokes show': 'wie die Striche zeigen',
  lengthwise: 'der Länge nach',
  crosswise: 'quer',
  'aslant to its length': 'schräg zur Länge',
  'along the up arrow': 'längs des Pfeils nach oben',
  'across the up arrow': 'quer zum Pfeil nach oben',
  'aslant to the up arrow': 'schräg zum Pfeil nach oben',
};

const WAY = /^(pull|gather) it (.+)$/;
const SPOT = /^(\p{Lu}[^:.]*): ((?:pull|gather) it [^.]+)\.$/u;

/** `pull it lengthwise`; null for other texts. */
export function wayText(text: string): string | null {
  const way = WAY.exec(text);
  return way !== null && Object.hasOwn(PLACES, way[2])
    ? `${PLACES[way[2]]} ${way[1] === 'pull' ? 'dehnen' : 'stauchen'}`
    : null;
}

/** `Near the top: pull it lengthwise.`; null for other texts. */
export function spotText(text: string): string | null {
  const spot = SPOT.exec(text);
  if (spot === null) return null;
  const place = PLACES[spot[1].charAt(0).toLowerCase() + spot[1].slice(1)];
  const way = wayText(spot[2]);
  return place === undefined || way === null ? null : `${place.charAt(0).toUpperCase()}${place.slice(1)}: ${way}.`;
}
