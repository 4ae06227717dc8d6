import type { Page } from 'playwright-core';

/** What has the keyboard. */
export interface Focus {
  /** Tag names from the window down to the focused control. */
  readonly path: string;
  readonly text: string;
  readonly type: string;
}

export async function focusNow(page: Page): Promise<Focus> {
  return await page.evaluate(() => {
    let at = document.activeElement;
    const path: string[] = [];
    while (at !== null) {
      path.push(at.tagName);
      if (at.shadowRoot?.activeElement == null) break;
      at = at.shadowRoot.activeElement;
    }
    const control = at as HTMLInputElement | null;
    return { path: path.join(' '), text: control?.innerText ?? '', type: control?.type ?? '' };
  });
}

/**
 * What is wrong with the control that has the keyboard: it must be one, say what it is, show that it has the keyboard, and lie under nothing
 * (WCAG 2.2: 2.4.3, 4.1.2, 2.4.7, 2.4.11). Empty where nothing is.
 */
export async function focusFaults(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement != null) at = at.shadowRoot.activeElement;
    if (at === null || at === document.body) return ['nothing has the keyboard'];
    const control = at as HTMLInputElement;
    const labels = [...(control.labels ?? [])];
    const called = [
      control.ariaLabel,
      control.innerText as string | undefined,
      control.title,
      ...labels.map((one) => one.innerText),
    ];
    const rings = [control, ...labels, control.closest('label, li')].filter((one) => one !== null);
    const isRinged = rings.some((one) => {
      const { outlineStyle, outlineWidth, textDecorationLine, borderTopWidth } = getComputedStyle(one);
      return (
        (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) ||
        (['h2', 'h3'].includes(one.localName) && textDecorationLine === 'underline') ||
        (one.matches('.work') && parseFloat(borderTopWidth) >= 4) ||
        // A piece on its sheet has a bold outline.
        (one.matches('g.piece') && parseFloat(getComputedStyle(one.firstElementChild ?? one).strokeWidth) >= 3)
      );
    });
    const { left, top, right, bottom } = control.getBoundingClientRect();
    const xs = [left + 2, (left + right) / 2, right - 2];
    const ys = [top + 2, (top + bottom) / 2, bottom - 2];
    const isSeen = xs.some((x) =>
      ys.some((y) => {
        let hit = document.elementFromPoint(x, y);
        while (hit?.shadowRoot != null && hit !== control) {
          const inner: Element | null = hit.shadowRoot.elementFromPoint(x, y);
          if (inner === null || inner === hit) break;
          hit = inner;
        }
        return hit !== null && (control.contains(hit) || labels.some((one) => one.contains(hit)));
      }),
    );
    const name = `${control.localName}.${control.getAttribute('class') ?? ''} ${called.join(' ').trim()}`;
    return [
      ...(called.every((text) => (text ?? '').trim() === '') ? [`${name} has no name`] : []),
      ...(isRinged ? [] : [`${name} does not show that it has the keyboard`]),
      ...(isSeen ? [] : [`${name} is hidden`]),
    ];
  });
}

/** Presses Tab until a control inside an element is reached, by its words or its type. @param press  presses a key once */
export async function tabTo(
  page: Page,
  element: string,
  words: RegExp | null,
  type = '',
  press: (key: string) => Promise<void> = (key) => page.keyboard.press(key),
): Promise<void> {
  for (let i = 0; i < 150; i += 1) {
    await press('Tab');
    const focus = await focusNow(page);
    if (!focus.path.includes(element)) continue;
    if ((words === null || words.test(focus.text.trim())) && (type === '' || focus.type === type)) return;
  }
  throw new Error(`Tab never reaches ${String(words)} ${type} in ${element}`);
}
