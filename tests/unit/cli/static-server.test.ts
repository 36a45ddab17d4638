import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import net, { type AddressInfo } from 'node:net';
import path from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { host, listen } from '../../../src/cli/listen.mjs';
import { fileFor, staticServer } from '../../../src/cli/static-server.mjs';
import { temporaryFolder } from '../../helpers/temporary-folder.js';

interface Got {
  status: number;
  type: string | undefined;
  headers: Record<string, unknown>;
  body: string;
}

/** A request with its address exactly as given (fetch would tidy up `..` before sending). */
function ask(port: number, address: string, method = 'GET', headers = {}): Promise<Got> {
  return new Promise((resolve, reject) => {
    const asked = request({ host, port, path: address, method, headers }, (response) => {
      let body = '';
      response.setEncoding('utf8').on('data', (part) => (body += part));
      response.on('end', () =>
        resolve({
          status: response.statusCode ?? 0,
          type: response.headers['content-type'],
          headers: response.headers,
          body
        })
      );
    });
    asked.on('error', reject).end();
  });
}

/** A site with a secret beside it, served from a folder with a space in its name. */
async function site(): Promise<{ port: number; folder: string }> {
  const outside = temporaryFolder();
  const folder = path.join(outside, 'a site');
  mkdirSync(path.join(folder, 'docs'), { recursive: true });
  writeFileSync(path.join(outside, 'secret.txt'), 'secret');
  writeFileSync(path.join(folder, 'index.html'), '<h1>front</h1>');
  writeFileSync(path.join(folder, 'docs/index.html'), '<h1>docs</h1>');
  writeFileSync(path.join(folder, 'a b.js'), 'export {};');
  writeFileSync(path.join(folder, '.built-from'), 'stamp');
  // A junction: the one kind of link that Windows lets everybody make.
  symlinkSync(outside, path.join(folder, 'link'), 'junction');
  const server = staticServer(folder);
  onTestFinished(() => void server.close());
  return { port: await listen(server, 0), folder };
}

describe('static server', () => {
  test('serves files with their types, and index.html for a folder', async () => {
    const { port } = await site();
    expect(await ask(port, '/')).toMatchObject({
      status: 200,
      type: 'text/html; charset=utf-8',
      body: '<h1>front</h1>'
    });
    expect(await ask(port, '/docs/')).toMatchObject({ status: 200, body: '<h1>docs</h1>' });
    expect(await ask(port, '/a%20b.js?x=1')).toMatchObject({
      status: 200,
      type: 'text/javascript; charset=utf-8',
      body: 'export {};'
    });
  });

  test('sends a folder without its slash to the one with it, on the same host', async () => {
    const { port } = await site();
    const moved = await ask(port, '/docs?x=1');
    expect([moved.status, moved.headers.location]).toEqual([301, '/docs/?x=1']);
    expect((await ask(port, '//docs')).headers.location).toBe('/docs/');
  });

  test('lets the browser keep nothing without asking, and answers 304 where nothing changed', async () => {
    const { port, folder } = await site();
    const first = await ask(port, '/');
    expect(first.headers['cache-control']).toBe('no-cache');
    const tag = String(first.headers.etag);
    expect(await ask(port, '/', 'GET', { 'If-None-Match': tag })).toMatchObject({ status: 304, body: '' });
    writeFileSync(path.join(folder, 'index.html'), '<h1>rebuilt</h1>');
    expect(await ask(port, '/', 'GET', { 'If-None-Match': tag })).toMatchObject({
      status: 200,
      body: '<h1>rebuilt</h1>'
    });
  });

  test('answers HEAD without a body and refuses other methods', async () => {
    const { port } = await site();
    const head = await ask(port, '/', 'HEAD');
    expect([head.status, head.headers['content-length'], head.body]).toEqual([200, '14', '']);
    expect(await ask(port, '/', 'POST')).toMatchObject({ status: 405, headers: { allow: 'GET, HEAD' } });
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/docs/../../secret.txt',
    '/..%5csecret.txt',
    '/..\\secret.txt',
    '//../secret.txt',
    '/link/secret.txt',
    '/.built-from',
    '/index.html%00.js',
    '/%',
    '/nowhere.html',
    '/C:/secret.txt',
    '/index.html::$DATA'
  ])('finds nothing at %s', async (address) => {
    const { port } = await site();
    const got = await ask(port, address);
    expect(got.status).toBe(404);
    expect(got.body).toBe('Not found\n');
  });

  test('an address that is no path leads to no file', () => {
    expect(fileFor('/site', 'http://elsewhere/')).toBeNull();
    expect(fileFor('/site', '/a/b.css')).toBe(path.join('/site', 'a', 'b.css'));
  });
});

describe('listen', () => {
  test('takes the next port where one is taken', async () => {
    const first = net.createServer();
    const second = net.createServer();
    onTestFinished(() => void [first.close(), second.close()]);
    const taken = await listen(first, 0);
    const got = await listen(second, taken);
    expect(got).not.toBe(taken);
    expect(got).toBeGreaterThan(taken);
    expect(got).toBeLessThanOrEqual(taken + 20);
  });

  test('can be reached from this machine alone', async () => {
    const server = net.createServer();
    onTestFinished(() => void server.close());
    await listen(server, 0);
    expect((server.address() as AddressInfo).address).toBe('127.0.0.1');
  });

  test('passes on an error that no other port would mend', async () => {
    const server = net.createServer();
    onTestFinished(() => void server.close());
    const port = await listen(server, 0);
    await expect(listen(server, port)).rejects.toMatchObject({ code: 'ERR_SERVER_ALREADY_LISTEN' });
  });
});
