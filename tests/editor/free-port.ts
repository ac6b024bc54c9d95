import { createServer } from 'node:net';

/** A port of this machine that nothing listens on now. */
export async function findFreePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  await new Promise((resolve) => server.close(resolve));
  if (!address || typeof address === 'string') throw new Error('This machine gave no free port.');
  return address.port;
}
