import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { kitProjectText } from '../../samples/kit-project.ts';
import { KIT } from '../../samples/sample-set.ts';
import { readProjectFile } from '../../src/project/project-file.ts';
import { schemaFaults, type Schema } from '../support/json-schema.ts';
import { expectOk } from '../support/expect-ok.ts';

const textOf = (path: string): string => readFileSync(path, 'utf8');
const schemaOf = (name: string): Schema => JSON.parse(textOf(`shared/${name}.schema.json`)) as Schema;

it('the whole props are what the script writes from their parts file', async () => {
  const text = textOf(`samples/${KIT.projectFile}`);
  expect(text).toBe(await kitProjectText());
  expect(schemaFaults(schemaOf('parts'), JSON.parse(textOf('samples/kit.parts.json')))).toEqual([]);
  expect(schemaFaults(schemaOf('project'), JSON.parse(text))).toEqual([]);
  const { project } = expectOk(await readProjectFile(text, KIT.projectFile));
  expect(project.name).toBe(KIT.title);
  expect(project.parts.map(({ name }) => name)).toEqual(['Maul head', 'Lantern']);
});
