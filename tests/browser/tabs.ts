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
