import { block, fact } from '../block.ts'
import { amount, choice, date, text, yesNo } from '../shape.ts'
import { angled } from '../shapes/angled.ts'
import { lifts } from '../shapes/lifts.ts'

const gap = { min: 0, max: 0.05 }
const step = { min: -0.05, max: 0.05 }
const gaugeStep = { min: 1e-7, max: 1e-3 }
const plane = { min: -20, max: 20 }

export const reading = block({
  kind: 'reading',
  doc: 'A reading of the coupling. Readings are never changed afterwards: what was done is a `move`, and the next reading follows.',
  heading: 'name',
  within: ['drive'],
  many: true,
  facts: {
    taken: fact(date, 'When it was taken.', { example: '2026-03-04', required: true }),
    afloat: fact(yesNo, 'Whether the boat was afloat.', { example: 'no' }),
    hot: fact(yesNo, 'Whether the machine was at working heat.', { example: 'no' }),
    'parted-end': fact(
      choice(['free', 'supported']),
      'Whether the end of the parted shaft hung free when it was read, or was held up to the line it runs on when joined. Free, `shaft-droop` and `shaft-slope` of the target count; supported, they do not. How to find the droop with a spring scale and a dial: docs/engineering/alignment.md.',
      { example: 'free' },
    ),
    gauge: fact(
      amount('length', gaugeStep),
      'Smallest step of the feelers, the gauge or the dial. For all that was read, unless `offset-gauge` says another for the rims.',
      { example: '0.02 mm', required: true },
    ),
    'offset-gauge': fact(
      amount('length', gaugeStep),
      'Smallest step of what the rims were read with, where that is another: feelers for the faces, a dial for the rims.',
      { example: '0.01 mm' },
    ),
    gaps: fact(
      angled(gap),
      'Gap between the faces at three or more places round the flange, with feelers or a gauge. Or read the faces by dial, `face-dial`.',
      { example: 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm' },
    ),
    'gaps-half-turn': fact(
      angled(gap),
      'The gaps again, at places of the hull as before, with the shaft flange turned half a turn, or with both flanges turned. The mean of both counts; what turns with the flange is its run-out, and is told.',
      { example: 'top 1.88 mm, starboard 1.82 mm, bottom 1.70 mm, port 1.76 mm' },
    ),
    offsets: fact(
      angled(step),
      'How far the rim of the machine flange stands outside the rim of the shaft flange, at three or more places, with straightedge and feelers; inside is negative.',
      { example: 'top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm' },
    ),
    'offsets-half-turn': fact(
      angled(step),
      'The offsets again with the flange turned half a turn, as `gaps-half-turn`.',
      { example: 'top 0.04 mm, starboard -0.02 mm, bottom -0.07 mm, port 0.03 mm' },
    ),
    'face-dial': fact(
      angled(step),
      'What a dial shows on the face of the other half, both halves turned together: plunger pushed in is positive. Where it stands at zero does not matter. The place is that of the plunger.',
      { example: 'top 0 mm, starboard 0.06 mm, bottom 0.13 mm, port 0.07 mm' },
    ),
    'rim-dial': fact(
      angled(step),
      'What a dial shows on the rim of the other half, both halves turned together: plunger pushed in is positive. Half of top less bottom is the offset.',
      { example: 'top 0 mm, starboard -0.04 mm, bottom -0.11 mm, port -0.07 mm' },
    ),
    'rim-dial-at': fact(
      amount('length', plane),
      'Distance of the plunger of the rim dial forward of the coupling faces; aft of them is negative. Silence says at the faces.',
      { example: '20 mm' },
    ),
    'dial-carried-by': fact(
      choice(['shaft', 'machine']),
      'Which half carries the dials of `face-dial` and `rim-dial`; the plunger is on the other. Silence says the shaft.',
      { example: 'shaft' },
    ),
    'reverse-dial': fact(
      angled(step),
      'What a second rim dial shows, carried by the half that does not carry the first (reverse indicator): plunger pushed in is positive. With `rim-dial` in another plane it gives slope and offset, and no faces need be read.',
      { example: 'top 0 mm, starboard 0.03 mm, bottom 0.08 mm, port 0.05 mm' },
    ),
    'reverse-dial-at': fact(
      amount('length', plane),
      'Distance of the plunger of the reverse dial forward of the coupling faces; aft of them is negative.',
      { example: '-120 mm' },
    ),
    'bar-droop': fact(
      amount('length', { min: 0, max: 0.01 }),
      'How far the bar that carries the rim dial hangs down: half of what the dial, zeroed at top, reads at the bottom of a stiff mandrel, without its sign.',
      { example: '0.05 mm' },
    ),
    lifts: fact(
      lifts,
      'How far each foot rose when its own fastening alone was slackened, the others fast: more than 0.06 mm is a soft foot.',
      { example: 'aft-port 0.02 mm, aft-stbd 0.03 mm, fwd-port 0.02 mm, fwd-stbd 0.02 mm' },
    ),
    by: fact(text, 'Who took it.', { example: '"fitter 2"' }),
    note: fact(text, 'Anything the next reader should know.', { example: '"coupling bolts out"' }),
  },
  example: `reading dry-1 {
  taken:   2026-03-04
  afloat:  no
  gauge:   0.02 mm
  gaps:    top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm
  offsets: top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm
}`,
})
