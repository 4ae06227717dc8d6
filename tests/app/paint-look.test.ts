import { expect, it } from 'vitest';
import { colourOfFaces, paintsOfTriangles } from '../../src/app/paint-look.ts';
import type { SculptView } from '../../src/model/bench-view.ts';
import type { Region } from '../../src/model/flatten-settings.ts';
import { newColour } from '../../src/project/finish-commands.ts';

const area = (id: string, faces: readonly number[], colour?: string): Region => ({
  id,
  name: id,
  faces,
  give: 'normal',
  ...(colour === undefined ? {} : { colour }),
});

it('shows each triangle in the colour of the last area that says one, else in the base', () => {
  const sculpt = { faceOfTriangle: Uint32Array.of(0, 1, 1, 2, 3) } as unknown as SculptView;
  const colours = ['#102030', '#ffffff'].map((rgb, i) => ({ ...newColour(`c${i}`, rgb), id: `colour-${i + 1}` }));
  const regions = [
    area('a', [1, 2], 'colour-1'),
    area('b', [2, 3], 'colour-2'),
    area('c', [3]),
    area('d', [0], 'gone'),
  ];
  expect([...paintsOfTriangles(sculpt, regions, { colours })]).toEqual([-1, 0x102030, 0x102030, 0xffffff, 0xffffff]);
  expect([...paintsOfTriangles(sculpt, [], { colours, baseColour: 'colour-1' })]).toEqual(Array(5).fill(0x102030));
  expect([...paintsOfTriangles(sculpt, regions, undefined)]).toEqual(Array(5).fill(-1));
  expect(colourOfFaces(regions, [2, 3])).toBe('colour-2');
  expect(colourOfFaces(regions, [1, 2])).toBeUndefined();
  expect(colourOfFaces(regions, [7])).toBeNull();
});
