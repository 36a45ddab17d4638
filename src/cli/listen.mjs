/** Only this machine can reach it. */
export const host = '127.0.0.1';

/**
 * Binds a server to the port or, where it is taken, to the next free one; after twenty tries to any.
 * @param {import('node:net').Server} server
 * @param {number} port
 * @returns {Promise<number>} the port it has
 */
export async function listen(server, port) {
  const ports = Array.from({ length: 20 }, (_, i) => port + i).filter((p) => p < 65536);
  for (const candidate of [...ports, 0]) {
    try {
      return await bind(server, candidate);
    } catch (error) {
      const code = /** @type {NodeJS.ErrnoException} */ (error).code;
      // EACCES: Windows keeps ranges of ports for itself, others those below 1024.
      if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
    }
  }
  throw new Error(`no free port from ${port} on`);
}

/**
 * @param {import('node:net').Server} server
 * @param {number} port
 * @returns {Promise<number>}
 */
function bind(server, port) {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });
}
