import { check, published } from '../../../../checks/check.ts'
import { replace, textAt } from '../../../../checks/fix-text.ts'
import { elide } from '../../../../quantity/elide.ts'
import { phaseFaults } from '../../plans/phase-faults.ts'

const messageFor = (words: string): string => `There is no ${elide(words)}.`

export default check({
  id: 'phases/unknown-terminal',
  severity: 'error',
  title: 'Terminal that does not exist',
  why: 'A mark that the machine does not have is a typing error, or belongs to another machine.',
  source: published('IEC 60034-8: terminal markings and direction of rotation'),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to X
#                   ^^^^^^ motor terminal X
  }
}`,
  quiet: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to W
  }
}`,
  run: (_facts, lookup) =>
    phaseFaults(lookup.block, lookup)
      .filter(({ type }) => type === 'unknown')
      .map(({ words, terminal, terminals, at }) => ({
        at,
        message: messageFor(words),
        detail: `The terminals there are ${terminals.join(', ')}.`,
        todo: 'Use the marks on the machines, as listed in their `terminals`.',
        found: terminal,
        limit: terminals.join(', '),
      })),
  fixes: ({ at, found, message }, { block, lookup }) => {
    const faults = block && lookup ? phaseFaults(lookup.block, lookup) : []
    // Both ends of a pair may be written alike; the words name the machine that has no such terminal.
    const fault = faults.find((f) => messageFor(f.words) === message && f.at.span.start === at.span.start)
    if (!fault || found === undefined) return []
    const { side } = fault
    const free = faults
      .filter((other) => other.type === 'missing' && other.side === side)
      .map(({ terminal }) => terminal)
    const same = free.find((terminal) => terminal.toLowerCase() === found.toLowerCase())
    const meant = same ?? (free.length === 1 ? free[0] : undefined)
    const pair = textAt(at)
    const start = side === 'from' ? pair.indexOf(found) : pair.lastIndexOf(found)
    if (meant === undefined || start < 0) return []
    const span = { start: at.span.start + start, end: at.span.start + start + found.length }
    return [
      { title: `Write ${meant}`, edits: [replace({ section: at.section, span }, meant)], preferred: true },
    ]
  },
})
