import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { writeProjectFile } from '../../src/project/project-file.ts';
import { openApp, type OpenApp } from '../support/browser.ts';
import { domeProject } from '../support/dome-project.ts';
import { dropFile, until } from './window.ts';

describe('a large sculpt in the built page', () => {
  let app: OpenApp;

  beforeAll(async () => {
    app = await openApp({ flags: ['--disable-3d-apis'] });
  });
  afterAll(async () => {
    await app.close();
  });

  it('is laid flat by workers of the pipeline’s worker', async () => {
    const { project, bytes } = await domeProject(18_000);
    const { hash, fileName } = project.parts[0].source;
    const text = writeProjectFile(project, new Map([[hash, { fileName, bytes }]]));
    await until(app.page, 'a sample is on the bench', ({ pages }) => pages.length > 0);
    await dropFile(app.page, 'dome.foamloft.json', text);
    await until(app.page, 'eight panels', ({ name, pieces }) => name === 'dome' && pieces.length === 8);
    const begun = app.requests.filter((address) => address.includes('flatten-worker'));
    expect(begun.length).toBeGreaterThanOrEqual(1);
    expect(app.consoleErrors).toEqual([]);
    expect(app.requestsOutside()).toEqual([]);
  });
});
