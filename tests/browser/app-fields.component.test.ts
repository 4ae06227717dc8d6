import { afterEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../src/app/tokens.css';
import '../../src/app/length-field.ts';
import type { LengthField } from '../../src/app/length-field.ts';
import '../../src/app/quantity-field.ts';
import type { NumberField } from '../../src/app/quantity-field.ts';
import '../../src/app/stage-rule.ts';
import type { StageRule } from '../../src/app/stage-rule.ts';

afterEach(() => document.body.replaceChildren());

describe('fl-length-field', () => {
  async function make(fields: Partial<LengthField>) {
    const field = Object.assign(document.createElement('fl-length-field') as LengthField, {
      label: 'Margin',
      ...fields,
    });
    const taken: number[] = [];
    field.addEventListener('fl-length', (event) => taken.push(event.mm));
    document.body.append(field);
    await field.updateComplete;
    const input = field.shadowRoot!.querySelector('input')!;
    const type = async (text: string): Promise<void> => {
      input.value = text;
      input.dispatchEvent(new Event('change'));
      await field.updateComplete;
    };
    return { field, taken, input, type };
  }

  it('shows a length in its unit', async () => {
    expect((await make({ mm: 6 })).input.value).toBe('6\u00a0mm');
    expect((await make({ mm: 5.85 })).input.value).toBe('5.85\u00a0mm');
    expect((await make({ mm: 100 })).input.value).toBe('100\u00a0mm');
    expect((await make({ mm: 9.525, unit: 'in' })).input.value).toBe('3/8\u00a0in');
    expect((await make({})).input.value).toBe('');
  });

  it('takes other units and decimal commas', async () => {
    const { taken, type } = await make({ mm: 6, max: 500 });
    await type('32,2 cm');
    await type('1/4 in');
    expect(taken).toEqual([322, 6.35]);
  });

  it('refuses what is out of reach, and says what would do', async () => {
    const { field, taken, input, type } = await make({ mm: 6, min: 0.5, max: 60 });
    await type('600');
    expect(taken).toEqual([]);
    expect(input.getAttribute('aria-invalid')).toBe('true');
    expect(field.shadowRoot!.querySelector('#fault')!.textContent).toContain('60\u00a0mm');
    await type('7');
    expect(taken).toEqual([7]);
    expect(input.getAttribute('aria-invalid')).toBe('false');
  });

  it('takes nothing at all as a length where that is allowed', async () => {
    const margin = await make({ mm: 10, min: 0, max: 60 });
    await margin.type('0');
    expect(margin.taken).toEqual([0]);
    const thickness = await make({ mm: 10, min: 0.5, max: 60 });
    await thickness.type('0');
    expect(thickness.taken).toEqual([]);
  });
});

describe('fl-stage-rule', () => {
  async function make(fields: Partial<StageRule>) {
    const rule = Object.assign(document.createElement('fl-stage-rule') as StageRule, fields);
    const gone: number[] = [];
    rule.addEventListener('fl-stage-go', (event) => gone.push(event.stage));
    document.body.append(rule);
    await rule.updateComplete;
    return { rule, gone, slider: rule.shadowRoot!.querySelector('input')! };
  }

  it('goes from stop to stop by arrow keys, not past what can be reached', async () => {
    const { gone, slider } = await make({ stage: 1.4, last: 2 });
    slider.focus();
    await userEvent.keyboard('{ArrowRight}{ArrowLeft}');
    expect(gone).toEqual([2, 1]);
    const end = await make({ stage: 2, last: 2 });
    end.slider.focus();
    await userEvent.keyboard('{ArrowRight}');
    expect(end.gone).toEqual([2]);
  });

  it('slides freely under the pointer and names the place', async () => {
    const { rule, slider } = await make({ stage: 0, last: 2 });
    const seen: (number | undefined)[] = [];
    rule.addEventListener('fl-view', (event) => seen.push(event.patch.stage));
    slider.value = '0.6';
    slider.dispatchEvent(new Event('input'));
    slider.value = '3';
    slider.dispatchEvent(new Event('input'));
    expect(seen).toEqual([0.6, 2]);
    expect(slider.getAttribute('aria-valuetext')).toBe('whole');
  });
});

describe('fl-number-field', () => {
  it('takes decimal points and commas, and no other way of writing a number', async () => {
    const field = Object.assign(document.createElement('fl-number-field') as NumberField, { label: 'Price', value: 2 });
    const taken: (number | null)[] = [];
    field.addEventListener('fl-number', ({ value }) => taken.push(value));
    document.body.append(field);
    await field.updateComplete;
    const input = field.shadowRoot!.querySelector('input')!;
    for (const text of ['1,5', '1 250.5', '0x10', '1e2', '1.234,5', '']) {
      input.value = text;
      input.dispatchEvent(new Event('change'));
      await field.updateComplete;
    }
    expect(taken).toEqual([1.5, 1250.5]);
    expect(field.shadowRoot!.querySelector('#fault')!.textContent).toContain('A number');
  });
});
