import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'

const length = { min: -0.05, max: 0.05 }
const deg = Math.PI / 180
const slope = { min: -3 * deg, max: 3 * deg }

/** Where the machine is to stand while it is read, so that it is right when it runs. Offset: of the machine flange; slope: of the machine
 * axis, going forward. */
export const target = block({
  kind: 'target',
  doc: 'Where the machine must stand during a reading (parted, dry, cold) so that it is aligned when it runs. Without a target, the machine must stand in line with the shaft. Every fact is optional. They add up, together with the `growth` of the feet. The offset is that of the machine flange. The slope is that of the machine axis, going forward.',
  heading: 'none',
  within: ['drive'],
  many: false,
  perDrive: true,
  facts: {
    'shaft-droop': fact(
      amount('length', length),
      'How far the end of the parted shaft droops below its running line. The machine must stand higher than the drooping flange by this amount.',
      { example: '0.08 mm' },
    ),
    'shaft-slope': fact(
      amount('angle', slope),
      'Slope of the drooping end of the parted shaft, coupling end down. The far end of the machine must be high by this slope: the gap is then wider at the bottom.',
      { example: '0.3 mrad' },
    ),
    'afloat-up': fact(
      amount('length', length),
      'How far the machine flange rises relative to the shaft from dry to afloat. Negative means it sinks. For a dry reading, the machine must stand lower by this amount.',
      { example: '-0.10 mm' },
    ),
    'afloat-to-starboard': fact(
      amount('length', length),
      'How far the machine flange goes to starboard relative to the shaft from dry to afloat. To port is negative. For a dry reading, the machine must stand to port by this amount.',
      { example: '0.02 mm' },
    ),
    'afloat-slope-up': fact(
      amount('angle', slope),
      'How much more the machine axis slopes up, going forward, relative to the shaft once afloat. For a dry reading, the far end must be low by this slope.',
      { example: '0.2 mrad' },
    ),
    'afloat-slope-to-starboard': fact(
      amount('angle', slope),
      'How much more the machine axis points to starboard, going forward, relative to the shaft once afloat. For a dry reading, the far end must be to port by this slope.',
      { example: '0.1 mrad' },
    ),
    'maker-up': fact(
      amount('length', length),
      'Height of the machine flange above the shaft during a reading, as the maker specifies. Low is negative. Leave out `growth` if this figure includes it.',
      { example: '-0.05 mm [maker]' },
    ),
    'maker-to-starboard': fact(
      amount('length', length),
      'Distance of the machine flange to starboard during a reading, as the maker specifies. To port is negative.',
      { example: '0.02 mm [maker]' },
    ),
    'maker-slope-up': fact(
      amount('angle', slope),
      'Upward slope of the machine axis, going forward, during a reading, as the maker specifies. Far end low is negative.',
      { example: '0.1 mrad [maker]' },
    ),
    'maker-slope-to-starboard': fact(
      amount('angle', slope),
      'Slope of the machine axis to starboard, going forward, during a reading, as the maker specifies. To port is negative.',
      { example: '0.1 mrad [maker]' },
    ),
  },
  example: 'target { shaft-droop: 0.08 mm  shaft-slope: 0.3 mrad }',
})
