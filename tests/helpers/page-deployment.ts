import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync
} from 'node:fs';
import { createServer, type Server } from 'node:http';
import os from 'node:os';
import path from 'node:path';
import { host, listen } from '../../src/cli/listen.mjs';
import { root } from '../../src/cli/root.mjs';
import { staticServer } from '../../src/cli/static-server.mjs';

/**
 * A copy of the built page on a host of its own, in one folder or several, which can be cut off, and where a newer
 * version can be put in its place.
 */
export class Deployment {
  readonly #site: string;
  readonly #folders: string[];
  /** Answers with the page where there is no file, as hosts of single-page programs do. */
  missingIsPage = false;
  #server: Server | null = null;
  #port = 0;
  #releases = 0;

  private constructor(site: string, folders: string[]) {
    this.#site = site;
    this.#folders = folders;
  }

  static async in(...folders: string[]): Promise<Deployment> {
    const site = mkdtempSync(path.join(os.tmpdir(), 'backwave deployment '));
    const deployment = new Deployment(site, folders);
    for (const folder of folders) {
      mkdirSync(path.join(site, folder), { recursive: true });
      cpSync(path.join(root, 'build'), path.join(site, folder), { recursive: true });
    }
    await deployment.start();
    return deployment;
  }

  address(folder = this.#folders[0]): string {
    return `http://${host}:${this.#port}${folder}`;
  }

  /** The file of the site. */
  file(name: string, folder = this.#folders[0]): string {
    return path.join(this.#site, folder, name);
  }

  /** Everything the page is made of, as paths inside its folder; not what only says which version it is. */
  parts(folder = this.#folders[0]): string[] {
    return this.#files(folder).filter(
      (name) => !['service-worker.js', '_app/version.json'].includes(name) && !name.startsWith('.')
    );
  }

  async start(): Promise<void> {
    const files = staticServer(this.#site);
    this.#server = createServer((request, response) => {
      const missing = !existsSync(path.join(this.#site, request.url!.split('?', 1)[0]));
      if (missing && this.missingIsPage) request.url = `${this.#folders[0]}index.html`;
      files.emit('request', request, response);
    });
    this.#port = await listen(this.#server, this.#port);
  }

  /** Nobody answers at this address any more. */
  async stop(): Promise<void> {
    const server = this.#server;
    this.#server = null;
    if (!server) return;
    const closed = new Promise<void>((resolve) => server.close(() => resolve()));
    server.closeAllConnections();
    await closed;
  }

  async close(): Promise<void> {
    await this.stop();
    rmSync(this.#site, { recursive: true, force: true });
  }

  /**
   * Puts a newer version in the place of this one, as a build of changed sources would: every script has another
   * name, the old ones are gone, and the page says its version in `<meta name="released">`.
   */
  release(version: string, folder = this.#folders[0]): void {
    const present = (
      JSON.parse(readFileSync(this.file('_app/version.json', folder), 'utf8')) as { version: string }
    ).version;
    const count = ++this.#releases;
    const files = this.#files(folder);
    const scripts = files.filter((name) => name.startsWith('_app/immutable/') && name.endsWith('.js'));
    for (const name of files.filter((file) => /\.(html|js|json)$/.test(file))) {
      let text = readFileSync(this.file(name, folder), 'utf8');
      for (const script of scripts) {
        const old = path.posix.basename(script);
        text = text.replaceAll(old, renamed(old, count));
      }
      text = text.replaceAll(present, version);
      if (name === 'index.html')
        text = withHash(
          text
            .replace(/<meta name="released"[^>]*>/, '')
            .replace('<head>', `<head><meta name="released" content="${version}">`)
        );
      writeFileSync(this.file(name, folder), text);
    }
    for (const script of scripts)
      renameSync(this.file(script, folder), this.file(renamed(script, count), folder));
  }

  #files(folder: string): string[] {
    return readdirSync(this.file('', folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => path.relative(this.file('', folder), path.join(entry.parentPath, entry.name)))
      .map((name) => name.split(path.sep).join('/'))
      .sort();
  }
}

function renamed(script: string, release: number): string {
  return script.replace(/\.js$/, `_${release}.js`);
}

/** The policy lets the page's own script run by its hash; the script names the others, so it has another hash now. */
function withHash(html: string): string {
  const script = /<script>([\s\S]*?)<\/script>/.exec(html)![1];
  const hash = createHash('sha256').update(script).digest('base64');
  return html.replace(/'sha256-[^']+'/, `'sha256-${hash}'`);
}
