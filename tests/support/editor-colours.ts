/** A page in the colours that an editor gives its views. */
import type { Page } from 'playwright-core';

/** Colours as an editor gives them, by the class that it sets beside them. */
const editors = {
  light: {
    class: 'vscode-light',
    colours: {
      foreground: '#3b3b3b',
      'editor-background': '#ffffff',
      'input-background': '#ffffff',
      'input-foreground': '#3b3b3b',
      'input-border': '#8a8a8a',
      'button-secondaryBackground': '#e5e5e5',
      'button-secondaryForeground': '#3b3b3b',
      focusBorder: '#005fb8',
      'panel-border': '#e5e5e5',
      'inputValidation-warningBackground': '#fff8c5',
      'inputValidation-warningBorder': '#7a5b00',
    },
  },
  dark: {
    class: 'vscode-dark',
    colours: {
      foreground: '#cccccc',
      'editor-background': '#1f1f1f',
      'input-background': '#313131',
      'input-foreground': '#cccccc',
      'input-border': '#6b6b6b',
      'button-secondaryBackground': '#313131',
      'button-secondaryForeground': '#cccccc',
      focusBorder: '#2488db',
      'panel-border': '#2b2b2b',
      'inputValidation-warningBackground': '#352a05',
      'inputValidation-warningBorder': '#b89500',
    },
  },
  contrast: {
    class: 'vscode-high-contrast',
    colours: {
      foreground: '#ffffff',
      'editor-background': '#000000',
      'input-background': '#000000',
      'input-foreground': '#ffffff',
      contrastBorder: '#6fc3df',
      focusBorder: '#f38518',
      'inputValidation-warningBackground': '#000000',
      'inputValidation-warningBorder': '#f38518',
    },
  },
  'contrast-light': {
    class: 'vscode-high-contrast vscode-high-contrast-light',
    colours: {
      foreground: '#292929',
      'editor-background': '#ffffff',
      'input-background': '#ffffff',
      'input-foreground': '#292929',
      contrastBorder: '#0f4a85',
      focusBorder: '#006bbd',
      'inputValidation-warningBackground': '#ffffff',
      'inputValidation-warningBorder': '#006bbd',
    },
  },
} as const;

export type EditorTheme = keyof typeof editors;

export const editorThemes = Object.keys(editors) as EditorTheme[];

export async function useTheme(page: Page, theme: EditorTheme): Promise<void> {
  await page.evaluate((editor) => {
    document.documentElement.removeAttribute('style');
    const variables: Record<string, string> = {
      ...editor.colours,
      'font-family': 'sans-serif',
      'font-size': '13px',
    };
    for (const [name, value] of Object.entries(variables))
      document.documentElement.style.setProperty(`--vscode-${name}`, value);
    document.body.className = editor.class;
  }, editors[theme]);
}
