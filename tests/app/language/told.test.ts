import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dataText } from '../../../src/app/data-words.ts';
import { toldText } from '../../../src/app/finding-text.ts';
import { DATA } from '../../../src/base/german/data.ts';
import { LABEL } from '../../../src/app/german/label.ts';
import { PROGRESS } from '../../../src/app/german/progress.ts';
import { speak } from '../../../src/app/language/language.ts';
import { projectFiles, readProjectFile } from '../../house/project-files.ts';

const page = { lang: '', dir: '' } as HTMLElement;
beforeEach(() => speak('de', page));
afterEach(() => speak('en', page));

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('what the core says', () => {
  it.each([
    ['5. Join 5 Keel left to 1 Crown: unit I', '5. 5 Keel left mit 1 Crown verbinden: Gruppe I'],
    ['Join 8 Band to unit IV (1 to 6, 9)', '8 Band mit Gruppe IV (1 bis 6, 9) verbinden'],
    ['Close 3 Cheek along A, B', '3 Cheek an A, B schließen'],
    ['Batch 2: steps 10 to 11, 1099 mm of seam', 'Durchgang 2: Schritte 10 bis 11, 1099 mm Naht'],
    [
      'Seam A, 161.5 mm, marks 1 to 3, butt, bevel 2° to 10°. Touch first at mark 2, roll both ways.',
      'Naht A, 161,5 mm, Marken 1 bis 3, Stoß, Gehrung 2° bis 10°. Zuerst an Marke 2 ansetzen, nach beiden Seiten zurollen.',
    ],
    [
      '4 Brow: form it near the top, where the foam gives 4.5 %.',
      '4 Brow: formen, nahe der oberen Kante, wo der Schaumstoff 4,5 % nachgibt.',
    ],
    ['pull it across the up arrow', 'quer zum Pfeil nach oben dehnen'],
    ['A sentence that nobody knows is 1.5 mm long.', 'A sentence that nobody knows is 1,5 mm long.'],
  ])('%s', (text, german) => {
    expect(plain(toldText(text, 'mm'))).toBe(german);
  });

  it('has every caution, glue, coat and sample in German', () => {
    const read = (path: string): unknown =>
      JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));
    const cautions = read('shared/cautions.json') as {
      ending: string;
      cautions: { title: string; text: string }[];
    };
    const samples = read('samples/samples.json') as { title: string; sentence: string }[];
    const names = ['glues', 'coatings', 'clays'].flatMap((file) =>
      [...JSON.stringify(read(`shared/${file}.json`)).matchAll(/"name":"([^"]*)"/g)].map(([, name]) => name),
    );
    const all = [
      cautions.ending,
      ...cautions.cautions.flatMap(({ title, text }) => [title, text]),
      ...samples.flatMap(({ title, sentence }) => [title, sentence]),
      ...names,
    ];
    expect(all.length).toBeGreaterThan(50);
    expect(all.filter((text) => !(text in DATA))).toEqual([]);
    expect(dataText('my own tin')).toBe('my own tin');
  });

  it('says what is being worked out', () => {
    const texts = ['src/steps/', 'src/pipeline/', 'src/worker/', 'src/mesh/']
      .flatMap(projectFiles)
      .filter((path) => path.endsWith('.ts'))
      .flatMap((path) =>
        [...readProjectFile(path).matchAll(/\bpause\([^,]+, '([^']+ [^']+)'/g)].map(([, text]) => text),
      );
    expect(texts.length).toBeGreaterThan(20);
    expect(texts.filter((text) => !(text in PROGRESS))).toEqual([]);
  });

  it('names every change of the document', () => {
    const labels = projectFiles('src/project/')
      .filter((path) => path.endsWith('commands.ts'))
      .flatMap((path) => [...readProjectFile(path).matchAll(/label: '([^']+)'/g)].map(([, label]) => label));
    expect(labels.length).toBeGreaterThan(20);
    expect(labels.filter((label) => !(label in LABEL))).toEqual([]);
  });
});
