import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface UnderFolder {
  address: string;
  close: () => Promise<void>;
}

/** Serves what stands at `app` under a folder of another host, as any web space would; nothing outside it. */
export async function underFolder(app: string, folder: string): Promise<UnderFolder> {
  const server: Server = createServer((request, response) => {
    const url = request.url ?? '';
    if (!url.startsWith(folder)) {
      response.writeHead(404).end();
      return;
    }
    fetch(new URL(url.slice(folder.length), app)).then(
      async (answer) => {
        response.writeHead(answer.status, {
          'content-type': answer.headers.get('content-type') ?? 'application/octet-stream'
        });
        response.end(Buffer.from(await answer.arrayBuffer()));
      },
      () => response.writeHead(502).end()
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${folder}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      })
  };
}
