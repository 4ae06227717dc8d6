import type { Page } from 'playwright-core';

/** What sticks out of the window to either side, and lists that are scrolled sideways, by their names; a table or a strip of pictures may be. */
export async function cutOffSideways(page: Page): Promise<string[]> {
  return await page.evaluate(() => {
    const found = new Set<string>();
    const walk = (root: ParentNode, isInside: boolean): void => {
      for (const part of root.children) {
        const isClipped = isInside || /auto|scroll|hidden|clip/.test(getComputedStyle(part).overflowX);
        const { left, right, width } = part.getBoundingClientRect();
        const sticksOut = !isInside && width > 1 && (right > innerWidth + 0.5 || left < -0.5);
        if (sticksOut && part.checkVisibility({ visibilityProperty: true }))
          found.add(`${part.localName}.${part.getAttribute('class') ?? ''}`);
        if (part.shadowRoot !== null) walk(part.shadowRoot, isClipped);
        walk(part, isClipped);
      }
    };
    walk(document.body, false);
    const beyond = document.documentElement.scrollWidth - innerWidth;
    return [...found, ...(beyond > 0 ? [`the window scrolls ${beyond} px sideways`] : [])];
  });
}

/** Opens everything in the window that can be opened. */
export async function openAll(page: Page): Promise<void> {
  await page.evaluate(() => {
    const open = (root: ParentNode): void => {
      for (const part of root.querySelectorAll('*')) {
        if (part instanceof HTMLDetailsElement) part.open = true;
        if (part.shadowRoot !== null) open(part.shadowRoot);
      }
    };
    open(document.body);
  });
}
