import { html } from 'lit';

/** Says what a field is that is made elsewhere, as `data-means` on the field itself does. @param of  key in MEANS_WORDS. */
export const means = (of: string, field: unknown) => html`<span class="means" data-means=${of}>${field}</span>`;
