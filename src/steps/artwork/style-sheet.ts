import type { XmlElement } from '../../geom/xml-text.ts';

/** A rule of a style sheet with one plain selector: a class, an id, the name of an element, or all. */
interface StyleRule {
  readonly selector: string;
  readonly properties: ReadonlyMap<string, string>;
}

/** Rules of one drawing at most. */
const MOST_RULES = 2000;

/**
 * The plain rules of the style sheets in a drawing: `.class`, `#id`, `path`, `*`, several with commas between. What is of another kind is counted.
 */
export class StyleSheet {
  readonly #rules: StyleRule[] = [];
  /** Selectors that are not understood. */
  unread = 0;

  /** @param text  of an element `style`. */
  add(text: string): void {
    for (const [selectors, body] of rulesIn(withoutRemarks(text))) {
      const properties = new Map<string, string>();
      for (const one of body.split(';')) {
        const colon = one.indexOf(':');
        if (colon > 0) properties.set(one.slice(0, colon).trim().toLowerCase(), one.slice(colon + 1).trim());
      }
      for (const selector of selectors.split(',').map((one) => one.trim())) {
        if (/^(\*|[.#]?[\w-]+)$/.test(selector) && this.#rules.length < MOST_RULES)
          this.#rules.push({ selector, properties });
        else this.unread += 1;
      }
    }
  }

  /** The element with what the sheet says of it as attributes, in place of its own; its `style` still goes first. */
  dressed(element: XmlElement, name: string): XmlElement {
    if (this.#rules.length === 0) return element;
    const classes = new Set((element.attributes.get('class') ?? '').split(/\s+/));
    const id = element.attributes.get('id') ?? '';
    const fits = ({ selector }: StyleRule): number => {
      if (selector.startsWith('#')) return selector.slice(1) === id ? 3 : 0;
      if (selector.startsWith('.')) return classes.has(selector.slice(1)) ? 2 : 0;
      return selector === '*' || selector === name ? 1 : 0;
    };
    const attributes = new Map(element.attributes);
    let isDressed = false;
    for (const rank of [1, 2, 3]) {
      for (const rule of this.#rules) {
        if (fits(rule) !== rank) continue;
        isDressed = true;
        for (const [property, value] of rule.properties) attributes.set(property, value);
      }
    }
    return isDressed ? { ...element, attributes } : element;
  }
}

/** Remarks taken out; one without an end reaches to the end. Gone through once, however many begin. */
function withoutRemarks(text: string): string {
  let plain = '';
  for (let at = 0; ;) {
    const begin = text.indexOf('/*', at);
    if (begin < 0) return plain + text.slice(at);
    plain += text.slice(at, begin);
    const end = text.indexOf('*/', begin + 2);
    if (end < 0) return plain;
    at = end + 2;
  }
}

/** What stands before and in each innermost pair of braces. Gone through once, however the braces stand. */
function* rulesIn(text: string): Iterable<readonly [selectors: string, body: string]> {
  for (let at = 0; ;) {
    const close = text.indexOf('}', at);
    if (close < 0) return;
    const part = text.slice(at, close);
    const open = part.lastIndexOf('{');
    const before = part.slice(0, Math.max(0, open));
    const selectors = before.slice(before.lastIndexOf('{') + 1);
    if (selectors !== '') yield [selectors, part.slice(open + 1)];
    at = close + 1;
  }
}
