/** Does with cables what the steps say, and finds out where that cannot be done. It knows nothing of how they were found. */
import type { Review, Side, Socket } from '../../src/documents/review/review.ts';

/** Which sockets are joined by a cable, as `one|other`. */
export function pluggedIn({ analysis }: Side): Set<string> {
  return new Set(
    analysis.links
      .filter((link) => !link.standbyFor && link.from.port && link.to.port)
      .map((link) => pairOf(link.from.port!.text, link.to.port!.text)),
  );
}

function pairOf(one: string, other: string): string {
  return [one, other].sort().join('|');
}

/** A cable, by the sockets of its ends; an end that hangs free is undefined. */
type Cable = [string | undefined, string | undefined];

/**
 * @param renamed Boxes of the old plan that have another name now: their sockets are the same.
 * @returns what is plugged in the end
 * @throws where a step plugs into a full socket or unplugs what is not there
 */
export function replay(
  plugged: ReadonlySet<string>,
  { steps }: Review,
  renamed: ReadonlyMap<string, string>,
): Set<string> {
  const now = (socket: string) => {
    const [box = '', ...port] = socket.split('.');
    return [renamed.get(box) ?? box, ...port].join('.');
  };
  const old = new Set(
    steps
      .filter(({ kind, text }) => kind === 'take out' && text.includes('the old '))
      .map(({ text }) => /the old ([\w]+)/.exec(text)![1]!),
  );
  const nowOrOld = (socket: string) => (old.has(socket.split('.')[0]!) ? `the old ${socket}` : now(socket));
  const cables: Cable[] = [...plugged].map((pair) => pair.split('|').map(nowOrOld) as [string, string]);
  const at = new Map<string, Cable>();
  const put = (socket: string, cable: Cable) => {
    if (at.has(socket)) throw new Error(`${socket} is full`);
    at.set(socket, cable);
  };
  const take = (socket: string): Cable => {
    const cable = at.get(socket);
    if (!cable) throw new Error(`nothing is plugged into ${socket}`);
    at.delete(socket);
    return cable;
  };
  for (const cable of cables) for (const socket of cable) put(socket!, cable);
  let hanging: Cable | undefined;
  for (const { kind, sockets, text } of steps) {
    const [first, second] = sockets.map((socket) => now(nameOfSocket(socket)));
    try {
      if (kind === 'plug' && second !== undefined) {
        const cable: Cable = [first, second];
        for (const socket of cable) put(socket!, cable);
      } else if (kind === 'plug') {
        hanging![hanging!.indexOf(undefined)] = first;
        put(first!, hanging!);
        hanging = undefined;
      } else if (kind === 'unplug' && second !== undefined) {
        if (take(first!) !== take(second)) throw new Error('two cables are taken for one');
      } else if (kind === 'unplug') {
        hanging = take(first!);
        hanging[hanging.indexOf(first)] = undefined;
      } else if (kind === 'move') {
        const cable = take(first!);
        cable[cable.indexOf(first)] = second;
        put(second!, cable);
      }
    } catch (error) {
      throw new Error(`${text} ${(error as Error).message}`);
    }
  }
  return new Set([...at.values()].map(([one, other]) => pairOf(one!, other!)));
}

/** Boxes have no label here, so that titles are names. */
function nameOfSocket({ box, socket }: Socket): string {
  return socket === undefined ? box : `${box}.${socket}`;
}
