import { readFileSync } from 'node:fs';
import { CstNodeBuilder, LangiumParser } from 'langium';
import { describe, expect, it } from 'vitest';
import { LookaheadWhenAsked } from '../../../src/language/lookahead.ts';
import { createFeedplotServices } from '../../../src/language/services.ts';

/**
 * Reading piece by piece is built on private parts of Langium (src/language/incremental/internals.ts). When one of
 * these tests fails after an update, that part has moved: look for its new name before anything else.
 */
describe('private parts of Langium', () => {
  const services = createFeedplotServices().Feedplot;
  const parser = new LangiumParser(services) as unknown as Record<string, unknown>;
  const builder = new CstNodeBuilder();

  it('were last looked at in this minor version of it', () => {
    const { version } = JSON.parse(readFileSync('node_modules/langium/package.json', 'utf8')) as {
      version: string;
    };
    expect(version).toMatch(/^4\.4\./);
  });

  it('nodeBuilder is the field of the parser that holds the builder of the tree', () => {
    expect(parser['nodeBuilder']).toBeInstanceOf(CstNodeBuilder);
  });

  it('rootNode and nodeStack are the fields of the builder that say where it stands', () => {
    const root = builder.buildRootNode('');
    const fields = builder as unknown as Record<string, unknown>;
    expect(fields['rootNode']).toBe(root);
    expect(fields['nodeStack']).toEqual([root]);
  });

  it('wrapper is the field of the parser that holds the parser of Chevrotain, which takes tokens', () => {
    const wrapper = (services.parser.LangiumParser as unknown as Record<string, unknown>)['wrapper'] as {
      input: unknown[];
      errors: unknown[];
    };
    wrapper.input = services.parser.Lexer.tokenize('place a').tokens;
    expect(wrapper.input).toHaveLength(2);
    expect(wrapper.errors).toEqual([]);
  });

  it('lookaheadStrategy is what Chevrotain asks how to tell the alternatives apart', () => {
    const strategyOf = (one: Record<string, unknown>) =>
      (one['wrapper'] as Record<string, Record<string, unknown>>)['lookaheadStrategy'];
    for (const method of ['initialize', 'buildLookaheadForAlternation', 'buildLookaheadForOptional'])
      expect(strategyOf(parser)?.[method], method).toBeTypeOf('function');
    const own = services.parser.LangiumParser as unknown as Record<string, unknown>;
    expect(strategyOf(own)).toBeInstanceOf(LookaheadWhenAsked);
  });

  it('doParse runs a rule, mainRule is the entry rule, lexerResult feeds comments to it', () => {
    const own = services.parser.LangiumParser as unknown as Record<string, unknown>;
    expect(own['mainRule']).toBeTypeOf('function');
    expect(own['doParse']).toBeTypeOf('function');
    const { value } = services.parser.LangiumParser.parse('/* a */ place /* b */ x');
    const root = value.$cstNode as unknown as {
      content: { text: string; content: { content: { text: string }[] }[] }[];
    };
    expect(root.content.map((node) => node.text)).toEqual(['/* a */', 'place /* b */ x']);
    expect(root.content[1]!.content[0]!.content.map((node) => node.text)).toEqual(['place', '/* b */', 'x']);
  });
});
