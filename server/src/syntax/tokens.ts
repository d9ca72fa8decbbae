import { createToken, type IToken, Lexer, type TokenType } from 'chevrotain'
import { groupedNumber, readingsOf } from '../quantity/separated-number.ts'
import { asRead, conflictsIn } from './conflicts.ts'
import { kindsOfBlock } from './inside.ts'

/** Letters of any script, and the signs units are written with. Everything beyond ASCII that has no other meaning is a letter. */
const letter =
  'A-Za-z_%°µ²³\\u00AA\\u00BA\\u00C0-\\u00D6\\u00D8-\\u061B\\u061D-\\u115E\\u1161-\\u167F\\u1681-\\u180D\\u180F-\\u1FFF\\u2032\\u2033\\u2070-\\u2211\\u2213-\\u2FFF\\u3001-\\u3163\\u3165-\\uFEFE\\uFF01-\\uFF9F\\uFFA1-\\uFFFF'
const digits = '[0-9]+'
const number = `(?:${groupedNumber}|${digits}[-\\u2011]${digits}/${digits}|${digits} ${digits}/${digits}|${digits}/${digits}|(?:${digits}(?:\\.${digits})?|\\.${digits})(?:[eE][+-]?${digits}(?![A-Za-z]))?)`
/** As it is also written in limits, where the two numbers are one token. */
const withComma = `(?:${digits},${digits}|${number})`
/** A minus; and the dashes and hyphens that word processors and phones put in its place, which are told. */
const minus = '[-\\u2010-\\u2015\\u2212]'
/** One space at most, and no line end: a broken line costs that line. */
const gap = '[ \\t\\u00A0\\u202F]?'

/** A name, or a number on its own, right behind a quote: that quote opens a text, where a colon is before it. */
const opens = `(?!(?<=:"|: ")[${letter}0-9])`
/** What ends a text whose closing quote is missing: another quote, a brace, a comment, and a fact in the next column. */
const nextFact = `[^\\S\\r\\n]{2,}[${letter}][${letter}0-9-]*:`
const openText = (ends: string): string =>
  `"(?:(?!${nextFact})[^\\S\\r\\n]*(?:[^"\\\\{}#${ends}\\s]|\\\\[^\\r\\n]))*`

/** Patterns that cutting and the editor's grammar are made from too. */
export const sources = {
  letter,
  number,
  text: `"(?:[^"\\\\\\r\\n]|\\\\[^\\r\\n])*"${opens}`,
  openText: openText(''),
  /** What an unclosed text ends before. */
  textEnd: `["{}#]|${nextFact}`,
  date: '[0-9]{4}-[0-9]{2}-[0-9]{2}(?:T[0-9]{2}:[0-9]{2}(?::[0-9]{2})?(?:Z|[+-][0-9]{2}:[0-9]{2})?)?(?![A-Za-z0-9])',
  minus,
  twoSided: `[+]${withComma}${gap}/${gap}${minus}${withComma}|${minus}${withComma}${gap}/${gap}[+]${withComma}`,
  plusMinus: `±|[+]/?${minus}`,
  curlyText:
    '[“”„‟][^“”„‟"{}#\\r\\n\\u2028\\u2029]*[“”„‟]?|[‘’‚‛][^‘’‚‛"{}#\\r\\n\\u2028\\u2029]*[‘’‛]?|[«»‹›][^«»‹›"{}#\\r\\n\\u2028\\u2029]*[«»‹›]?|\'[^\'"{}#\\r\\n\\u2028\\u2029]*\'',
}

const trivia = (name: string, pattern: RegExp) =>
  createToken({ name, pattern, group: 'trivia', line_breaks: false })
const token = (name: string, pattern: RegExp | string, longer_alt?: TokenType) =>
  createToken({ name, pattern, line_breaks: name === 'Newline', ...(longer_alt && { longer_alt }) })

