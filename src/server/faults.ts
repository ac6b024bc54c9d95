import { isOperationCancelled } from 'langium';
import { type Connection, ErrorCodes, ResponseError } from 'vscode-languageserver';

/** What an editor shows of a request that failed. */
const TOLD =
  'Feedplot failed to do this. That is a fault of the tool, not of the plan: please report it with what the log says.';

/** So much of a text goes into the log: enough to do again what failed. */
const MOST_LOGGED = 20_000;

/** Lines of a stack that tell one fault from another: the message and where it was thrown, not who was on the way there. */
const INNERMOST = 4;

/**
 * Faults of the tool itself. Each is written to the log once, with what is needed to make it happen again, and nothing
 * else of the server's work ends with it.
 */
export class Faults {
  readonly #connection: Connection | undefined;
  readonly #known = new Set<string>();

  constructor(connection: Connection | undefined) {
    this.#connection = connection;
  }

  /** @param doing What was tried, such as `textDocument/hover`, and with what. */
  tell(doing: string, given: unknown, error: unknown): void {
    const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
    const fault = `${doing} ${stack.split('\n', INNERMOST).join('\n')}`;
    if (this.#known.has(fault)) return;
    this.#known.add(fault);
    const text = `A fault of Feedplot (${doing}). Please report it.\n${stack}\nGiven: ${asText(given)}`;
    if (this.#connection) this.#connection.console.error(text);
    else console.error(text);
  }

  /** A handler that answers a fault with an error instead of failing. */
  guard<A extends unknown[]>(doing: string, handler: (...given: A) => unknown): (...given: A) => unknown {
    const failed = (given: A, error: unknown) => {
      if (error instanceof ResponseError || isOperationCancelled(error)) throw error;
      this.tell(doing, given[0], error);
      return new ResponseError(ErrorCodes.InternalError, TOLD);
    };
    return (...given) => {
      try {
        const answer = handler(...given);
        return answer instanceof Promise ? answer.catch((error) => failed(given, error)) : answer;
      } catch (error) {
        return failed(given, error);
      }
    };
  }
}

function asText(given: unknown): string {
  try {
    return (JSON.stringify(given) ?? String(given)).slice(0, MOST_LOGGED);
  } catch {
    return String(given);
  }
}

/** The connection with every handler that is given to it guarded: `onHover(f)` becomes `onHover(guarded f)`. */
export function guarded<C extends object>(connection: C, faults: Faults): C {
  return new Proxy(connection, {
    get(target, property) {
      const value: unknown = Reflect.get(target, property);
      if (typeof value === 'function') {
        if (!/^on[A-Z]/.test(String(property))) return value.bind(target);
        return (...given: unknown[]) =>
          Reflect.apply(
            value,
            target,
            given.map((one, i) => guardedHandler(one, i, given, String(property), faults)),
          );
      }
      return property === 'languages' || property === 'workspace' ? guarded(value as object, faults) : value;
    },
  });
}

/** `onRequest('name', handler)` tells its name; `onHover(handler)` is one. */
function guardedHandler(
  one: unknown,
  index: number,
  given: unknown[],
  property: string,
  faults: Faults,
): unknown {
  if (typeof one !== 'function') return one;
  const named = index > 0 ? given[0] : undefined;
  const method =
    typeof named === 'string' ? named : ((named as { method?: string } | undefined)?.method ?? property);
  return faults.guard(method, one as (...given: unknown[]) => unknown);
}
