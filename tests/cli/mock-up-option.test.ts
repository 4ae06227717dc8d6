import { expect, it } from 'vitest';
import { mockUpFrom } from '../../src/cli/mock-up-option.ts';
import { WrongUsage } from '../../src/cli/exit.ts';
import { USUAL_MOCK_UP } from '../../src/project/mock-up.ts';

it('takes a scale as it is written on drawings, and the card', () => {
  expect(mockUpFrom({})).toBeUndefined();
  expect(mockUpFrom({ 'mock-up': '1:5' })).toEqual({ times: 5, cardMm: USUAL_MOCK_UP.cardMm });
  expect(mockUpFrom({ 'mock-up': ' 1 : 2,5', card: '0,3' })).toEqual({ times: 2.5, cardMm: 0.3 });
  expect(mockUpFrom({ 'mock-up': '8', card: '1' })).toEqual({ times: 8, cardMm: 1 });
});

it('refuses what is no scale and no card', () => {
  for (const word of ['', '1:', '4:1', '1:0.5', '1:100', 'small'])
    expect(() => mockUpFrom({ 'mock-up': word }), word).toThrow(WrongUsage);
  expect(() => mockUpFrom({ 'mock-up': '1:4', card: '10' })).toThrow(WrongUsage);
  expect(() => mockUpFrom({ card: '0.3' })).toThrow('add --mock-up');
});
