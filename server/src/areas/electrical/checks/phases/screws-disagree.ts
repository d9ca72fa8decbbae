import { at, check, theJobFile } from '../../../../checks/check.ts'
import { oneLine } from '../../../../checks/one-line.ts'
import { screwsOf } from '../../plans/twin-screws.ts'

/** Names of drives can be of any length. */
function shortened(message: string, detail = ''): { readonly message: string; readonly detail?: string } {
  const line = oneLine(message, 'The screws are not as the job states.')
  const all = [line.detail, detail].filter(Boolean).join(' ')
  return all === '' ? { message: line.message } : { message: line.message, detail: all }
}

const job = (port: string, starboard: string, mark = '') => `job "Ferry" {
  vessel: "Invented"
  screws: outward${mark}
}
drive port {
  across: 0.8 m port
  propeller { diameter: 480 mm  turns: ${port} }
}
drive starboard {
  across: 0.8 m starboard
  propeller { diameter: 480 mm  turns: ${starboard} }
}`

export default check({
  id: 'phases/screws-disagree',
  severity: 'error',
  title: 'Screws of two drives not as the job wants them',
  why: 'Two screws that turn opposite ways cancel their sideways push. Outward or inward changes how the boat turns at low speed. Both propellers are ordered by their hand.',
  source: theJobFile(
    'the `screws` that the job states, and the definition of outward and inward, seen from astern',
  ),
  on: 'job',
  needs: { screws: 'job.screws' },
  fires: job('right-hand', 'left-hand', '\n#         ^^^^^^^ right-hand'),
  quiet: job('left-hand', 'right-hand'),
  run: ({ screws }, lookup) =>
    screwsOf(screws.value, lookup).map(({ message, detail, todo, isOpen, found }) =>
      at(screws, {
        ...(isOpen && { severity: 'information' as const }),
        ...shortened(message, detail),
        todo,
        found,
        limit: screws.value,
      }),
    ),
})
