import { Random } from './random.ts';
import { type Action, replay, type Script } from './script.ts';

/** A shorter script that still ends in a difference; the script itself where none is found. */
export async function shrink(script: Script): Promise<Script> {
  let best = script;
  if (!(await fails(best))) return script;
  for (
    let size = Math.ceil(best.actions.length / 2);
    size >= 1;
    size = size === 1 ? 0 : Math.ceil(size / 2)
  ) {
    for (let at = 0; at < best.actions.length; ) {
      const actions = [...best.actions.slice(0, at), ...best.actions.slice(at + size)];
      if (await fails({ files: best.files, actions })) best = { files: best.files, actions };
      else at += size;
    }
  }
  return withFewerFiles(best);
}

async function withFewerFiles(script: Script): Promise<Script> {
  let best = script;
  for (const name of Object.keys(script.files)) {
    if (best.actions.some((action) => speaksOf(action, name))) continue;
    const files = Object.fromEntries(Object.entries(best.files).filter(([other]) => other !== name));
    if (await fails({ files, actions: best.actions })) best = { files, actions: best.actions };
  }
  return best;
}

function speaksOf(action: Action, name: string): boolean {
  return action.do === 'disk' ? name in action.files : action.name === name;
}

async function fails(script: Script): Promise<boolean> {
  try {
    return (await replay(script, new Random(1))) !== undefined;
  } catch {
    return true;
  }
}
