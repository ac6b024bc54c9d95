import { join } from 'node:path';
import { fileUri } from './file-uri.ts';
import type { Define } from './program.ts';

/** `feedplot serve`: the language server, on the standard streams unless an editor names another channel. */
export const define: Define = (command, { program }) => {
  command
    .option('--stdio', 'speak over the standard streams (the default)')
    .option('--node-ipc', 'speak over the channel of the Node process that started this one')
    .option('--socket <port>', 'speak over a local port')
    .option('--pipe <name>', 'speak over a named pipe')
    .option('--clientProcessId <id>', 'end when this process ends')
    .action(async (options: Record<string, unknown>) => {
      // The server reads the channel from the process's own arguments.
      if (!['stdio', 'nodeIpc', 'socket', 'pipe'].some((name) => name in options))
        process.argv.push('--stdio');
      const { serve } = await import('../server/main-node.ts');
      serve(fileUri(join(program, 'library')));
    });
};
