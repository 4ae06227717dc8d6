import { html } from 'lit';
import type { LengthUnit } from '../base/format-length.ts';
import './length-field.ts';
import type { LengthEvent } from './length-field.ts';
import './quantity-field.ts';
import type { NumberEvent } from './quantity-field.ts';

/** Longest that a size of a part may be, mm, and least that is more than nothing. */
export const MOST_MM = 1e5;
export const LEAST_MM = 0.1;

/** Least and greatest that a field takes. */
interface Limits {
  readonly least?: number;
  readonly most?: number;
  readonly isWhole?: boolean;
}

/** A field for a length, more than nothing where nothing else is said. @param take  is given mm. */
export const lengthField = (
  label: string,
  mm: number | null,
  unit: LengthUnit,
  take: (mm: number) => void,
  { least = LEAST_MM, most = MOST_MM }: Limits = {},
) =>
  html`<fl-length-field
    label=${label}
    .mm=${mm}
    .unit=${unit}
    .min=${least}
    .max=${most}
    @fl-length=${(event: LengthEvent) => take(event.mm)}
  ></fl-length-field>`;

/** A field for a number that is no length. */
export const numberField = (
  label: string,
  value: number,
  unit: string,
  take: (value: number) => void,
  { least = 0, most = Infinity, isWhole = false }: Limits,
) =>
  html`<fl-number-field
    label=${label}
    unit=${unit}
    .value=${value}
    .least=${least}
    .most=${most}
    .isWhole=${isWhole}
    @fl-number=${(event: NumberEvent) => event.value !== null && take(event.value)}
  ></fl-number-field>`;

/** One of a few words, each with what it is called, in their order. */
export const choiceField = <T extends string>(
  label: string,
  words: Readonly<Record<T, string>>,
  value: T,
  take: (value: T) => void,
) =>
  html`<label>
    ${label}
    <select @change=${(event: Event) => take((event.target as HTMLSelectElement).value as T)}>
      ${(Object.entries(words) as [T, string][]).map(
        ([choice, word]) => html`<option value=${choice} .selected=${choice === value}>${word}</option>`,
      )}
    </select>
  </label>`;

/** Yes or no. */
export const tickField = (label: string, isOn: boolean, take: (isOn: boolean) => void) =>
  html`<label class="tick">
    <input
      type="checkbox"
      .checked=${isOn}
      @change=${(event: Event) => take((event.target as HTMLInputElement).checked)}
    />${label}
  </label>`;

/** A length that may be left out, with what says so. */
export const openLengthField = (
  label: string,
  mm: number | undefined,
  unit: LengthUnit,
  take: (mm: number | undefined) => void,
  without: string,
  limits: Limits = {},
) =>
  html`<span
    >${lengthField(label, mm ?? null, unit, take, limits)}${
      mm === undefined
        ? html`<span class="small soft">${without}</span>`
        : html`<button class="plain" @click=${() => take(undefined)}>${without}</button>`
    }</span
  >`;
