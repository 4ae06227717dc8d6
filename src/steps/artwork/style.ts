import type { XmlElement } from '../../geom/xml-text.ts';

/** What an element has from those it stands in, as written. */
export interface ArtStyle {
  readonly fill: string;
  readonly 'fill-rule': string;
  readonly stroke: string;
  readonly 'stroke-width': string;
  readonly 'stroke-linecap': string;
  readonly 'stroke-linejoin': string;
  readonly 'stroke-miterlimit': string;
  readonly visibility: string;
  readonly color: string;
}

/** Before anything is said (SVG 1.1, appendix N). */
export const FIRST_STYLE: ArtStyle = {
  fill: 'black',
  'fill-rule': 'nonzero',
  stroke: 'none',
  'stroke-width': '1',
  'stroke-linecap': 'butt',
  'stroke-linejoin': 'miter',
  'stroke-miterlimit': '4',
  visibility: 'visible',
  color: 'black',
};

const INHERITED = Object.keys(FIRST_STYLE) as (keyof ArtStyle)[];

/** A property by the element's own words: within `style` before the attribute; empty where it says nothing. */
export function ownProperty({ attributes }: XmlElement, property: string): string {
  const style = attributes.get('style');
  if (style !== undefined) {
    for (const rule of style
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .split(';')
      .reverse()) {
      const colon = rule.indexOf(':');
      if (colon > 0 && rule.slice(0, colon).trim().toLowerCase() === property)
        return rule
          .slice(colon + 1)
          .replace(/!important\s*$/i, '')
          .trim();
    }
  }
  return (attributes.get(property) ?? '').trim();
}

/** The style of an element within one of a given style. */
export function styleWithin(outer: ArtStyle, element: XmlElement): ArtStyle {
  const style: Record<keyof ArtStyle, string> = { ...outer };
  for (const property of INHERITED) {
    const own = ownProperty(element, property);
    if (own !== '' && own !== 'inherit') style[property] = own;
  }
  return style;
}

/** True for a paint that leaves something to see. */
export const isPainted = (paint: string): boolean => paint !== 'none' && paint !== 'transparent' && paint !== '';

export const isByReference = (paint: string): boolean => /^url\(/i.test(paint);
