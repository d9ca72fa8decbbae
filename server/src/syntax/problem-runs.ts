import type { IToken } from 'chevrotain'
import { join, spanOf } from './leaves.ts'
import type { Span, SyntaxProblem } from './tree.ts'

/** One problem for a run of noise, not one for each sign of it. `follows`: nothing that can be read is between this token and the last. */
export function addNoise(problems: SyntaxProblem[], token: IToken, follows: boolean): void {
  const last = problems.at(-1)
  if (follows && last?.type === 'unreadable')
    problems[problems.length - 1] = {
      ...last,
      text: (last.text + token.image).slice(0, 40),
      span: join(last.span, spanOf(token)),
    }
  else problems.push({ type: 'unreadable', text: token.image, span: spanOf(token) })
}

/** One problem for closing braces side by side. */
export function addClosing(problems: SyntaxProblem[], span: Span): void {
  const last = problems.at(-1)
  if (last?.type === 'closing-without-block' && last.span.end === span.start)
    problems[problems.length - 1] = { ...last, span: join(last.span, span) }
  else problems.push({ type: 'closing-without-block', span })
}
