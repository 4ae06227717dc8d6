// The built app behind an address of this machine alone: what `npm start` serves, and what the tests of the window open.
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { Complaint } from './complaint.mjs';
import { DIST } from './paths.mjs';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.obj': 'text/plain; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};

/** In dist/ beside the app, and not for a browser: the command line, and what the build notes for itself. */
const BESIDE = /^(?:cli[\w-]*\.js|\..*)$/;

/** Threads that do the sums compile WebAssembly of our own; a page has nothing to compile. */
const THREAD = /^assets\/(?:[\w-]*-)?worker-[\w-]+\.js$/;

/** Ports are tried one after the other; so many taken in a row are no chance any more. */
const MOST_PORTS = 100;

/** What a browser is told beside every answer; the content policy comes from the page itself. */
const ALWAYS = {
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), payment=(), usb=(), serial=(), hid=()',
  'Cache-Control': 'no-cache',
};

/** The content policy that a built page carries in itself. @throws Complaint where it has none */
export function policyOf(page) {
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]+)"/.exec(page)?.[1];
  if (policy === undefined) throw new Complaint('The page has no content security policy: see index.html.');
  return policy;
}

/**
 * The file that an address asks for, as its path below the folder, or null: none but those that are listed has an answer, so that no way of writing an address leads out of the folder.
 * @param {string} address  as the browser wrote it
 * @param {ReadonlySet<string>} files
 */
export function fileAsked(address, files) {
  const path = /^\/([^?#]*)/.exec(address)?.[1];
  if (path === undefined) return null;
  let name;
  try {
    name = decodeURIComponent(path);
  } catch {
    return null;
  }
  return files.has(name || 'index.html') ? name || 'index.html' : null;
}

/** Whether a request was meant for this machine: a page elsewhere whose name was bent to 127.0.0.1 names itself as host. */
export function isForThisMachine(host) {
  return /^(?:127\.0\.0\.1|localhost)(?::\d{1,5})?$/.test(host ?? '');
}

const filesIn = (folder) =>
  new Set(
    readdirSync(folder, { recursive: true })
      .map((name) => name.replaceAll('\\', '/'))
      .filter((name) => !BESIDE.test(name) && statSync(join(folder, name), { throwIfNoEntry: false })?.isFile()),
  );

/**
 * Serves a built app on 127.0.0.1.
 * @param {number} firstPort  the first port that is tried; one that is taken is passed over
 * @param {string} [folder]
 * @returns {Promise<{ url: string, close: () => Promise<void> }>}
 */
export async function serveApp(firstPort, folder = DIST) {
  if (!existsSync(join(folder, 'index.html'))) throw new Complaint('dist/ holds no built app. Run: npm run build');
  let files = filesIn(folder);
  const policy = `${policyOf(readFileSync(join(folder, 'index.html'), 'utf8'))}; frame-ancestors 'none'`;
  const threadPolicy = policy.replace("script-src 'self'", "script-src 'self' 'wasm-unsafe-eval'");
  const answer = (request, response) => {
    const say = (status, headers, body) => {
      response.writeHead(status, { ...ALWAYS, 'Content-Security-Policy': policy, ...headers });
      response.end(request.method === 'HEAD' ? undefined : body);
    };
    const plain = { 'Content-Type': 'text/plain; charset=utf-8' };
    if (!isForThisMachine(request.headers.host)) return say(421, plain, 'Not served under this name.\n');
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      return say(405, { ...plain, Allow: 'GET, HEAD' }, 'Files are only read here.\n');
    }
    const asked = request.url ?? '';
    // A build that was made since has files of other names.
    const name = fileAsked(asked, files) ?? fileAsked(asked, (files = filesIn(folder)));
    if (name === null) return say(404, plain, 'There is no such file.\n');
    let bytes;
    try {
      bytes = readFileSync(join(folder, name));
    } catch {
      return say(404, plain, 'There is no such file any more.\n');
    }
    say(
      200,
      {
        'Content-Type': TYPES[extname(name)] ?? 'application/octet-stream',
        'Content-Length': bytes.length,
        ...(name.startsWith('assets/') ? { 'Cache-Control': 'max-age=31536000, immutable' } : {}),
        ...(THREAD.test(name) ? { 'Content-Security-Policy': threadPolicy } : {}),
      },
      bytes,
    );
  };
  for (let port = firstPort; port < firstPort + MOST_PORTS; port += 1) {
    const server = createServer(answer);
    if (!(await isListening(server, port))) continue;
    const close = async () => {
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      await closed;
    };
    return { url: `http://127.0.0.1:${port}/`, close };
  }
  throw new Complaint(`All ports from ${firstPort} to ${firstPort + MOST_PORTS - 1} are taken.`, 2);
}

/** False for a port that is taken. */
const isListening = (server, port) =>
  new Promise((resolve, reject) => {
    server.once('error', (error) => (error.code === 'EADDRINUSE' ? resolve(false) : reject(error)));
    server.listen(port, '127.0.0.1', () => resolve(true));
  });
