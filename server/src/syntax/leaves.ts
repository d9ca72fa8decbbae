import type { IToken } from 'chevrotain'
import { endOf } from './tokens.ts'
import type { Leaf, Part, Span } from './tree.ts'

export const spanOf = (token: IToken): Span => ({ start: token.startOffset, end: endOf(token) })

export const join = (first: Span, last: Span): Span =>
  last.end <= first.end ? first : { start: first.start, end: last.end }

export const leaf = (token: IToken): Leaf => ({ text: token.image, span: spanOf(token) })

/** A text without its quotes, and without the backslashes before what they protect. In curly or single quotes nothing is protected. */
export const unquoted = (image: string): string =>
  image.startsWith('"')
    ? image.replace(/^"|"$/g, '').replace(/\\(.)/g, '$1')
    : image.replace(/^[“”„‟‘’‚‛«»‹›']|[“”„‟‘’‚‛«»‹›']$/g, '').trim()

export const textLeaf = (token: IToken): Leaf => ({ text: unquoted(token.image), span: spanOf(token) })

/** A sign of its own before the number counts: a minus turns it, a plus changes nothing. */
export const amountPart = (amount: IToken, unit?: IToken, sign?: IToken): Part => ({
  type: 'amount',
  number: (sign && sign.image !== '+' ? '-' : '') + amount.image,
  unit: unit && leaf(unit),
  span: { start: (sign ?? amount).startOffset, end: endOf(unit ?? amount) },
})

/** `?`, with the unit of what is not known yet. */
export const blankPart = (mark: IToken, unit?: IToken): Part => ({
  type: 'blank',
  unit: unit && leaf(unit),
  span: join(spanOf(mark), spanOf(unit ?? mark)),
})

/** The operator that a sign stands for, whichever way it is written. */
function operatorOf({ image }: IToken): '+' | '-' | '*' | '/' {
  if (image === '×') return '*'
  if (image === '÷') return '/'
  return image === '+' || image === '*' || image === '/' ? image : '-'
}

const operation = (operator: IToken, left: Part, right: Part): Part => ({
  type: 'operation',
  operator: operatorOf(operator),
  left,
  right,
  span: join(left.span, right.span),
})

/** An operator and what stands behind it. */
export interface Further {
  readonly operator: IToken
  readonly right: Part
}

/** `a + b * c - d`: products first, then sums, each from the left. */
export function worked(first: Part, further: readonly Further[]): Part {
  let sum: { readonly left: Part; readonly operator: IToken } | undefined
  let product = first
  for (const { operator, right } of further) {
    const sign = operatorOf(operator)
    if (sign === '*' || sign === '/') product = operation(operator, product, right)
    else {
      sum = { left: sum ? operation(sum.operator, sum.left, product) : product, operator }
      product = right
    }
  }
  return sum ? operation(sum.operator, sum.left, product) : product
}
