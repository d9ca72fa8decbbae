import { at, check, published } from '../../../../checks/check.ts'
import { insert } from '../../../../checks/fix-text.ts'
import { oneLine } from '../../../../checks/one-line.ts'
import { phaseFaults } from '../../plans/phase-faults.ts'

export default check({
  id: 'phases/incomplete',
  severity: 'error',
  title: 'Phase not connected',
  why: 'With one phase open, the motor hums, gets hot and does not turn.',
  source: published('IEC 60034-8: terminal markings and direction of rotation'),
  on: 'phase-map',
  needs: { pairs: 'phase-map.pairs' },
  fires: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V
#   ^^^^^^^^^^^^^^ controller terminal C, motor terminal W
  }
}`,
  quiet: `drive main {
  controller { terminals: A, B, C }
  motor main { power: 15 kW  terminals: U, V, W }
  phase-map {
    A to U, B to V, C to W
  }
}`,
  run: ({ pairs }, lookup) => {
    const missing = phaseFaults(lookup.block, lookup)
      .filter(({ type }) => type === 'missing')
      .map(({ words }) => words)
    return missing.length === 0
      ? []
      : [
          at(pairs, {
            ...oneLine(
              `The phase map leaves out ${missing.join(', ')}.`,
              'The phase map leaves out terminals.',
            ),
            todo: 'Connect every phase to its terminal.',
            found: missing.join(', '),
          }),
        ]
  },
  fixes: ({ at }, { block, lookup }) => {
    const missing = (block && lookup ? phaseFaults(lookup.block, lookup) : []).filter(
      ({ type }) => type === 'missing',
    )
    const [from, otherFrom] = missing.filter(({ side }) => side === 'from')
    const [to, otherTo] = missing.filter(({ side }) => side === 'to')
    // With more than one left on a side, which goes to which is not to be guessed.
    if (!from || !to || otherFrom || otherTo) return []
    const pair = `${from.terminal} to ${to.terminal}`
    return [{ title: `Add ${pair}`, edits: [insert(at.section, at.span.end, `, ${pair}`)], preferred: true }]
  },
})
