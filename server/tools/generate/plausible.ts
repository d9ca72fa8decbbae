import { plausible } from '../../src/areas/across/plausible.ts'
import { statedTwice } from '../../src/areas/across/stated-twice.ts'
import type { Relation } from '../../src/checks/relation.ts'
import { code, madeBy, table } from './markdown.ts'

const rows = (relations: readonly Relation[]): string =>
  table(
    ['rule', 'facts', 'found as', 'why', 'source'],
    relations.map(({ rule, facts, severity, why, source }) => [
      rule,
      facts.map(code).join(', '),
      severity,
      why,
      `${source.text} (${source.basis})`,
    ]),
  )

/** Pairs of facts that have a check of their own. */
const elsewhere = [
  'battery/nominal-outside-window',
  'cable/controller-input-outside',
  'seal/compression-outside',
  'seal/shaft-size-differs',
  'alignment/bearing-smaller-than-shaft',
  'alignment/flange-smaller-than-shaft',
  'alignment/gauge-diameter-beyond-flange',
  'alignment/afloat-before-launch',
]

/** `docs/plausible.md`: the rules between facts. */
export const plausiblePage = (): string => `${madeBy}
# Facts that must agree

Most mistakes in a job are a wrong digit or a wrong unit. Each fact has a range of its own ([reference](reference.md)). The rules here are between facts, or ask about a figure that is possible and unlikely.

## Facts that say the same thing twice

If they contradict each other, [job/facts-contradict](checks/job/facts-contradict.md) says so. Until they agree, each check uses the figure that is worse for what it checks.

${rows(statedTwice)}

## Facts that must suit each other

[job/facts-implausible](checks/job/facts-implausible.md) finds what breaks one of these rules. The bounds are far outside what is built: a job that keeps them is not proven to be well designed.

${rows(plausible)}

## Checks of their own

${elsewhere.map((id) => `- [${id}](checks/${id}.md)`).join('\n')}
`
