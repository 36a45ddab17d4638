import { createReadStream, promises as fs } from 'node:fs';
import { createServer } from 'node:http';
import path from 'node:path';

/** @type {Record<string, string>} */
const mediaTypes = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.jpg': 'image/jpeg',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.mp3': 'audio/mpeg',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.wav': 'audio/wav',
  '.webmanifest': 'application/manifest+json',
  '.webp': 'image/webp',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2'
};

/**
 * A web server for one folder of finished files: GET and HEAD, index.html for a folder, nothing outside
 * the folder, and no file kept by the browser without asking (so that a new build is seen at once).
 * @param {string} folder
 * @returns {import('node:http').Server}
 */
export function staticServer(folder) {
  return createServer((request, response) => {
    answer(folder, request, response).catch(() => refuse(response, 500, 'The file could not be read'));
  });
}

/**
 * The file of the folder that an address asks for; null for one that leads outside or is no valid address.
 * @param {string} folder
 * @param {string} address as in the request line
 * @returns {string | null}
 */
export function fileFor(folder, address) {
  let name;
  try {
    name = decodeURIComponent(address.split(/[?#]/, 1)[0]);
  } catch {
    return null;
  }
  if (!name.startsWith('/') || name.includes('\0') || name.includes('\\')) return null;
  if (name.split('/').some((part) => part.startsWith('.') || part.includes(':'))) return null;
  return path.join(folder, name);
}

/**
 * @param {string} folder
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
async function answer(folder, request, response) {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return refuse(response, 405, 'Only GET and HEAD');
  }
  const address = request.url ?? '/';
  let file = fileFor(folder, address);
  let stat = file === null ? null : await statInside(folder, file);
  if (file && stat?.isDirectory()) {
    const [name, query] = address.split(/(?=\?)/);
    if (!name.endsWith('/')) {
      // One slash only: `//host` would lead to another host.
      response.setHeader('Location', `${name.replace(/^\/+/, '/')}/${query ?? ''}`);
      return refuse(response, 301, 'Moved');
    }
    file = path.join(file, 'index.html');
    stat = await statInside(folder, file);
  }
  if (!file || !stat?.isFile()) return refuse(response, 404, 'Not found');

  const tag = `W/"${stat.size.toString(36)}-${Math.round(stat.mtimeMs).toString(36)}"`;
  response.setHeader('Cache-Control', 'no-cache');
  response.setHeader('ETag', tag);
  response.setHeader('X-Content-Type-Options', 'nosniff');
  if (request.headers['if-none-match'] === tag) {
    response.writeHead(304).end();
    return;
  }
  const type = mediaTypes[path.extname(file).toLowerCase()] ?? 'application/octet-stream';
  response.writeHead(200, { 'Content-Type': type, 'Content-Length': stat.size });
  if (request.method === 'HEAD') return void response.end();
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

/**
 * What stands at a path, unless a link there leads out of the folder.
 * @param {string} folder
 * @param {string} file
 */
async function statInside(folder, file) {
  try {
    const [base, real] = await Promise.all([fs.realpath(folder), fs.realpath(file)]);
    if (real !== base && !real.startsWith(base + path.sep)) return null;
    return await fs.stat(real);
  } catch {
    return null;
  }
}

/**
 * @param {import('node:http').ServerResponse} response
 * @param {number} status
 * @param {string} sentence
 */
function refuse(response, status, sentence) {
  if (response.headersSent) return void response.destroy();
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-cache' });
  response.end(`${sentence}\n`);
}
