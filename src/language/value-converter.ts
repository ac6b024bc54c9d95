import { type CstNode, DefaultValueConverter, type GrammarAST, type ValueType } from 'langium';

/** Strings without their quotes, whether closed or not; everything else as written. */
export class FeedplotValueConverter extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string, node: CstNode): ValueType {
    if (rule.name === 'STRING') return unquoted(input);
    if (rule.name === 'ID' || rule.name === 'NAME') return input;
    return super.runConverter(rule, input, node);
  }
}

/** The text between the quotes of a string token. */
export function unquoted(token: string): string {
  const closed = token.length > 1 && /["“”»]$/.test(token);
  return token.slice(1, closed ? -1 : undefined);
}
