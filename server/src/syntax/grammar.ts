import { EmbeddedActionsParser, type IOrAlt, type IToken, tokenMatcher } from 'chevrotain'
import { blockHeading, braceProblems } from './braces.ts'
import { amountPart, blankPart, type Further, join, leaf, spanOf, textLeaf, worked } from './leaves.ts'
import { addClosing, addNoise } from './problem-runs.ts'
import * as T from './tokens.ts'
import type {
  BlockNode,
  Entry,
  FactNode,
  Item,
  Leaf,
  LineNode,
  Part,
  Provenance,
  Span,
  SyntaxProblem,
} from './tree.ts'

/**
 * The grammar accepts every sequence of tokens: what cannot be read is an alternative with a problem, never an exception,
 * and it ends at the line's end. So one bad line costs that line.
 *
 *     section    = { newline | item | "}" }
 *     item       = block | fact | line
 *     block      = KIND { part | stray } "{" { newline | item } [ "}" ]
 *     fact       = NAME ":" [ entries ] [ provenance ]
 *     line       = { entries | provenance }
 *     entries    = entry { "," entry }
 *     part       = "±" [ sum ] | +a/-b [ unit ] | sum [ ".." [ sum ] ] [ ":" [ sum ] ]
 *     sum        = operand { ("+" | "-" | "*" | "/") [ operand ] }
 *     operand    = [ sign ] AMOUNT [ WORD | "'" | '"' ] | "?" [ WORD ] | WORD | TEXT | DATE | "(" [ sum [ sum ] ] ")" | "-" [ operand ]
 *
 * Alternatives that hold on to nothing of one run of their rule are made once (`of…`).
 */
export class SectionParser extends EmbeddedActionsParser {
  problems: SyntaxProblem[] = []

  constructor(checked: boolean) {
    super(T.vocabulary, { recoveryEnabled: false, maxLookahead: 1, skipValidations: !checked })
    this.performSelfAnalysis()
  }

  readonly section = this.RULE('section', () => {
    const items: Item[] = []
    const inside: IOrAlt<unknown>[] = [
      { ALT: () => this.CONSUME(T.Newline) },
      { ALT: () => this.collect(items, this.SUBRULE(this.item)) },
      {
        ALT: () => {
          const brace = this.CONSUME(T.Closing)
          this.ACTION(() => this.closesNothing(spanOf(brace)))
        },
      },
    ]
    this.MANY(() => this.OR(inside))
    return items
  })

  private readonly ofItem: IOrAlt<Item | undefined>[] = [
    { ALT: () => this.SUBRULE(this.block) },
    { ALT: () => this.SUBRULE(this.fact) },
    { ALT: () => this.SUBRULE(this.line) },
  ]
  private readonly item = this.RULE('item', () => this.OR(this.ofItem))

  private readonly block = this.RULE('block', (): BlockNode => {
    const kind = this.CONSUME(T.BlockKind)
    const heading: Part[] = []
    this.MANY1(() =>
      this.OR([
        { ALT: () => this.collect(heading, this.SUBRULE(this.part)) },
        { ALT: () => this.SUBRULE(this.stray) },
        { ALT: () => this.unread(this.CONSUME(T.Comma)) },
        { ALT: () => this.unread(this.CONSUME(T.LeftBracket)) },
      ]),
    )
    const opening = this.CONSUME(T.Opening)
    const items: Item[] = []
    const inside: IOrAlt<unknown>[] = [
      { ALT: () => this.CONSUME(T.Newline) },
      { ALT: () => this.collect(items, this.SUBRULE(this.item)) },
    ]
    this.MANY2(() => this.OR2(inside))
    const closing = this.OPTION(() => this.CONSUME(T.Closing))
    return this.ACTION(() => {
      const head = blockHeading(kind, heading)
      const end = closing ?? opening
      const last = items.at(-1)?.span ?? spanOf(opening)
      this.problems.push(...braceProblems(head, { opening, closing, last: items.at(-1) }))
      return {
        type: 'block',
        kind: leaf(kind),
        heading,
        items,
        doc: undefined,
        headSpan: head.span,
        span: join(spanOf(kind), closing ? spanOf(closing) : join(spanOf(end), last)),
      }
    })
  })

