import { block, fact } from '../block.ts'
import { amount, choice, designation } from '../shape.ts'
import { lengths } from '../shapes/lengths.ts'

export const bed = block({
  kind: 'bed',
  doc: 'What the machine stands on, and how its feet are set.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    adjuster: fact(
      choice(['stud-and-nuts', 'shims']),
      'How a foot gets its height: a stud with a nut under and a nut over the foot, or shims.',
      { example: 'stud-and-nuts', required: true },
    ),
    thread: fact(
      designation,
      'Thread of the studs: `M16` for the coarse pitch, else with its pitch or series, `"M16x1.5"`, `"3/4-10 UNC"`. A left-hand thread says `LH`: `"M16x1.5 LH"`.',
      { example: 'M16' },
    ),
    'nut-step': fact(
      choice(['whole-flat', 'half-flat', 'quarter-flat']),
      'Smallest step that the nuts are turned by; half a flat where nothing is said.',
      { example: 'half-flat' },
    ),
    shims: fact(lengths, 'Thicknesses of shim at hand.', {
      example: '0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm',
    }),
    torque: fact(
      amount('torque', { min: 0.1, max: 1e5 }),
      'Torque that holds the feet down: of the upper nuts of the studs, or of the bolts over shims.',
      { example: '120 N·m' },
    ),
    'lower-torque': fact(
      amount('torque', { min: 0.1, max: 1e5 }),
      'Torque of the lower nuts of the studs, or of the nuts that lock them, where their maker gives one.',
      { example: '60 N·m' },
    ),
  },
  needs: ['foot'],
  example: `bed {
  adjuster: stud-and-nuts
  thread:   M16
  foot aft-port { from-coupling: 180 mm  across: 140 mm port }
  foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
  foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
  foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
}`,
})
