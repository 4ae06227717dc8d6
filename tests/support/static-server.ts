import { readFile } from 'node:fs/promises';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};

/** A folder behind an address, as any plain web server gives it: no redirects, no pages of its own, nothing compressed. */
export interface StaticServer {
  /** Of the folder, with a slash at its end. */
  readonly url: string;
  /** Every path that was asked for so far, below the folder. */
  readonly asked: string[];
  /** Files that are other than in the folder, by their path below it; null: not there any more. */
  readonly changed: Map<string, string | null>;
  /** Answers nothing any more, as a network that is gone. */
  close(): Promise<void>;
}

/** @param folder  on this machine. @param path  where it is put on the server, beginning and ending with a slash */
export async function serveFolder(folder: string, path: string): Promise<StaticServer> {
  const asked: string[] = [];
  const changed = new Map<string, string | null>();
  const answer = async (address: string, response: ServerResponse): Promise<void> => {
    const { pathname } = new URL(address, 'http://any');
    const name = normalize(decodeURIComponent(pathname.slice(path.length)) || 'index.html');
    if (!pathname.startsWith(path) || name.startsWith(`..${sep}`)) return void response.writeHead(404).end();
    asked.push(name);
    const inFolder = (): Promise<Uint8Array | null> => readFile(join(folder, name)).catch(() => null);
    const bytes = changed.has(name) ? changed.get(name) : await inFolder();
    if (bytes == null) return void response.writeHead(404).end();
    response.writeHead(200, { 'Content-Type': TYPES[extname(name)] ?? 'application/octet-stream' }).end(bytes);
  };
  const server = createServer((request, response) => void answer(request.url ?? '/', response));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}${path}`,
    asked,
    changed,
    async close() {
      if (!server.listening) return;
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      await closed;
    },
  };
}
