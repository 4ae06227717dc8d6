import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileAsked, isForThisMachine, policyOf, serveApp, type AppServer } from '../../scripts/lib/app-server.mjs';

const outside = mkdtempSync(join(tmpdir(), 'foamloft-server-'));
const folder = join(outside, 'dist');
const PAGE = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'" />`;
let server: AppServer;

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  mkdirSync(join(folder, '.packages'));
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  for (const name of ['cli.js', 'cli-thread.js', '.sources', '.packages/app.json', 'assets/worker-abcdefgh.js'])
    writeFileSync(join(folder, name), 'x');
  writeFileSync(join(folder, 'index.html'), PAGE);
  server = await serveApp(5379, folder);
});
afterAll(async () => {
  await server.close();
  rmSync(outside, { recursive: true, force: true });
});

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly text: string;
}

/** Asks with the address as it stands: a browser would tidy it first. */
const ask = (path: string, method = 'GET', host?: string): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const { hostname, port } = new URL(server.url);
    const headers = host === undefined ? {} : { host };
    const sent = request({ hostname, port, path, method, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (part: string) => (text += part));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    });
    sent.on('error', reject).end();
  });

describe('the server of the app', () => {
  it('gives the page, with all that a browser is told', async () => {
    const { status, headers, text } = await ask('/?demo=bracer');
    expect([status, text]).toEqual([200, PAGE]);
    expect(headers).toMatchObject({
      'content-security-policy': "default-src 'none'; script-src 'self'; frame-ancestors 'none'",
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'content-type': 'text/html; charset=utf-8',
    });
    expect(headers['access-control-allow-origin']).toBeUndefined();
  });

  it('lets threads alone compile WebAssembly', async () => {
    const { headers } = await ask('/assets/worker-abcdefgh.js');
    expect(headers['content-security-policy']).toContain("script-src 'self' 'wasm-unsafe-eval';");
    expect((await ask('/index.html')).headers['content-security-policy']).not.toContain('wasm');
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/assets/../../secret.txt',
    '/..%5csecret.txt',
    '/%252e%252e/secret.txt',
    '//secret.txt',
    '/index.html%00',
    '/%',
    '/%ff',
    `/${outside}/secret.txt`,
    '/cli.js',
    '/cli-thread.js',
    '/.sources',
    '/.packages/app.json',
    '/assets',
    '/assets/',
    '/constructor',
    '/__proto__',
  ])('has nothing at %s', async (path) => {
    const { status, text } = await ask(path);
    expect([status, text]).toEqual([404, 'There is no such file.\n']);
  });

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'TRACE'])('refuses %s', async (method) => {
    const { status, headers } = await ask('/index.html', method);
    expect([status, headers.allow]).toEqual([405, 'GET, HEAD']);
  });

  it('gives the head without the body', async () => {
    const { status, headers, text } = await ask('/', 'HEAD');
    expect([status, headers['content-length'], text]).toEqual([200, `${PAGE.length}`, '']);
  });

  it('answers under the names of this machine alone', async () => {
    expect((await ask('/', 'GET', 'other.example:5379')).status).toBe(421);
    expect((await ask('/', 'GET', 'localhost:5379')).status).toBe(200);
    expect(['127.0.0.1', '127.0.0.1:80'].map(isForThisMachine)).toEqual([true, true]);
    expect(
      [undefined, '', '127.0.0.1.other.example', 'localhost.other.example:5179', 'x@127.0.0.1'].map(isForThisMachine),
    ).toEqual([false, false, false, false, false]);
  });

  it('passes over a port that is taken', async () => {
    const port = Number(new URL(server.url).port);
    const second = await serveApp(port, folder);
    expect(Number(new URL(second.url).port)).toBeGreaterThan(port);
    await second.close();
  });

  it('serves no page without a policy', () => {
    expect(() => policyOf('<title>x</title>')).toThrow('no content security policy');
    expect(fileAsked('http://other.example/index.html', new Set(['index.html']))).toBeNull();
  });
});
