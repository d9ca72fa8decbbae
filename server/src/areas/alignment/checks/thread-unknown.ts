import { at, check, published } from '../../../checks/check.ts'
import { firstLine } from '../../../checks/one-line.ts'
import { parseThread } from '../../../engineering/thread.ts'
import { elide } from '../../../quantity/elide.ts'
import { formatSi } from '../../../quantity/format.ts'

const write =
  'Write it as "M16x1.5", "3/4-10 UNC" or, for a left-hand thread, "M16x1.5 LH". Until then the plan gives lengths, not turns.'

const formatPitch = (pitch: number): string => formatSi(pitch, 'length')

/** Why a designation gives no pitch; undefined where it gives one. */
function whyNot(written: string): string | undefined {
  const thread = parseThread(written)
  const designation = elide(written)
  if (thread.ok) return undefined
  const { problem } = thread
  switch (problem.type) {
    case 'not-a-thread':
      return `${designation} cannot be read as a thread.`
    case 'pitch-missing':
      return `The pitch of ${designation} is not known here. Known are M6 to M24 and 1/4 to 1 in of the coarse series, where only one fits.`
    case 'pitch-wrong':
      return `${designation} has a pitch of ${formatPitch(problem.pitch)}${problem.standard === undefined ? ', which no thread of that size has' : `; the series named, or the coarse thread of that size, has ${formatPitch(problem.standard)}`}.`
  }
}

export default check({
  id: 'alignment/thread-unknown',
  severity: 'warning',
  title: 'Thread whose pitch is not known',
  why: 'The pitch and the hand of the thread say what a turn of the nut does. Without them the plan gives no turns, and logged turns give no heights.',
  source: published('ISO 261 and ISO 262, ASME B1.1'),
  on: 'bed',
  plan: 'goes-on',
  needs: { thread: 'bed.thread' },
  fires: `drive main {
  bed {
    adjuster: stud-and-nuts
    thread: M17
#           ^^^ not known
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm port }
  }
}`,
  quiet: `drive main {
  bed {
    adjuster: stud-and-nuts
    thread: "M16x1.5 LH"
    foot aft { from-coupling: 180 mm  across: 140 mm port }
    foot fwd { from-coupling: 560 mm  across: 140 mm port }
  }
}`,
  run: ({ thread }) => {
    const message = whyNot(thread.value)
    return message === undefined
      ? []
      : [at(thread, { ...firstLine(message), todo: write, found: elide(thread.value) })]
  },
})
