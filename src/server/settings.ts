import type { ConfigurationProvider } from 'langium';

/** Which hints the person wants to see; all, unless switched off. */
export interface HintSettings {
  readonly load: boolean;
  readonly delay: boolean;
  readonly length: boolean;
}

export async function hintSettings(provider: ConfigurationProvider): Promise<HintSettings> {
  const hints = (await provider.getConfiguration('feedplot', 'hints')) as Partial<HintSettings> | undefined;
  const isOn = (key: keyof HintSettings) => hints?.[key] !== false;
  return { load: isOn('load'), delay: isOn('delay'), length: isOn('length') };
}

/** Whether lines above the text are wanted. */
export async function wantsLenses(provider: ConfigurationProvider): Promise<boolean> {
  return (await provider.getConfiguration('feedplot', 'lenses')) !== false;
}