  private readonly fact = this.RULE('fact', (): FactNode => {
    const name = this.CONSUME(T.FactName)
    const colon = this.CONSUME(T.Colon)
    const entries = this.OPTION1(() => this.SUBRULE(this.entries)) ?? []
    const provenance = this.OPTION2(() => this.SUBRULE(this.provenance))
    return this.ACTION(() => {
      const first = entries[0]?.span ?? { start: T.endOf(colon), end: T.endOf(colon) }
      const valueSpan = join(first, entries.at(-1)?.span ?? first)
      const span = join(spanOf(name), provenance?.span ?? valueSpan)
      return { type: 'fact', name: leaf(name), entries, provenance, doc: undefined, span, valueSpan }
    })
  })

  private readonly line = this.RULE('line', (): LineNode | undefined => {
    const entries: Entry[] = []
    let provenance: Provenance | undefined
    const spans: Span[] = []
    this.AT_LEAST_ONE(() =>
      this.OR([
        {
          ALT: () => {
            const read = this.SUBRULE(this.entries)
            this.ACTION(() => {
              for (const entry of read) {
                entries.push(entry)
                spans.push(entry.span)
              }
            })
          },
        },
        {
          ALT: () => {
            const read = this.SUBRULE(this.provenance)
            this.ACTION(() => {
              provenance = read
              spans.push(read.span)
            })
          },
        },
      ]),
    )
    return this.ACTION(() => {
      const [first, last] = [spans[0], spans.at(-1)]
      if (!first || !last) return undefined
      return { type: 'line', entries, provenance, span: join(first, last) }
    })
  })

  /** The entries of the value being read, and the parts of its last. No value stands inside another. */
  private value: { readonly entries: Entry[]; parts: Part[] } = { entries: [], parts: [] }

  private readonly ofEntries: IOrAlt<unknown>[] = [
    { ALT: () => this.collect(this.value.parts, this.SUBRULE(this.part)) },
    {
      ALT: () => {
        this.CONSUME(T.Comma)
        this.endEntry()
      },
    },
    { ALT: () => this.SUBRULE(this.stray) },
    { ALT: () => this.unread(this.CONSUME(T.Opening)) },
  ]
  private readonly entries = this.RULE('entries', (): Entry[] => {
    this.value = { entries: [], parts: [] }
    this.AT_LEAST_ONE(() => this.OR(this.ofEntries))
    this.endEntry()
    return this.value.entries
  })

  private endEntry(): void {
    this.ACTION(() => {
      const { entries, parts } = this.value
      const [first, last] = [parts[0], parts.at(-1)]
      if (first && last) entries.push({ parts, span: join(first.span, last.span) })
      this.value.parts = []
    })
  }

  private readonly provenance = this.RULE('provenance', (): Provenance => {
    const open = this.CONSUME(T.LeftBracket)
    const words: Leaf[] = []
    const texts: Leaf[] = []
    this.MANY(() =>
      this.OR([
        { ALT: () => this.collect(words, leaf(this.CONSUME(T.Word))) },
        { ALT: () => this.collect(texts, textLeaf(this.CONSUME(T.Text))) },
        { ALT: () => this.collect(texts, this.open(this.CONSUME(T.OpenText))) },
        { ALT: () => this.collect(texts, this.curly(this.CONSUME(T.CurlyText))) },
        { ALT: () => this.collect(words, leaf(this.CONSUME(T.DateTime))) },
        { ALT: () => this.collect(words, leaf(this.CONSUME(T.Amount))) },
        { ALT: () => this.CONSUME(T.Comma) },
      ]),
    )
    const shut = this.OPTION(() => this.CONSUME(T.RightBracket))
    return this.ACTION(() => {
      const last = [...words, ...texts].toSorted((a, b) => a.span.start - b.span.start).at(-1)
      const span = join(spanOf(open), shut ? spanOf(shut) : (last?.span ?? spanOf(open)))
      // A text that is not closed takes the bracket with it.
      if (!shut && this.isOpenText(last)) return { words, texts, span }
      if (!shut && last) this.problems.push({ type: 'bracket-not-closed', closing: ']', span })
      else if (!shut) this.noise(open)
      return { words, texts, span }
    })
  })