const Space = trivia('Space', /[ \t\f\v\u00A0\u2000-\u200A\u202F\u205F\u3000\uFEFF]+/)
export const Comment = trivia('Comment', /#[^\r\n]*/)
export const Newline = token('Newline', /\r\n|\n|\r|\u2028|\u2029/)
export const Text = token('Text', new RegExp(sources.text))
/** A text without its closing quote. A brace or a comment ends it, so that it costs no more than itself; in brackets, their end too. */
export const OpenText = createToken({
  name: 'OpenText',
  pattern: (text, offset, before) => {
    const pattern = isInBrackets(before) ? openTextInBrackets : openTextElsewhere
    pattern.lastIndex = offset
    return pattern.exec(text) as [string] | null
  },
  line_breaks: false,
  start_chars_hint: ['"'],
})
const openTextElsewhere = new RegExp(sources.openText, 'y')
const openTextInBrackets = new RegExp(openText('\\]'), 'y')

/** Whether a bracket is open just before. More words than this no origin has. */
function isInBrackets(before: readonly IToken[]): boolean {
  const near = before.slice(-12)
  const open = near.findLastIndex(({ tokenType }) => tokenType === LeftBracket)
  return (
    open >= 0 &&
    !near.slice(open).some(({ tokenType }) => tokenType === RightBracket || tokenType === Newline)
  )
}

/** A text in curly or single quotes, as word processors and other languages make them. It is read, and told; a brace or a # ends it as it ends any other. */
export const CurlyText = token('CurlyText', new RegExp(sources.curlyText))
export const DateTime = token('DateTime', new RegExp(sources.date))
/** `+3/-2`, `-2/+3`: the two sides of a tolerance. */
export const TwoSided = token('TwoSided', new RegExp(sources.twoSided))
export const Amount = token('Amount', new RegExp(number))
/** Stands for what is not known yet: `diameter: ? mm`. */
export const Blank = token('Blank', '?')
/** A point belongs to it where more follows: `seal.free-length`, `M16x1.5`. */
export const Word = token('Word', new RegExp(`[${letter}](?:[${letter}0-9\\-·/^]|\\.(?=[A-Za-z0-9]))*`))
/** `+-` is how `±` is typed in haste; as two signs of arithmetic it would move what the tolerance is of. */
export const PlusMinus = token('PlusMinus', new RegExp(sources.plusMinus))
export const To = token('To', '..')
export const Plus = token('Plus', '+')
export const Minus = token('Minus', new RegExp(minus))
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
export const Stray = token('Stray', /\\"|[\u0000-\uFFFF]/)

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
  Blank,
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

/** Whether a sign for feet or inches touches the number before it: `6'`, `72"`. In `15'0` it parts one number. */
export const isMark = (before: IToken, next: IToken, behind: IToken): boolean =>
  (next.image === "'" || next.image === '"') &&
  before.tokenType === Amount &&
  endOf(before) === next.startOffset &&
  !(endOf(next) === behind.startOffset && /^\d/.test(behind.image))

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
  const { tokens: read, groups } = lexer.tokenize(asRead(text, conflicts))
  const tokens = withSeparators(read)
  const trivia = groups['trivia'] ?? []
  if (conflicts.length > 0)
    for (const token of trivia) token.image = text.slice(token.startOffset, endOf(token))
  classify(tokens)
  return { tokens, trivia }
}

/** Numbers with commas or points between their digits as one amount each: `35,2`, `1,234.5`. What reads as no number is a list: `0.1,0.2`. */
function withSeparators(tokens: IToken[]): IToken[] {
  const isPiece = (token: IToken | undefined) => token?.tokenType === Amount || token?.tokenType === Comma
  const touch = (a: IToken, b: IToken) => endOf(a) === b.startOffset
  const joined: IToken[] = []
  for (let i = 0; i < tokens.length; ) {
    const first = tokens[i] as IToken
    let end = i + 1
    if (
      first.tokenType === Amount ||
      (first.tokenType === Comma && beginsNumber(first, joined.at(-1), joined.at(-2)))
    )
      while (isPiece(tokens[end]) && touch(tokens[end - 1] as IToken, tokens[end] as IToken)) end += 1
    const run = tokens.slice(i, end)
    const image = end - i > 1 ? run.map((token) => token.image).join('') : ''
    if (image !== '' && readingsOf(image))
      joined.push({ ...(run.at(-1) as IToken), startOffset: first.startOffset, image })
    else for (const token of run) joined.push(token)
    i = end
  }
  return joined
}

/** Whether a comma begins a number: `top ,5 mm`. Behind an amount or a list it parts two values. */
function beginsNumber(comma: IToken, before: IToken | undefined, further: IToken | undefined): boolean {
  if (before?.tokenType !== Word) return before !== undefined && leading.has(before.tokenType)
  return endOf(before) < comma.startOffset && further?.tokenType !== Amount
}

/** What a value stands behind. */
const leading: ReadonlySet<TokenType> = new Set([Colon, LeftParen, To, PlusMinus, Plus, Minus, Times, Over])

const isTerm = (type: TokenType): boolean => type === Plus || type === Minus

function retype(token: IToken, type: TokenType): void {
  token.tokenType = type
  token.tokenTypeIdx = type.tokenTypeIdx as number
}

/** The kind of a block that begins behind a fact on its line, and its value: `like: port  propeller {`. A word that is no kind is one where it
 * stands in the next column. */
function kindBehind(tokens: readonly IToken[], fact: number, opening: number): IToken | undefined {
  let apart: IToken | undefined
  for (let i = opening - 1; i > fact + 2 && opening - i <= longestHeading; i--) {
    const [before, token] = [tokens[i - 1], tokens[i]]
    if (token?.tokenType !== Word && token?.tokenType !== Text) break
    if (token.tokenType === Word && kindsOfBlock.has(token.image)) return token
    if (token.tokenType === Word && before && token.startOffset - endOf(before) > 1) apart = token
  }
  return apart
}

/** `move after dry-1` */
const longestHeading = 3

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
        const head = tokens[first]?.tokenType === FactName ? kindBehind(tokens, first, i) : tokens[first]
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
