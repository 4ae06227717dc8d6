import { css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { releaseSteps, tickStep } from '../../project/done-commands.ts';
import type { ShopView } from '../../worker/shop-api.ts';
import { JobSection } from '../job-section.ts';
import { SHARED } from '../styles.ts';
import { AT_SHOP_WORDS } from './at-shop-words.ts';
import { boughtOf, shopItems, shopText, type ShopItem } from './shop-items.ts';

/** What is bought for the job, short, to be ticked off between the shelves and sent to whoever goes there. */
@customElement('fl-shop-list')
export class ShopList extends JobSection {
  static override styles = [
    SHARED,
    css`
      :host {
        display: block;
        padding: var(--s3) var(--s4) var(--s4);
        border: var(--wide) solid var(--ink);
        background: var(--paper-high);
        scroll-margin-block: var(--s4);
      }
      h3 {
        font-size: var(--t-body);
        font-weight: 700;
      }
      h3:focus-visible {
        outline: 0;
        text-decoration: underline;
        text-underline-offset: 4px;
      }
      li {
        border-block-end: var(--narrow) solid var(--rule-soft);
      }
      label {
        display: flex;
        gap: var(--s3);
        align-items: center;
        min-block-size: 44px;
        padding-block: var(--s1);
        font-size: var(--t-body);
        cursor: pointer;
      }
      input[type='checkbox'] {
        inline-size: 24px;
        block-size: 24px;
      }
      b {
        font-weight: 640;
      }
      .done {
        color: var(--ink-soft);
        text-decoration: line-through;
      }
      .short {
        color: var(--wrong);
        font-weight: 600;
      }
      button {
        min-block-size: 44px;
      }
      .row {
        margin-block-start: var(--s3);
      }
      textarea {
        inline-size: 100%;
        font: inherit;
        color: var(--ink);
        background: var(--paper);
        border: var(--narrow) solid var(--ink);
      }
    `,
  ];

  @property({ attribute: false }) shop: ShopView | null = null;
  @state() private answer: 'none' | 'copied' | 'by hand' = 'none';

  override focus(options?: FocusOptions): void {
    this.scrollIntoView({ block: 'start' });
    this.renderRoot.querySelector('h3')?.focus({ preventScroll: true, ...options });
  }

  protected override render() {
    const { shop, project } = this;
    if (shop === null || project === null) return nothing;
    const words = AT_SHOP_WORDS;
    const items = this.#items(shop);
    const left = items.filter((item) => boughtOf(project.doneSteps, item).state !== 'done').length;
    if (items.length === 0)
      return html`<h3 tabindex="-1">${words.heading}</h3>
        <p>${words.none}</p>`;
    return html`<h3 tabindex="-1">${words.heading}</h3>
      <ul>
        ${items.map((item) => this.#item(item))}
      </ul>
      <div class="row">
        <button @click=${this.#share}>${this.#canShare ? words.share : words.copy}</button>
        <span class="small" role="status">
          ${this.answer === 'copied' ? words.copied : words.left(left, items.length)}
        </span>
      </div>
      ${
        this.answer === 'by hand'
          ? html`<label>${words.byHand}</label>
              <textarea
                data-means="shop-text"
                readonly
                rows=${items.length + 1}
                aria-label=${words.text}
                .value=${this.#text()}
              ></textarea>`
          : nothing
      }`;
  }

  #item(item: ShopItem) {
    const words = AT_SHOP_WORDS;
    const { state: stands, have } = boughtOf(this.project?.doneSteps, item);
    return html`<li>
      <label>
        <input
          data-means="shop-bought"
          type="checkbox"
          .checked=${stands === 'done'}
          @change=${() => this.#tick(item, stands === 'done')}
        />
        <span class=${stands === 'done' ? 'done' : ''}>
          <b>${item.much}</b> ${item.what}
          ${
            stands === 'short'
              ? html`<span class="short">(${item.isFoam ? words.short(have) : words.shortWet})</span>`
              : nothing
          }
        </span>
      </label>
    </li>`;
  }

  #items(shop: ShopView): readonly ShopItem[] {
    return shopItems(shop, this.bench, this.unit);
  }

  #tick({ id, amount }: ShopItem, isBought: boolean): void {
    this.answer = 'none';
    this.send(isBought ? releaseSteps([id]) : tickStep({ id, as: String(Math.ceil(amount)) }));
  }

  #text(): string {
    const { shop, project } = this;
    return shop === null || project === null ? '' : shopText(project.name, this.#items(shop), project.doneSteps);
  }

  get #canShare(): boolean {
    return 'share' in navigator;
  }

  readonly #share = async (): Promise<void> => {
    const text = this.#text();
    if (this.#canShare) {
      // Called off by whoever was asked: nothing was sent, and nothing is to be said.
      return navigator.share({ title: AT_SHOP_WORDS.title(this.project?.name ?? ''), text }).catch(() => undefined);
    }
    try {
      await navigator.clipboard.writeText(text);
      this.answer = 'copied';
    } catch {
      this.answer = 'by hand';
    }
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'fl-shop-list': ShopList;
  }
}
