/** A word of the window, what it is in German, and words that are not taken for it. */
export interface Term {
  readonly english: string;
  readonly german: string;
  readonly not?: readonly string[];
}

/**
 * The words of the trade in German, one for one. Sentences are short and name no one: the infinitive, or what is so. Figures carry a comma, and
 * a no-break space before their unit; „…“ are the quotation marks.
 */
export const GLOSSARY: readonly Term[] = [
  { english: 'sculpt', german: 'Modell', not: ['Skulptur', 'Mesh'] },
  { english: 'prop', german: 'Requisit', not: ['Prop'] },
  { english: 'job, job sheet', german: 'Auftrag, Auftragsblatt' },
  { english: 'bench', german: 'Werkbank' },
  { english: 'verb', german: 'Handgriff' },
  { english: 'part (of a prop)', german: 'Teil' },
  { english: 'piece', german: 'Stück' },
  { english: 'twin', german: 'Gegenstück' },
  { english: 'seam', german: 'Naht' },
  { english: 'edge, open edge', german: 'Kante, offene Kante' },
  { english: 'corner', german: 'Ecke' },
  { english: 'fold', german: 'Falz', not: ['Faltung'] },
  { english: 'ridge, valley', german: 'Grat, Kehle' },
  { english: 'dart', german: 'Abnäher' },
  { english: 'bevel', german: 'Gehrung', not: ['Fase'] },
  { english: 'butt', german: 'Stoß' },
  { english: 'lap', german: 'Überlappung' },
  { english: 'rebate, step', german: 'Stufenfalz, Stufe' },
  { english: 'groove', german: 'Nut' },
  { english: 'kerf', german: 'Schlitz' },
  { english: 'scored line', german: 'Ritzlinie' },
  { english: 'foam', german: 'Schaumstoff (EVA)', not: ['Foam'] },
  { english: 'sheet (of foam)', german: 'Platte' },
  { english: 'offcut', german: 'Reststück' },
  { english: 'layer', german: 'Lage' },
  { english: 'face side, back side', german: 'Sichtseite, Rückseite' },
  { english: 'neutral surface', german: 'neutrale Schicht' },
  { english: 'template', german: 'Schablone', not: ['Schnittmuster'] },
  { english: 'match mark', german: 'Passmarke' },
  { english: 'page', german: 'Seite' },
  { english: 'cut list', german: 'Zuschnittliste' },
  { english: 'build sheet', german: 'Bauplan' },
  { english: 'layout', german: 'Anordnung', not: ['Layout'] },
  { english: 'grain', german: 'Laufrichtung' },
  { english: 'stretch, squash', german: 'Dehnung, Stauchung' },
  { english: 'gap, overlap (of the dry fit)', german: 'Spalt, Überstand' },
  { english: 'dry fit', german: 'Passprobe' },
  { english: 'girth', german: 'Umfang' },
  { english: 'ease', german: 'Zugabe' },
  { english: 'core', german: 'Kern' },
  { english: 'trim', german: 'Zierleiste' },
  { english: 'strap, buckle', german: 'Riemen, Schnalle' },
  { english: 'coat', german: 'Anstrich' },
  { english: 'clay, fillet', german: 'Modelliermasse, Hohlkehle' },
  { english: 'mock-up', german: 'Probemodell' },
];
