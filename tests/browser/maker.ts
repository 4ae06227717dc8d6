import type { FileChooser, Locator, Page } from 'playwright-core';
import { tabTo } from './tabs.ts';

/** What a maker did: each click, each key (also each that is typed into a field) and each drag or drop is one step. */
export interface Steps {
  readonly clicks: number;
  readonly keys: number;
  readonly drags: number;
}

export interface GivenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A maker at the window, whose every step is counted. A file that is picked in the browser's own chooser is one click, or one key. */
export class Maker {
  readonly page: Page;
  #clicks = 0;
  #keys = 0;
  #drags = 0;

  constructor(page: Page) {
    this.page = page;
  }

  get steps(): Steps {
    return { clicks: this.#clicks, keys: this.#keys, drags: this.#drags };
  }

  get count(): number {
    return this.#clicks + this.#keys + this.#drags;
  }

  async click(what: Locator): Promise<void> {
    this.#clicks += 1;
    await what.click();
  }

  async key(name: string): Promise<void> {
    this.#keys += 1;
    await this.page.keyboard.press(name);
  }

  async type(text: string): Promise<void> {
    this.#keys += text.length;
    await this.page.keyboard.type(text);
  }

  async tabTo(element: string, words: RegExp | null): Promise<void> {
    await tabTo(this.page, element, words, '', (key) => this.key(key));
  }

  /** A file dragged in from beside the window. */
  async drop(dropping: Promise<void>): Promise<void> {
    this.#drags += 1;
    await dropping;
  }

  /** Picks a file in the chooser that something opens. */
  async choose(file: GivenFile, by: 'mouse' | 'keys', opening: () => Promise<void>): Promise<void> {
    const opens: Promise<FileChooser> = this.page.waitForEvent('filechooser');
    await opening();
    const chooser = await opens;
    if (by === 'mouse') this.#clicks += 1;
    else this.#keys += 1;
    await chooser.setFiles(file);
  }
}
