// Loaded into every Node process of the workbench's server (by NODE_OPTIONS): writes down each host that the server,
// its extension host or a language server connects to, so that a test can say that there was none.
import { ChildProcess } from 'node:child_process';
import { subscribe } from 'node:diagnostics_channel';
import { appendFileSync } from 'node:fs';
import type { Socket } from 'node:net';

const { FEEDPLOT_CONNECTIONS: record, NODE_OPTIONS: options } = process.env;

/** This machine, and the path of a socket file. */
const local = /^(localhost|127\..*|::1|::ffff:127\..*|\/.*)$/;

subscribe('net.client.socket', (message) => {
  const { socket } = message as { socket: Socket };
  let named = false;
  const note = (host: string) => {
    if (record && !local.test(host)) appendFileSync(record, `${host}\n`);
  };
  // A host's name is looked up, even when it cannot be found; an address is not.
  socket.once('lookup', (_error, _address, _family, host) => {
    named = true;
    note(host);
  });
  socket.once('connectionAttempt', (address) => {
    if (!named) note(address);
  });
});

// The server takes NODE_OPTIONS away from the extension host: every child process gets them again.
type Start = (settings: { envPairs?: string[] }) => unknown;
const prototype = ChildProcess.prototype as unknown as { spawn: Start };
const start = prototype.spawn;
prototype.spawn = function (this: ChildProcess, settings) {
  const others = (settings.envPairs ?? []).filter((pair) => !pair.startsWith('NODE_OPTIONS='));
  return start.call(this, { ...settings, envPairs: [...others, `NODE_OPTIONS=${options}`] });
};
