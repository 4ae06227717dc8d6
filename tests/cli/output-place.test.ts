import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseCommand } from '../../src/cli/args.ts';
import { Refused, WrongUsage } from '../../src/cli/exit.ts';
import { makeCommand } from '../../src/cli/make-command.ts';
import { writeAll, writeEach } from '../../src/cli/output-folder.ts';
import { checkFile, checkFolder } from '../../src/cli/output-place.ts';
import { proposeCommand } from '../../src/cli/propose-command.ts';
import { stripCommand } from '../../src/cli/strip-command.ts';
import { newProject } from '../../src/project/new-project.ts';
import { writeProjectFile } from '../../src/project/project-file.ts';
import { scratchFiles, scratchFolder } from './run-cli.ts';

const MODEL = 'v 0 0 0\nv 10 0 0\nv 0 10 0\nf 1 2 3\n';
const DAY = '2026-03-01';

/** Runs a command line as the program does, but for its exit code. */
async function run(...words: string[]): Promise<string> {
  const command = parseCommand(words, DAY);
  switch (command.name) {
    case 'make':
      return await makeCommand(command.choices);
    case 'seams':
      return await proposeCommand(command.choices, () => undefined);
    case 'strip':
      return await stripCommand(command.choices);
    default:
      throw new Error(command.name);
  }
}

const seams = (model: string, ...more: string[]): Promise<string> =>
  run('seams', model, '--unit', 'mm', '--moves', '0', ...more);

