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
      'How the height of a foot is set: by a stud with one nut below and one above the foot, or by shims.',
      { from: 'draft', example: 'stud-and-nuts' },
    ),
    thread: fact(
      designation,
      'Thread of the studs. `M16` means the coarse pitch. State any other pitch or series: `"M16x1.5"`, `"3/4-10 UNC"`. Add `LH` for a left-hand thread: `"M16x1.5 LH"`.',
      { from: 'for-review', when: { fact: 'adjuster', is: 'stud-and-nuts' }, example: 'M16' },
    ),
    'nut-step': fact(
      choice(['whole-flat', 'half-flat', 'quarter-flat']),
      'Smallest step for turning the nuts. If not stated, half a flat.',
      { example: 'half-flat' },
    ),
    shims: fact(lengths, 'Shim thicknesses available.', {
      from: 'issued',
      when: { fact: 'adjuster', is: 'shims' },
      example: '0.05 mm, 0.1 mm, 0.2 mm, 0.5 mm, 1 mm',
    }),
    torque: fact(
      amount('torque', { min: 0.1, max: 1e5 }),
      'Tightening torque that holds the feet down: of the upper nuts of the studs, or of the bolts over shims.',
      { from: 'issued', example: '120 N·m' },
    ),
    'lower-torque': fact(
      amount('torque', { min: 0.1, max: 1e5 }),
      'Tightening torque of the lower nuts of the studs, or of their lock nuts, if their maker specifies one.',
      { example: '60 N·m' },
    ),
  },
  needs: { draft: ['foot'] },
  example: `bed {
  adjuster: stud-and-nuts
  thread:   M16
  foot aft-port { from-coupling: 180 mm  across: 140 mm port }
  foot aft-stbd { from-coupling: 180 mm  across: 140 mm starboard }
  foot fwd-port { from-coupling: 560 mm  across: 140 mm port }
  foot fwd-stbd { from-coupling: 560 mm  across: 140 mm starboard }
}`,
})