  private readonly ofPart: IOrAlt<Part>[] = [
    {
      ALT: () => {
        const sign = this.CONSUME(T.PlusMinus)
        const by = this.OPTION3(() => this.SUBRULE1(this.sum)) ?? this.missing()
        return this.ACTION((): Part => ({ type: 'plus-minus', by, span: join(spanOf(sign), by.span) }))
      },
    },
    {
      ALT: () => {
        const sides = this.CONSUME(T.TwoSided)
        const unit = this.OPTION1(() => this.CONSUME(T.Word))
        return this.ACTION(
          (): Part => ({
            type: 'two-sided',
            text: sides.image,
            unit: unit && leaf(unit),
            span: join(spanOf(sides), spanOf(unit ?? sides)),
          }),
        )
      },
    },
    {
      ALT: () => {
        const low = this.SUBRULE2(this.sum)
        const high = this.OPTION2(() => {
          this.CONSUME(T.To)
          return this.OPTION4(() => this.SUBRULE3(this.sum)) ?? this.missing()
        })
        const right = this.OPTION5(() => {
          this.CONSUME(T.Colon)
          return this.OPTION6(() => this.SUBRULE4(this.sum)) ?? this.missing()
        })
        return this.ACTION((): Part => {
          const left: Part = high ? { type: 'range', low, high, span: join(low.span, high.span) } : low
          return right ? { type: 'proportion', left, right, span: join(left.span, right.span) } : left
        })
      },
    },
  ]
  private readonly part = this.RULE('part', (): Part => this.OR(this.ofPart))

  private readonly sum = this.RULE('sum', (): Part => {
    const first = this.SUBRULE1(this.operand)
    let further: Further[] | undefined
    this.MANY(() => {
      const operator = this.OR([
        { ALT: () => this.CONSUME(T.Plus) },
        { ALT: () => this.CONSUME(T.Minus) },
        { ALT: () => this.CONSUME(T.Times) },
        { ALT: () => this.CONSUME(T.Over) },
      ])
      const right = this.OPTION(() => this.SUBRULE2(this.operand)) ?? this.missing()
      further ??= []
      further.push({ operator, right })
    })
    return this.ACTION(() => (further ? worked(first, further) : first))
  })