async function expectRefused(made: Promise<string>, sentence: RegExp): Promise<void> {
  const error: unknown = await made.then(
    (said) => new Error(`not refused: ${said}`),
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(Refused);
  expect((error as Error).message).toMatch(sentence);
  expect((error as Error).message).not.toContain('\n');
}

describe('what is read is not written over', () => {
  it.each<[string, (model: string) => string]>([
    ['itself', (model) => model],
    ['its folder by another way', (model) => join(model, '..', '.', 'one.obj')],
    ['a link to it', (model) => linked(model, symlinkSync)],
    ['another name of it on the disk', (model) => linked(model, linkSync)],
  ])('by seams: a model, named by %s', async (_, named) => {
    const [model] = scratchFiles({ 'one.obj': MODEL });
    for (const option of ['--out', '--report']) {
      const others = option === '--out' ? [] : ['--out', join(scratchFolder(), 'seams.json')];
      await expectRefused(seams(model, option, named(model), ...others), new RegExp(`${option} would write over`));
      expect(readFileSync(model, 'utf8')).toBe(MODEL);
    }
  });

  it('by seams: the seams it begins from, and a project', async () => {
    const text = '{"version":1,"edges":[]}';
    const [model, from] = scratchFiles({ 'one.obj': MODEL, 'from.json': text });
    await expectRefused(seams(model, '--from', from, '--out', from), /from\.json: --out would write over the file/);
    expect(readFileSync(from, 'utf8')).toBe(text);
    const project = projectFile();
    const before = readFileSync(project);
    await expectRefused(run('seams', project, '--moves', '0', '--out', project), /--out would write over the file/);
    expect(readFileSync(project).equals(before)).toBe(true);
  });

  it('by seams: one of its two files by the other', async () => {
    const [model, out] = scratchFiles({ 'one.obj': MODEL, 'a.json': 'old' });
    await expectRefused(
      seams(model, '--out', out, '--report', linked(out, symlinkSync)),
      /--report would write over .*a\.json/,
    );
    expect(() => parseCommand(['seams', model, '--out', 'a.json', '--report', './A.json'], DAY)).toThrow(WrongUsage);
  });

  it('by make: a project in the folder, seams or a model that have the name of a file', async () => {
    const [model] = scratchFiles({ 'one.obj': MODEL });
    const project = projectFile();
    const folder = join(project, '..');
    const before = readFileSync(project);
    await expectRefused(
      run('make', project, '--out', folder),
      /project\.foamloft\.json: --out would write over the file that is read/,
    );
    expect(readFileSync(project).equals(before)).toBe(true);
    const text = '{"version":1,"edges":[]}';
    const [odd] = scratchFiles({ 'templates.pdf': text });
    await expectRefused(
      run('make', model, '--unit', 'mm', '--seams', odd, '--out', join(odd, '..')),
      /templates\.pdf: --out would write over/,
    );
    expect(readFileSync(odd, 'utf8')).toBe(text);
    expect(readdirSync(folder)).toEqual(['project.foamloft.json']);
  });
});

/** A named pipe stands for all that is no file: a device could be spoiled by a fault. */
function namedPipe(): string {
  const path = join(scratchFolder(), 'pipe');
  execFileSync('mkfifo', [path]);
  return path;
}

describe('a place that takes no file is told before anything is worked out', () => {
  const NEVER = '86400';

  it.each<[string, (folder: string) => string, RegExp]>([
    ['a folder that is not there', (folder) => join(folder, 'no', 'o.json'), /no: there is no such folder; make it/],
    ['a folder', (folder) => folder, /: this is a folder; name a file with --out\./],
    ['in a file', (folder) => join(folder, 'file', 'o.json'), /file: this is a file, and nothing can be written/],
    ['a folder that takes none', () => '/proc/o.json', /^\/proc: cannot be written \([A-Z]+\); choose another folder/],
    ['a pipe', namedPipe, /this is no file but a device/],
  ])('by seams: %s', async (_, out, sentence) => {
    const [model] = scratchFiles({ 'one.obj': MODEL, file: 'mine' });
    const folder = join(model, '..');
    await expectRefused(run('seams', model, '--unit', 'mm', '--seconds', NEVER, '--out', out(folder)), sentence);
    expect(readdirSync(folder).sort()).toEqual(['file', 'one.obj']);
    expect(readFileSync(join(folder, 'file'), 'utf8')).toBe('mine');
  });

  it.each<[string, (folder: string) => string, RegExp]>([
    ['a file', (folder) => join(folder, 'file'), /file: this is a file, and nothing can be written into it/],
    ['in a file', (folder) => join(folder, 'file', 'deep', 'out'), /file: this is a file, and nothing can be written/],
    ['where none takes any', () => '/proc/no/out', /^\/proc\/no\/out: cannot be written \([A-Z]+\)/],
  ])('by make and strip: %s', async (_, out, sentence) => {
    const [model] = scratchFiles({ 'one.obj': MODEL, file: 'mine' });
    const folder = join(model, '..');
    await expectRefused(run('make', model, '--unit', 'mm', '--out', out(folder)), sentence);
    await expectRefused(run('strip', '--out', out(folder)), sentence);
    expect(readdirSync(folder).sort()).toEqual(['file', 'one.obj']);
  });

  it.skipIf(process.getuid?.() === 0)('a folder without rights', async () => {
    const folder = scratchFolder();
    chmodSync(folder, 0o500);
    await expect(checkFile({ path: join(folder, 'o.json'), option: '--out' }, [])).rejects.toThrow(/cannot be written/);
    await expect(checkFolder(join(folder, 'new'), [], [])).rejects.toThrow(/cannot be written/);
  });

  it('leaves nothing behind where it looked', async () => {
    const folder = scratchFolder();
    await checkFile({ path: join(folder, 'o.json'), option: '--out' }, []);
    await checkFolder(join(folder, 'new', 'deep'), ['a'], []);
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('files are written all or none', () => {
  it('in folders of their own, and a link stays one', async () => {
    const [first, second] = [scratchFolder(), scratchFolder()];
    writeFileSync(join(first, 'a'), 'old');
    symlinkSync(join(first, 'a'), join(second, 'link'));
    await writeEach(new Map([[join(second, 'link'), 'new'], [join(second, 'b'), 'b']])); // prettier-ignore
    expect(lstatSync(join(second, 'link')).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(first, 'a'), 'utf8')).toBe('new');
    mkdirSync(join(second, 'blocked'));
    await expect(
      writeEach(new Map([[join(first, 'a'), 'newer'], [join(second, 'blocked'), 'c']])), // prettier-ignore
    ).rejects.toThrow(Refused);
    expect(readFileSync(join(first, 'a'), 'utf8')).toBe('new');
    expect(readdirSync(first)).toEqual(['a']);
    expect(readdirSync(second).sort()).toEqual(['b', 'blocked', 'link']);
  });

  it('and folders made for nothing go, those that hold something stay', async () => {
    const folder = scratchFolder();
    await expect(writeAll(join(folder, 'x', 'y'), new Map([['no/such', '']]))).rejects.toThrow(Refused);
    expect(existsSync(join(folder, 'x'))).toBe(false);
  });
});

function linked(path: string, link: (from: string, to: string) => void): string {
  const other = join(scratchFolder(), 'other.json');
  link(path, other);
  return other;
}

function projectFile(): string {
  const project = newProject('One', {
    hash: createHash('sha256').update(MODEL).digest('hex'),
    fileName: 'one.obj',
    format: 'obj',
  });
  const sources = new Map([[project.parts[0].source.hash, { fileName: 'one.obj', bytes: Buffer.from(MODEL) }]]);
  return scratchFiles({ 'project.foamloft.json': writeProjectFile(project, sources) })[0];
}
