import type { IToken, TokenType as LexedType } from 'chevrotain'
import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import type { Section } from '../../job/model.ts'
import * as T from '../../syntax/tokens.ts'
import type { TokenModifier, TokenType } from './semantic-legend.ts'
import { wordsOf } from './semantic-words.ts'

export interface SemanticToken {
  /** Counted from the section's first line. */
  readonly line: number
  readonly character: number
  readonly length: number
  readonly type: TokenType
  readonly modifier?: TokenModifier
}

const lexedTypes = new Map<LexedType, TokenType>([
  [T.Comment, 'comment'],
  [T.Text, 'string'],
  [T.OpenText, 'string'],
  [T.CurlyText, 'string'],
  [T.Amount, 'number'],
  [T.Blank, 'keyword'],
  [T.TwoSided, 'number'],
  [T.DateTime, 'number'],
  [T.Sign, 'number'],
  [T.PlusMinus, 'operator'],
  [T.To, 'operator'],
  [T.Plus, 'operator'],
  [T.Minus, 'operator'],
  [T.Times, 'operator'],
  [T.Over, 'operator'],
])

/** What each word, number and sign of a section is, in the order of its text: from its tree and the vocabulary, so that it is kept with it. */
export const semanticTokens = memoizeByIdentity(
  ({ text, parsed: { tree } }: Section): readonly SemanticToken[] => {
    const words = wordsOf(tree.items, text)
    const tokens: SemanticToken[] = []
    let line = 0
    let lineStart = 0
    for (const token of tree.tokens) {
      const { startOffset, tokenType } = token
      if (endsLine(token)) {
        line += 1
        lineStart = T.endOf(token)
        continue
      }
      const type = lexedTypes.get(tokenType)
      if (type) {
        const documents = tokenType === T.Comment && token.image.startsWith('##')
        tokens.push({
          line,
          character: startOffset - lineStart,
          length: token.image.length,
          type,
          ...(documents && { modifier: 'documentation' }),
        })
      } else
        for (const { span, type: of, declares } of words.get(startOffset) ?? [])
          tokens.push({
            line,
            character: span.start - lineStart,
            length: span.end - span.start,
            type: of,
            ...(declares && { modifier: 'declaration' }),
          })
    }
    return tokens
  },
)

/** The protocol's lines end with these alone; the language's also with the separators of Unicode. */
const endsLine = ({ tokenType, image }: IToken): boolean => tokenType === T.Newline && /[\r\n]/.test(image)
