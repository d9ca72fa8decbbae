import { elide } from '../../quantity/elide.ts'
import { problemCheck, theLanguage } from '../check.ts'

export default problemCheck({
  id: 'job/block-added',
  problem: 'block-added',
  severity: 'warning',
  title: 'Block in addition to those taken from another drive',
  why: 'A block whose name the other drive does not have is an additional block. If it was meant to replace one of the blocks taken, the drive now has both.',
  source: theLanguage,
  fires: `drive port {
  motor pm-20 { power: 20 kW }
  motor pm-5 { power: 5 kW }
}
drive starboard {
  like: port
  motor { mass: 60 kg }
# ^^^^^ pm-20, pm-5
}`,
  quiet: `drive port { motor pm-20 { power: 20 kW } }
drive starboard {
  like: port
  motor { mass: 60 kg }
}`,
  words: ({ kind, name, taken, isNamed }) => ({
    ...(isNamed && { severity: 'information' }),
    message: `${elide(name ?? `The ${kind}`)} is one more ${kind} than the other drive has.`,
    detail: `Taken from it: ${taken.join(', ')}.`,
    todo: `Give it the name of ${taken.length === 1 ? 'that one if it replaces it' : 'one of them if it replaces that one'}.`,
    found: name ?? kind,
  }),
})
