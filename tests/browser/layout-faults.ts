/** What of a window does not fit: things that stick out of their box, text that is cut off, texts that lie over each other. */

/** Rounding of boxes, px. */
const SLACK = 1.5;
/** Boxes of text lie over each other by more than this share of the lower one's height: lines that are set tight do not. */
const OVER_SHARE = 0.4;

/** Elements that have a frame round their text. */
const FRAMES: ReadonlySet<string> = new Set(['button', 'input', 'td', 'th', 'summary', 'kbd']);

interface TextBox {
  readonly text: string;
  readonly box: DOMRect;
  readonly at: string;
  readonly element: HTMLElement;
  readonly isAfloat: boolean;
}

/** @returns one sentence for each fault, empty where all fits. Texts of others' licences are left out: they scroll. */
export function layoutFaults(root: ParentNode): string[] {
  const elements = [...allIn(root)].filter(isShown);
  const texts = elements.flatMap(textBoxes);
  return [
    ...elements.flatMap(outOf),
    ...texts.flatMap(outOfSight),
    ...overlaps(texts.filter(({ isAfloat }) => !isAfloat)),
  ];
}

/** Every element below, through shadow roots, but drawings. */
function* allIn(root: ParentNode): Generator<HTMLElement> {
  for (const element of root.querySelectorAll('*')) {
    if (!(element instanceof HTMLElement)) continue;
    if (element.localName === 'fl-licences') continue;
    yield element;
    if (element.shadowRoot !== null) yield* allIn(element.shadowRoot);
  }
}

const isShown = (element: HTMLElement): boolean =>
  element.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true }) && !isOnlyHeard(element);

/** Texts for those who do not see are a pixel wide. */
function isOnlyHeard(element: HTMLElement): boolean {
  for (let at: Element | null = element; at !== null; at = parentOf(at)) {
    const box = at.getBoundingClientRect();
    if (box.width <= 1 && box.height <= 1 && getComputedStyle(at).position === 'absolute') return true;
  }
  return false;
}

const parentOf = (element: Element): Element | null =>
  element.assignedSlot ??
  element.parentElement ??
  (element.getRootNode() instanceof ShadowRoot ? (element.getRootNode() as ShadowRoot).host : null);

/** What cuts off its own text, and what holds text in a frame of its own that is too small for it. */
function outOf(element: HTMLElement): string[] {
  const style = getComputedStyle(element);
  if (style.display === 'inline' || style.display === 'contents' || element.clientWidth === 0) return [];
  const wide = element.scrollWidth - element.clientWidth;
  const high = element.scrollHeight - element.clientHeight;
  const isCut = ['hidden', 'clip'].includes(style.overflowY) && high > SLACK && element.textContent.trim() !== '';
  const isFrame = FRAMES.has(element.localName) || ['hidden', 'clip'].includes(style.overflowX);
  return [
    ...(isFrame && wide > SLACK ? [`${nameOf(element)} is ${wide} px too narrow for: ${saidBy(element)}`] : []),
    ...(isCut ? [`${nameOf(element)} cuts ${high} px off: ${saidBy(element)}`] : []),
  ];
}

/** Text beside what it is seen in: the window, or a box that cuts it off. One that scrolls from side to side shows all. */
function outOfSight({ text, box, at, element }: TextBox): string[] {
  let [left, right] = [0, document.documentElement.clientWidth];
  for (let above: Element | null = element; above !== null; above = parentOf(above)) {
    const { overflowX } = getComputedStyle(above);
    if (overflowX === 'visible') continue;
    if (overflowX !== 'hidden' && overflowX !== 'clip' && above.scrollWidth > above.clientWidth + SLACK) return [];
    const sight = above.getBoundingClientRect();
    [left, right] = [Math.max(left, sight.left), Math.min(right, sight.right)];
  }
  const out = Math.round(Math.max(left - box.left, box.right - right));
  return out > SLACK ? [`“${text}” in ${at} stands ${out} px out of sight`] : [];
}

/** True for what stays in its place while all else scrolls below it. */
function isAfloat(element: Element): boolean {
  for (let at: Element | null = element; at !== null; at = parentOf(at))
    if (['sticky', 'fixed'].includes(getComputedStyle(at).position)) return true;
  return false;
}

function textBoxes(element: HTMLElement): TextBox[] {
  const range = document.createRange();
  return [...element.childNodes]
    .filter((node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '')
    .flatMap((node) => {
      range.selectNodeContents(node);
      return [...range.getClientRects()].map((box) => ({
        text: saidBy(node),
        box,
        at: nameOf(element),
        element,
        isAfloat: isAfloat(element),
      }));
    })
    .filter(({ box }) => box.width > 0 && box.height > 0);
}

function overlaps(texts: readonly TextBox[]): string[] {
  const rows = texts.toSorted((a, b) => a.box.top - b.box.top);
  const faults: string[] = [];
  rows.forEach((one, i) => {
    for (let j = i + 1; j < rows.length && rows[j].box.top < one.box.bottom; j += 1) {
      const other = rows[j];
      const down = Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
      const across = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const isOver = down > OVER_SHARE * Math.min(one.box.height, other.box.height) && across > 2 * SLACK;
      if (isOver) faults.push(`“${one.text}” in ${one.at} lies over “${other.text}” in ${other.at}`);
    }
  });
  return faults;
}

const saidBy = (node: Node): string => (node.textContent ?? '').trim().replace(/\s+/g, ' ').slice(0, 60);

function nameOf(element: HTMLElement): string {
  const root = element.getRootNode();
  const own = `${element.localName}${element.className === '' ? '' : `.${element.className.split(' ').join('.')}`}`;
  return root instanceof ShadowRoot ? `${root.host.localName} ${own}` : own;
}
