import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';

/** So long may one step of long work keep other requests waiting, and so long its own cancellation. */
const STEP_MS = 8;

/**
 * Does long work in short steps, between which every other request is answered.
 *
 * @throws ResponseError when the request was cancelled meanwhile, as the protocol wants it.
 */
export async function inSteps<T>(work: Generator<undefined, T>, token: CancellationToken): Promise<T> {
  let rested_ms = performance.now();
  for (;;) {
    if (token.isCancellationRequested)
      throw new ResponseError(LSPErrorCodes.RequestCancelled, 'Cancelled: nobody waits for this any more.');
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() - rested_ms < STEP_MS) continue;
    await new Promise((resolve) => setTimeout(resolve, 0));
    rested_ms = performance.now();
  }
}
