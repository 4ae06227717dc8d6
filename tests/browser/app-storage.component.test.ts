import { beforeEach, describe, expect, it } from 'vitest';
import { BrowserStorage } from '../../src/app/storage.ts';
import { newProject } from '../../src/project/new-project.ts';

const sourceOf = (letter: string) => ({
  hash: letter.repeat(64),
  fileName: `${letter}.obj`,
  bytes: new TextEncoder().encode(letter),
});
const projectOf = (letter: string) =>
  newProject(letter, { hash: letter.repeat(64), fileName: `${letter}.obj`, format: 'obj' });

describe('storage in the browser', () => {
  let storage: BrowserStorage;
  let visits = 0;

  beforeEach(() => {
    visits += 1;
    storage = new BrowserStorage(`foamloft-test-${visits}-${performance.now()}`);
  });

  it('has nothing at first', async () => {
    expect(await storage.load()).toBeNull();
    expect(await storage.loadWishes()).toBeNull();
  });

  it('gives the last job back with its source, also to another visit', async () => {
    await storage.save(projectOf('a'), [sourceOf('a')]);
    await storage.save({ ...projectOf('a'), name: 'renamed' }, []);
    const again = await new BrowserStorage(storage.name).load();
    expect(again?.project).toEqual({ ...projectOf('a'), name: 'renamed' });
    expect(again?.sources).toEqual([sourceOf('a')]);
  });

  it('lets go of the sources of other jobs', async () => {
    await storage.save(projectOf('a'), [sourceOf('a')]);
    await storage.save(projectOf('b'), [sourceOf('b')]);
    await storage.save(projectOf('a'), []);
    expect(await storage.load()).toBeNull(); // its source went when b came
  });

  it('keeps wishes', async () => {
    await storage.saveWishes({ theme: 'dark', contrast: 'more', letterKeys: false, picture: 'plain' });
    expect(await storage.loadWishes()).toEqual({
      theme: 'dark',
      contrast: 'more',
      letterKeys: false,
      picture: 'plain',
    });
  });
});