  private readonly ofOperand: IOrAlt<Part>[] = [
    {
      ALT: () => {
        const sign = this.OPTION1(() => this.CONSUME(T.Sign))
        const amount = this.CONSUME(T.Amount)
        const unit = this.OPTION2(() => this.CONSUME1(T.Word))
        const mark = this.OPTION8({
          GATE: () => T.isMark(this.LA(0), this.LA(1), this.LA(2)),
          DEF: () =>
            this.OR8([{ ALT: () => this.CONSUME2(T.OpenText) }, { ALT: () => this.CONSUME2(T.Stray) }]),
        })
        return this.ACTION(() => amountPart(amount, unit ?? mark, sign))
      },
    },
    {
      ALT: () => {
        const mark = this.CONSUME(T.Blank)
        const unit = this.OPTION7(() => this.CONSUME3(T.Word))
        return this.ACTION(() => blankPart(mark, unit))
      },
    },
    { ALT: () => ({ type: 'word', ...leaf(this.CONSUME2(T.Word)) }) },
    { ALT: () => ({ type: 'text', ...textLeaf(this.CONSUME(T.Text)) }) },
    {
      ALT: () => {
        return { type: 'text', ...this.open(this.CONSUME(T.OpenText)) }
      },
    },
    {
      ALT: () => {
        return { type: 'text', ...this.curly(this.CONSUME(T.CurlyText)) }
      },
    },
    { ALT: () => ({ type: 'date', ...leaf(this.CONSUME(T.DateTime)) }) },
    {
      ALT: () => {
        const open = this.CONSUME(T.LeftParen)
        const inner = this.OPTION4(() => this.SUBRULE1(this.sum)) ?? this.missing()
        const touching = this.OPTION6({
          GATE: () => this.LA(1).tokenType === T.Sign,
          DEF: () => this.SUBRULE2(this.sum),
        })
        const shut = this.OPTION3(() => this.CONSUME(T.RightParen))
        return this.ACTION((): Part => {
          if (touching) this.problems.push({ type: 'sign-touches', span: touching.span })
          const span = join(spanOf(open), shut ? spanOf(shut) : (touching ?? inner).span)
          if (!shut) this.problems.push({ type: 'bracket-not-closed', closing: ')', span })
          return touching ? { type: 'missing', span } : { ...inner, span }
        })
      },
    },
    {
      ALT: () => {
        const minus = this.CONSUME(T.Minus)
        const of = this.OPTION5(() => this.SUBRULE2(this.operand)) ?? this.missing()
        return this.ACTION((): Part => ({ type: 'negated', of, span: join(spanOf(minus), of.span) }))
      },
    },
  ]
  private readonly operand = this.RULE('operand', (): Part => this.OR(this.ofOperand))

  private open(token: IToken): Leaf {
    const read = textLeaf(token)
    this.ACTION(() => this.problems.push({ type: 'text-not-closed', span: read.span }))
    return read
  }

  private isOpenText(leaf: Leaf | undefined): boolean {
    const problem = this.problems.at(-1)
    return problem?.type === 'text-not-closed' && problem.span === leaf?.span
  }

  /** What stands in curly quotes is read as it was meant. */
  private curly(token: IToken): Leaf {
    const read = textLeaf(token)
    this.ACTION(() => this.problems.push({ type: 'curly-quotes', ...read }))
    return read
  }

  /** Stands in for what should follow the token just read. */
  private missing(): Part {
    return this.ACTION((): Part => {
      const before = this.LA(0)
      const span = spanOf(before)
      this.problems.push({ type: 'value-missing', after: before.image, span })
      return { type: 'missing', span: { start: span.end, end: span.end } }
    })
  }

  /** One token that has no meaning where it stands. */
  private readonly stray = this.RULE('stray', () => {
    const token = this.OR([
      { ALT: () => this.CONSUME(T.Stray) },
      { ALT: () => this.CONSUME(T.TooDeep) },
      { ALT: () => this.CONSUME(T.Plus) },
      { ALT: () => this.CONSUME(T.Times) },
      { ALT: () => this.CONSUME(T.Over) },
      { ALT: () => this.CONSUME(T.To) },
      { ALT: () => this.CONSUME(T.Colon) },
      { ALT: () => this.CONSUME(T.RightBracket) },
      { ALT: () => this.CONSUME(T.RightParen) },
    ])
    this.unread(token)
  })

  private unread(token: IToken): void {
    this.ACTION(() => {
      if (!tokenMatcher(token, T.TooDeep)) this.noise(token)
      else if (this.problems.at(-1)?.type !== 'too-deep')
        this.problems.push({ type: 'too-deep', span: spanOf(token) })
    })
  }

  /** The token last found to have no meaning, when more of its kind may follow. */
  private last: IToken | undefined

  /** One problem for a run of noise, not one for each sign of it. */
  private noise(token: IToken): void {
    const follows = this.last !== undefined && this.LA(-1) === this.last
    addNoise(this.problems, token, follows)
    this.last = token
  }

  private closesNothing(span: Span): void {
    addClosing(this.problems, span)
  }

  private collect<T>(into: T[], read: T | undefined): void {
    this.ACTION(() => {
      if (read !== undefined) into.push(read)
    })
  }
}
