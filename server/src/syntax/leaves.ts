import type { IToken } from 'chevrotain'
import { endOf } from './tokens.ts'
import type { Leaf, Part, Span } from './tree.ts'

export const spanOf = (token: IToken): Span => ({ start: token.startOffset, end: endOf(token) })

export const join = (first: Span, last: Span): Span => ({
  start: first.start,
  end: Math.max(first.end, last.end),
})

export const leaf = (token: IToken): Leaf => ({ text: token.image, span: spanOf(token) })

/** A text without its quotes, and without the backslashes before what they protect. */
export const textLeaf = (token: IToken): Leaf => ({
  text: token.image.replace(/^"|"$/g, '').replace(/\\(.)/g, '$1'),
  span: spanOf(token),
})

/** A text in curly quotes, which protect nothing. */
export const curlyLeaf = (token: IToken): Leaf => ({
  text: token.image.replace(/^[“”„‟]|[“”„‟]$/g, '').trim(),
  span: spanOf(token),
})

/** A sign of its own before the number counts: a minus turns it, a plus changes nothing. */
export const amountPart = (amount: IToken, unit?: IToken, sign?: IToken): Part => ({
  type: 'amount',
  number: (sign && sign.image !== '+' ? '-' : '') + amount.image,
  ...(unit && { unit: leaf(unit) }),
  span: join(spanOf(sign ?? amount), spanOf(unit ?? amount)),
})

/** The operator that a sign stands for, whichever way it is written. */
function operatorOf({ image }: IToken): '+' | '-' | '*' | '/' {
  if (image === '×') return '*'
  if (image === '÷') return '/'
  return image === '−' ? '-' : (image as '+' | '-' | '*' | '/')
}

export const operation = (operator: IToken, left: Part, right: Part): Part => ({
  type: 'operation',
  operator: operatorOf(operator),
  left,
  right,
  span: join(left.span, right.span),
})
