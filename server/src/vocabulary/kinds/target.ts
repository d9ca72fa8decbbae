import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'

const length = { min: -0.05, max: 0.05 }
const deg = Math.PI / 180
const slope = { min: -3 * deg, max: 3 * deg }

/** Where the machine is to stand while it is read, so that it is right when it runs. Offset: of the machine flange; slope: of the machine
 * axis, going forward. */
export const target = block({
  kind: 'target',
  doc: 'Where the machine is to stand while it is read (parted, dry, cold), so that it is right when it runs. Without it the target is a straight line through the shaft. Every part is optional; they add up, with the `growth` of the feet. Offset is that of the machine flange, slope that of the machine axis going forward.',
  heading: 'none',
  within: ['drive'],
  many: false,
  facts: {
    'shaft-droop': fact(
      amount('length', length),
      'How far the end of the parted shaft hangs below the line it runs on when joined. The machine is to stand this much high against the hanging flange.',
      { example: '0.08 mm' },
    ),
    'shaft-slope': fact(
      amount('angle', slope),
      'How steeply the end of the parted shaft hangs, its coupling end down. The far end of the machine is to stand this much high: the gap is then wider at the bottom.',
      { example: '0.3 mrad' },
    ),
    'afloat-up': fact(
      amount('length', length),
      'How far the machine flange rises against the shaft from dry to afloat; sinking is negative. Read dry, the machine is to stand this much low.',
      { example: '-0.10 mm' },
    ),
    'afloat-to-starboard': fact(
      amount('length', length),
      'How far the machine flange goes to starboard against the shaft from dry to afloat; to port is negative. Read dry, the machine is to stand this much to port.',
      { example: '0.02 mm' },
    ),
    'afloat-slope-up': fact(
      amount('angle', slope),
      'How much steeper up, going forward, the machine axis stands against the shaft once afloat. Read dry, the far end is to stand this much low.',
      { example: '0.2 mrad' },
    ),
    'afloat-slope-to-starboard': fact(
      amount('angle', slope),
      'How much further to starboard, going forward, the machine axis points against the shaft once afloat. Read dry, the far end is to stand this much to port.',
      { example: '0.1 mrad' },
    ),
    'maker-up': fact(
      amount('length', length),
      'How high above the shaft the maker wants the machine flange while it is read; low is negative. Leave `growth` away where the figure holds it already.',
      { example: '-0.05 mm [maker]' },
    ),
    'maker-to-starboard': fact(
      amount('length', length),
      'How far to starboard the maker wants the machine flange while it is read; to port is negative.',
      { example: '0.02 mm [maker]' },
    ),
    'maker-slope-up': fact(
      amount('angle', slope),
      'How steep up, going forward, the maker wants the machine axis while it is read; far end low is negative.',
      { example: '0.1 mrad [maker]' },
    ),
    'maker-slope-to-starboard': fact(
      amount('angle', slope),
      'How far to starboard, going forward, the maker wants the machine axis to point while it is read; to port is negative.',
      { example: '0.1 mrad [maker]' },
    ),
  },
  example: 'target { shaft-droop: 0.08 mm  shaft-slope: 0.3 mrad }',
})
