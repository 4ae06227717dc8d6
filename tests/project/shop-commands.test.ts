import { describe, expect, it } from 'vitest';
import { foamId, pieceId } from '../../src/base/ids.ts';
import { COATINGS } from '../../src/model/coatings.ts';
import { GLUES } from '../../src/model/glues.ts';
import type { SeamOfPieces } from '../../src/model/shop-choices.ts';
import { newProject } from '../../src/project/new-project.ts';
import {
  acceptGluing,
  movedInOrder,
  setCoatings,
  setCurrency,
  setGlue,
  setGluePrice,
  setSheetPrice,
} from '../../src/project/shop-commands.ts';
import { readProjectFile, writeProjectFile } from '../../src/project/project-file.ts';
import { contentHash } from '../../src/base/hash.ts';
import { expectOk, expectProblem } from '../support/expect-ok.ts';

const seam = (a: string, b: string, nth = 0): SeamOfPieces => ({ pieces: [pieceId(a), pieceId(b)], nth });
const ORDER = [seam('p1', 'p2'), seam('p1', 'p2', 1), seam('p3', 'p3')];

async function project() {
  const bytes = new TextEncoder().encode('v 0 0 0\n');
  const hash = await contentHash(bytes);
  return {
    first: newProject('x', { hash, fileName: 'x.obj', format: 'obj' }),
    sources: new Map([[hash, { fileName: 'x.obj', bytes }]]),
  };
}

describe('what is said of the bench', () => {
  it('is kept in the file and read again', async () => {
    const { first, sources } = await project();
    const commands = [
      setGlue(GLUES[1]),
      setCoatings([COATINGS[2]]),
      setCurrency(' EUR '),
      setSheetPrice(first.foams[0].id, 24.5),
      setGluePrice(18),
      acceptGluing(ORDER),
    ];
    const said = commands.reduce((changed, command) => command.apply(changed), first);
    expect(said.shop?.currency).toBe('EUR');
    const text = writeProjectFile(said, sources);
    expect(expectOk(await readProjectFile(text, 'x')).project).toEqual(JSON.parse(JSON.stringify(said)));
    const broken = text.replace('"openMin": 150', '"openMin": 30');
    expect(broken).not.toBe(text);
    expect(expectProblem(await readProjectFile(broken, 'x'), 'project/broken').text).toContain('glue');
  });

  it('changes nothing where nothing changes, and leaves no empty words behind', async () => {
    const { first } = await project();
    const price = setSheetPrice(foamId('eva-6'), 20);
    const priced = price.apply(first);
    expect(price.apply(priced)).toBe(priced);
    expect(setSheetPrice(foamId('eva-6'), null).apply(priced)).toEqual(first);
    expect(setCurrency('').apply(first)).toBe(first);
    expect(setGluePrice(null).apply(first)).toBe(first);
    const ordered = acceptGluing(ORDER).apply(first);
    expect(acceptGluing(ORDER).apply(ordered)).toBe(ordered);
    expect(acceptGluing([]).apply(ordered)).toEqual(first);
  });
});

it('a seam is moved within an order', () => {
  const [a, b, c] = ORDER;
  expect(movedInOrder(ORDER, 2, 0)).toEqual([c, a, b]);
  expect(movedInOrder(ORDER, 0, 2)).toEqual([b, c, a]);
  expect(movedInOrder(ORDER, 7, 0)).toEqual(ORDER);
});
