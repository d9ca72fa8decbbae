import { createToken, type IToken, Lexer, type TokenType } from 'chevrotain'
import { asRead, conflictsIn } from './conflicts.ts'

/** Letters of any script, and the signs units are written with. Everything beyond ASCII that has no other meaning is a letter. */
const letter =
  'A-Za-z_%°µ²³\\u00AA\\u00BA\\u00C0-\\u00D6\\u00D8-\\u1FFF\\u2070-\\u2211\\u2213-\\u2FFF\\u3001-\\uFEFE\\uFF01-\\uFFFF'
const digits = '[0-9]+'
const number = `(?:${digits}[-\\u2011]${digits}/${digits}|${digits} ${digits}/${digits}|${digits}/${digits}|(?:${digits}(?:\\.${digits})?|\\.${digits})(?:[eE][+-]?${digits}(?![A-Za-z]))?)`
/** One space at most, and no line end: a broken line costs that line. */
const gap = '[ \\t\\u00A0\\u202F]?'

/** Patterns that the editor's grammar is made from too. */
export const sources = {
  letter,
  number,
  date: '[0-9]{4}-[0-9]{2}-[0-9]{2}(?:T[0-9]{2}:[0-9]{2}(?::[0-9]{2})?(?:Z|[+-][0-9]{2}:[0-9]{2})?)?(?![A-Za-z0-9])',
  twoSided: `[+]${number}${gap}/${gap}[-\\u2212]${number}|[-\\u2212]${number}${gap}/${gap}[+]${number}`,
  plusMinus: '±|[+]/?[-\\u2212]',
  curlyText: '[“”„‟][^“”„‟"{}#\\r\\n\\u2028\\u2029]*[“”„‟]?',
}

const trivia = (name: string, pattern: RegExp) =>
  createToken({ name, pattern, group: 'trivia', line_breaks: false })
const token = (name: string, pattern: RegExp | string, longer_alt?: TokenType) =>
  createToken({ name, pattern, line_breaks: name === 'Newline', ...(longer_alt && { longer_alt }) })

