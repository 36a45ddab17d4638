import path from 'node:path';
import { ensureBuilt } from './ensure-built.mjs';
import { readFlags } from './flags.mjs';
import { host, listen } from './listen.mjs';
import { Refusal, orRefuse } from './refusal.mjs';
import { root } from './root.mjs';
import { staticServer } from './static-server.mjs';

const help = `npm start -- [--port N] [--rebuild]

Installs and builds where that is needed, then serves the page on this machine alone.

  --port N     the first port to try (4680); a taken one is passed over
  --rebuild    build anew even if nothing has changed
  --help       this text`;

/**
 * `npm start`.
 * @param {string[]} args
 */
export async function main(args) {
  await orRefuse(async () => {
    const { values } = readFlags(args, {
      port: { type: 'string' },
      rebuild: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' }
    });
    if (values.help) return console.log(help);
    const port = portOf(values.port);
    if (await ensureBuilt({ force: values.rebuild })) await serve(path.join(root, 'build'), port);
    else process.exitCode = 1;
  });
}

/** @param {string | undefined} text */
function portOf(text) {
  if (text === undefined) return 4680;
  const port = Number(text);
  if (!/^\d+$/.test(text) || port < 1 || port > 65535)
    throw new Refusal(`--port must be a whole number within 1 … 65535, got ${text}`);
  return port;
}

/**
 * @param {string} folder
 * @param {number} port
 */
async function serve(folder, port) {
  const server = staticServer(folder);
  const got = await listen(server, port);
  const stop = () => {
    server.close(() => process.exit(0));
    server.closeAllConnections();
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
  console.log(`Backwave is at http://${host}:${got}/ (Ctrl+C stops it)`);
}
