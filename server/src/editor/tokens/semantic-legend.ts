/** Standard types of token (LSP 3.17, SemanticTokenTypes); the order is that of the legend. A unit is the type of its number. */
export const tokenTypes = [
  'class',
  'property',
  'variable',
  'enumMember',
  'type',
  'keyword',
  'number',
  'string',
  'operator',
  'decorator',
  'comment',
] as const
export type TokenType = (typeof tokenTypes)[number]

/** Standard modifiers (LSP 3.17, SemanticTokenModifiers); each is a bit, in the order of the legend. */
export const tokenModifiers = ['declaration', 'documentation'] as const
export type TokenModifier = (typeof tokenModifiers)[number]