const Space = trivia('Space', /[ \t\f\v\u00A0\u2000-\u200A\u202F\u205F\u3000\uFEFF]+/)
export const Comment = trivia('Comment', /#[^\r\n]*/)
export const Newline = token('Newline', /\r\n|\n|\r|\u2028|\u2029/)
export const Text = token('Text', /"(?:[^"\\\r\n]|\\[^\r\n])*"/)
/** A string that its line ends before its closing quote does. */
export const OpenText = token('OpenText', /"[^\r\n]*/)
/** A text in curly quotes, as word processors make them. It is read, and told; a brace or a # ends it as it ends any other. */
export const CurlyText = token('CurlyText', new RegExp(sources.curlyText))
export const DateTime = token('DateTime', new RegExp(sources.date))
/** `+3/-2`, `-2/+3`: the two sides of a tolerance. */
export const TwoSided = token('TwoSided', new RegExp(sources.twoSided))
export const Amount = token('Amount', new RegExp(number))
/** A point belongs to it where more follows: `seal.free-length`, `M16x1.5`. */
export const Word = token('Word', new RegExp(`[${letter}](?:[${letter}0-9\\-·/^]|\\.(?=[A-Za-z0-9]))*`))
/** `+-` is how `±` is typed in haste; as two signs of arithmetic it would move what the tolerance is of. */
export const PlusMinus = token('PlusMinus', new RegExp(sources.plusMinus))
export const To = token('To', '..')
export const Plus = token('Plus', '+')
export const Minus = token('Minus', /[-\u2212]/)
export const Times = token('Times', /[*×]/)
export const Over = token('Over', /[/÷]/)
export const Comma = token('Comma', ',')
export const Colon = token('Colon', ':')
export const Opening = token('Opening', '{')
export const Closing = token('Closing', '}')
export const LeftBracket = token('LeftBracket', '[')
export const RightBracket = token('RightBracket', ']')
export const LeftParen = token('LeftParen', '(')
export const RightParen = token('RightParen', ')')
// biome-ignore lint/suspicious/noControlCharactersInRegex: every character there is must belong to some token
export const Stray = token('Stray', /[\u0000-\uFFFF]/)

// What the text alone cannot tell is told apart after lexing, so that one token of lookahead decides everything.
export const FactName = createToken({ name: 'FactName', pattern: Lexer.NA })
export const BlockKind = createToken({ name: 'BlockKind', pattern: Lexer.NA })
/** A plus or minus that belongs to the number behind it: space before, none after. */
export const Sign = createToken({ name: 'Sign', pattern: Lexer.NA })
/** A bracket beyond the depth, or a sign beyond the length, that is read. */
export const TooDeep = createToken({ name: 'TooDeep', pattern: Lexer.NA })

export const vocabulary: TokenType[] = [
  Space,
  Comment,
  Newline,
  Text,
  OpenText,
  CurlyText,
  DateTime,
  TwoSided,
  PlusMinus,
  Amount,
  Word,
  To,
  Plus,
  Minus,
  Times,
  Over,
  Comma,
  Colon,
  Opening,
  Closing,
  LeftBracket,
  RightBracket,
  LeftParen,
  RightParen,
  FactName,
  BlockKind,
  Sign,
  TooDeep,
  Stray,
]

const lexer = new Lexer(vocabulary, {
  positionTracking: 'onlyOffset',
  skipValidations: true,
  ensureOptimizations: false,
})

export const endOf = (token: IToken): number => token.startOffset + token.image.length

/** A value with more signs than this is not read to its end: its tree is as deep as it is long. */
const longest = 200

export interface Lexed {
  /** What the parser reads. */
  readonly tokens: IToken[]
  /** Spaces and comments, in order. */
  readonly trivia: readonly IToken[]
}

/** Deeper brackets than this are not read: no real job comes near, and the parser recurses. */
export const deepest = 64

/** What of a merge conflict is passed over is a space. */
export function lex(text: string): Lexed {
  const conflicts = conflictsIn(text)
  const { tokens, groups } = lexer.tokenize(asRead(text, conflicts))
  const trivia = groups['trivia'] ?? []
  if (conflicts.length > 0)
    for (const token of trivia) token.image = text.slice(token.startOffset, endOf(token))
  classify(tokens)
  return { tokens, trivia }
}

const isTerm = (type: TokenType): boolean => type === Plus || type === Minus

function retype(token: IToken, type: TokenType): void {
  token.tokenType = type
  token.tokenTypeIdx = type.tokenTypeIdx as number
}

function classify(tokens: IToken[]): void {
  let depth = 0
  let signs = 0
  let first = -1 // index of the line's (or brace's) first token: where a block's header may begin
  tokens.forEach((token, i) => {
    const previous = tokens[i - 1]
    const next = tokens[i + 1]
    const type = token.tokenType
    const isSign = isTerm(type) || type === Times || type === Over
    if (type === Newline || type === Comma) signs = 0
    if (isSign) signs += 1
    if (isSign && signs > longest) retype(token, TooDeep)
    else if (type === Newline) first = -1
    else if (type === Opening || type === LeftParen) {
      depth += 1
      if (depth > deepest) retype(token, TooDeep)
      else if (type === Opening) {
        const head = tokens[first]
        if (head?.tokenType === Word) retype(head, BlockKind)
        first = -1
      }
    } else if (type === Closing || type === RightParen) {
      if (depth > deepest) retype(token, TooDeep)
      if (type === Closing) first = -1
      depth = Math.max(0, depth - 1)
    } else if (type === Word && next?.tokenType === Colon) {
      retype(token, FactName)
      first = i
    } else if (isTerm(type) && next?.tokenType === Amount && next.startOffset === endOf(token)) {
      const apart = !previous || previous.tokenType === Newline || endOf(previous) < token.startOffset
      if (apart || previous.tokenType === To) retype(token, Sign)
    } else if (first === -1 && depth <= deepest) first = i
  })
}
