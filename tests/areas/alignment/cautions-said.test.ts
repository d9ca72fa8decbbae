// Words that keep people safe, each held by name, so that none is lost unseen: common practice, no source. On a right-hand thread (ISO 261) the nut under
// a foot, seen from above, goes counter-clockwise to rise.
import { describe, expect, it } from 'vitest'
import { correctionOf } from '../../../server/src/areas/alignment/plans/correction.ts'
import { moveDiscrepancy } from '../../../server/src/areas/alignment/plans/move-discrepancy.ts'
import { procedureLines } from '../../../server/src/areas/alignment/plans/procedure.ts'
import { correctionText } from '../../../server/src/areas/alignment/plans/words.ts'
import { isolateBriefly } from '../../../server/src/areas/common/dangers.ts'
import { blockIn } from '../job-text.ts'
import { feet, flat, job } from './move-discrepancy-jobs.ts'

const level = 'top 1.80 mm, starboard 1.80 mm, bottom 1.80 mm, port 1.80 mm'
const open = 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm'
const centred = 'top 0 mm, starboard 0 mm, bottom 0 mm, port 0 mm'

const driveOf = ({
  bed = 'adjuster: stud-and-nuts  thread: M16',
  gaps = open,
  offsets = centred,
  target = '',
}) =>
  `drive main {
  coupling { flange-diameter: 125 mm  gauge-diameter: 110 mm  gap-variation: max 0.10 mm  offset: max 0.15 mm }
  bed {
    ${bed}
    foot aft-port { from-coupling: 180 mm  across: 140 mm port }
    foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
    foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
    foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
  }
  ${target}
  reading a { taken: 2026-03-04  gauge: 0.02 mm
    gaps: ${gaps}
    offsets: ${offsets}
  }
}
`
function planned(of: Parameters<typeof driveOf>[0]) {
  const { block, lookup } = blockIn(driveOf(of), 'main.a')
  const outcome = correctionOf(block, lookup)
  if (!outcome.ok) throw new Error(outcome.fault.words)
  return outcome.value
}
const workOf = (of: Parameters<typeof driveOf>[0]) => procedureLines(planned(of), 'metric').join('\n')

const nuts = {}
const shims = { bed: 'adjuster: shims  shims: 0.05 mm, 0.1 mm, 0.5 mm, 1 mm' }
const unknownThread = { bed: 'adjuster: stud-and-nuts' }
const sideways = { gaps: 'top 1.80 mm, starboard 1.92 mm, bottom 1.80 mm, port 1.68 mm' }
/** A flange that stands 8 mm to starboard: the machine has to go 8 mm to port. */
const toPort = { gaps: level, offsets: 'top 0 mm, starboard 8 mm, bottom 0 mm, port -8 mm' }
const toStarboard = { gaps: level, offsets: 'top 0 mm, starboard -8 mm, bottom 0 mm, port 8 mm' }

describe('the work', () => {
  it.each([
    ['nuts', nuts],
    ['nuts of an unknown thread', unknownThread],
    ['shims', shims],
    ['sideways', sideways],
    ['rough alignment', toPort],
  ])('isolates, proves dead and holds the shaft forward of its seal: %s', (_, of) => {
    const work = workOf(of)
    expect(work).toContain('prove dead at the controller input and at the motor terminals')
    expect(work).toContain(
      'a clamp or straps forward of its seal, so that it can neither turn in the water nor slide aft',
    )
    expect(work).toContain('If the shaft turns meanwhile, prove dead again.')
    expect(work).toContain('slide out of its seal, and the boat floods')
    expect(work.indexOf('Isolate the drive')).toBeLessThan(work.indexOf('Secure the shaft'))
    expect(work.indexOf('Secure the shaft')).toBeLessThan(work.indexOf('Part the coupling'))
  })

  it.each([
    ['nuts', nuts, 'Keep hands and fingers from under the feet'],
    ['nuts of an unknown thread', unknownThread, 'Keep hands and fingers from under the feet'],
    ['shims', shims, 'keep hands and fingers from under it'],
    ['rough alignment', toPort, 'keep hands and fingers from under it'],
  ])('keeps hands from under the machine: %s', (_, of, words) => {
    expect(workOf(of)).toContain(words)
  })

  it('holds the lower nuts while the upper ones are tightened, and pushes with screws alone', () => {
    expect(workOf(nuts)).toContain('Hold the lower nuts still with a second spanner.')
    expect(workOf(shims)).not.toContain('lower nuts')
    expect(workOf(sideways)).toContain(
      'Push with the screws only: a lever or a hammer makes the machine jump.',
    )
  })

  it('says of an unknown thread which way the nut of a right-hand one raises the foot', () => {
    expect(workOf(nuts)).toContain('up is counter-clockwise')
    expect(workOf(unknownThread)).toContain(
      'On a right-hand thread, seen from above, up is counter-clockwise.',
    )
  })

  it.each([
    ['port', toPort],
    ['starboard', toStarboard],
  ])(
    'far off to be moved to %s, it has no sign in its figures and leaves the coupling parted',
    (side, of) => {
      expect(planned(of)).toMatchObject({ withheld: 'far-off' })
      const work = workOf(of)
      expect(work).toContain(`8.0 mm to ${side}`)
      expect(work).toContain('leave enough room: 8.0 mm sideways')
      expect(work).not.toMatch(/[\s(]-\d/)
      expect(work).toContain('Do not join the coupling yet.')
    },
  )

  it('with a target reads again with the end of the shaft as it was', () => {
    const droop = { gaps: level, target: 'target { shaft-droop: 0.50 mm }' }
    const asItWas = ', the shaft end as it was for this reading'
    expect(workOf(droop)).toContain(`with the same gauge at the same places${asItWas}`)
    expect(correctionText(planned(droop), 'metric')).toContain(`with the coupling parted${asItWas}`)
    expect(workOf(nuts)).not.toContain(asItWas)
  })
})

it('the caution beside the moves parts the coupling once the shaft is held, and of a machine within its limits not at all', () => {
  const part = 'Only then take out the coupling bolts. Support the machine. Keep hands and fingers from under'
  const moves = correctionText(planned(nuts), 'metric')
  expect(moves).toContain(part)
  expect(moves.indexOf('Secure the shaft')).toBeLessThan(moves.indexOf(part))
  expect(correctionText(planned({ gaps: level }), 'metric')).not.toContain('coupling bolts')
})

it.each([
  ['half the way', [flat / 2, 1.5 * flat]],
  ['the wrong way', [-flat, -3 * flat]],
  ['ends exchanged', [3 * flat, flat]],
] as const)('looks at a machine that moved otherwise begin with isolating: %s', (_, went) => {
  const { block, lookup } = blockIn(job(feet('up 1 flat', 'up 3 flats'), went), 'main.r2')
  expect(moveDiscrepancy(block, lookup)?.words).toContain(isolateBriefly)
})
