/** Starts and stops code-server, with all that it writes kept in one folder, and installs an extension into it. */
import { type ChildProcess, execFile, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { promisify } from 'node:util';
import { findFreePort } from './free-port.ts';

const recorder = new URL('./record-connections.ts', import.meta.url).href;

const start_limit_ms = 60_000;

export class CodeServer {
  readonly #program: string;
  readonly #home: string;
  readonly #connections: string;
  #process: ChildProcess | undefined;
  #output = '';

  /**
   * @param program the script that starts code-server
   * @param home an existing folder for settings, extensions and logs
   */
  constructor(program: string, home: string) {
    this.#program = program;
    this.#home = home;
    this.#connections = path.join(home, 'connections');
    mkdirSync(this.#home, { recursive: true });
  }

  /**
   * Installs a packaged extension.
   * @returns the folder it was unpacked to
   */
  async install(vsix: string): Promise<string> {
    const parameters = [...this.#parameters(), '--install-extension', vsix];
    await promisify(execFile)(process.execPath, parameters, { env: this.#environment() });
    const extensions = path.join(this.#home, 'extensions');
    const folder = readdirSync(extensions, { withFileTypes: true }).find((entry) => entry.isDirectory());
    if (!folder) throw new Error(`The workbench did not install ${vsix}.`);
    return path.join(extensions, folder.name);
  }

  /**
   * Starts the server and waits until it answers.
   * @returns its address
   */
  async start(): Promise<string> {
    const port = await findFreePort();
    const address = `http://127.0.0.1:${port}`;
    const options = ['--auth', 'none', '--bind-addr', `127.0.0.1:${port}`, '--disable-telemetry'];
    options.push('--disable-update-check', '--disable-workspace-trust', '--disable-getting-started-override');
    const server = spawn(process.execPath, [...this.#parameters(), ...options], {
      env: this.#environment(),
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    this.#process = server;
    process.once('exit', () => server.kill()); // also when a test run is cut short
    for (const stream of [server.stdout, server.stderr]) {
      stream.on('data', (text) => {
        this.#output += text;
      });
    }
    const end_ms = Date.now() + start_limit_ms;
    while (!(await answers(`${address}/healthz`))) {
      if (server.exitCode !== null || Date.now() > end_ms) {
        throw new Error(`code-server did not start:\n${this.#output}`);
      }
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    return address;
  }

  /** Hosts outside this machine that the server, its extension host or a language server has connected to. */
  externalConnections(): string[] {
    if (!existsSync(this.#connections)) return [];
    return readFileSync(this.#connections, 'utf8').split('\n').filter(Boolean);
  }

  async stop(): Promise<void> {
    const server = this.#process;
    if (!server || server.exitCode !== null || server.signalCode !== null) return;
    const ended = new Promise((resolve) => server.once('exit', resolve));
    server.kill('SIGTERM');
    await ended;
  }

  #parameters(): string[] {
    const inHome = (name: string) => path.join(this.#home, name);
    return [
      this.#program,
      '--config',
      inHome('config.yaml'),
      '--user-data-dir',
      inHome('user-data'),
      '--extensions-dir',
      inHome('extensions'),
    ];
  }

  #environment(): NodeJS.ProcessEnv {
    return {
      ...process.env,
      // Without a gallery of extensions the workbench asks nothing of the network by itself.
      EXTENSIONS_GALLERY: '{}',
      NODE_OPTIONS: `--import=${recorder}`,
      FEEDPLOT_CONNECTIONS: this.#connections,
    };
  }
}

async function answers(address: string): Promise<boolean> {
  try {
    return (await fetch(address)).ok;
  } catch {
    return false;
  }
}
