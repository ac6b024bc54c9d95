import ElkModule, { type ELK, type ELKConstructorArguments } from 'elkjs/lib/elk-api.js';
import type { LayOut } from '../../documents/drawing/arrange.ts';

/** Its types say that the module has a default export; the bundler gives the constructor itself. */
const Elk = ElkModule as unknown as new (args: ELKConstructorArguments) => ELK;

/**
 * Lays graphs out in a thread of its own, so that the view stays fluid meanwhile.
 *
 * @param address Where the library's worker lies: an editor's view may not start a worker from there, but from a copy
 * that it has read.
 */
export function layoutInWorker(address: string): LayOut {
  let elk: Promise<ELK> | undefined;
  return async (graph) => {
    elk ??= startWorker(address);
    try {
      return await (await elk).layout(graph);
    } catch (error) {
      if (error instanceof WorkerTrouble) elk = undefined;
      throw error;
    }
  };
}

class WorkerTrouble extends Error {}

async function startWorker(address: string): Promise<ELK> {
  try {
    const response = await fetch(address);
    const copy = URL.createObjectURL(await response.blob());
    const worker = new Worker(copy);
    return new Elk({ workerFactory: () => worker });
  } catch (error) {
    throw new WorkerTrouble(`The layout could not be started: ${error}`);
  }
}
