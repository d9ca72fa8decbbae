import { atHead, check, theLanguage } from '../../../checks/check.ts'
import { move } from '../../../vocabulary/kinds/move.ts'

export default check({
  id: 'alignment/foot-name-taken',
  severity: 'error',
  title: 'Foot with the name of a fact',
  why: 'A move lists feet by name, beside its own facts. A line with such a name is read as that fact, so a move of this foot can never be logged.',
  source: theLanguage,
  on: 'foot',
  plan: 'waits',
  fires: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot done { from-coupling: 180 mm  across: 140 mm port }
#   ^^^^^^^^^ done
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm starboard }
  }
}`,
  run: (_facts, { block }) =>
    block.name !== undefined && (block.name === 'like' || Object.hasOwn(move.facts, block.name))
      ? [
          atHead(block, {
            message: `A foot cannot be called ${block.name}: in a move, that word is a fact.`,
            todo: 'Give the foot a name by its place, such as aft-port.',
            found: block.name,
          }),
        ]
      : [],
})
