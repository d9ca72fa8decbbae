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
  doc: 'A reading of the coupling. Never change a reading afterwards: write what was done as a `move`, then add the next reading. Once a later reading in the same state counts (dry or afloat, cold or hot), this one is history: its findings are information.',
  heading: 'name',
  within: ['drive'],
  many: true,
  perDrive: true,
  isRecord: true,
  facts: {
    taken: fact(date, 'When it was taken.', { from: 'draft', onBoat: true, example: '2026-03-04' }),
    afloat: fact(yesNo, 'Whether the boat was afloat.', { from: 'as-built', example: 'no' }),
    hot: fact(yesNo, 'Whether the machine was at working temperature.', { example: 'no' }),
    'parted-end': fact(
      choice(['free', 'supported']),
      'Whether the end of the parted shaft hung free or was supported on its running line. If it was free, `shaft-droop` and `shaft-slope` of the target apply. If it was supported, they do not. docs/engineering/alignment.md shows how to find the droop with a spring scale and a dial.',
      { example: 'free' },
    ),
    gauge: fact(
      amount('length', gaugeStep),
      'Smallest step of the feelers, the gauge or the dial. It applies to the whole reading, unless `offset-gauge` states another for the rims.',
      { from: 'draft', onBoat: true, example: '0.02 mm' },
    ),
    'offset-gauge': fact(
      amount('length', gaugeStep),
      'Smallest step of the gauge for the rims, if it is a different one: feelers for the faces, a dial for the rims.',
      { onBoat: true, example: '0.01 mm' },
    ),
    gaps: fact(
      angled(gap),
      'Gap between the faces at three or more places round the flange, with feelers or a gauge. To read the faces with a dial, use `face-dial`.',
      { onBoat: true, example: 'top 1.92 mm, starboard 1.80 mm, bottom 1.66 mm, port 1.78 mm' },
    ),
    'gaps-half-turn': fact(
      angled(gap),
      'The gaps read again at the same places of the hull, with the shaft flange or both flanges turned half a turn. The mean of both counts. The part that turns with the flange is run-out, and is shown.',
      { onBoat: true, example: 'top 1.88 mm, starboard 1.82 mm, bottom 1.70 mm, port 1.76 mm' },
    ),
    offsets: fact(
      angled(step),
      'How far the rim of the machine flange stands out beyond the rim of the shaft flange. Read it at three or more places with straightedge and feelers. Negative means inside.',
      { onBoat: true, example: 'top 0.06 mm, starboard -0.02 mm, bottom -0.05 mm, port 0.03 mm' },
    ),
    'offsets-half-turn': fact(
      angled(step),
      'The offsets read again with the flange turned half a turn, as for `gaps-half-turn`.',
      { onBoat: true, example: 'top 0.04 mm, starboard -0.02 mm, bottom -0.07 mm, port 0.03 mm' },
    ),
    'face-dial': fact(
      angled(step),
      'Dial readings on the face of the other half, with both halves turned together. Plunger pushed in is positive. The dial may be zeroed anywhere. The place is that of the plunger.',
      { onBoat: true, example: 'top 0 mm, starboard 0.06 mm, bottom 0.13 mm, port 0.07 mm' },
    ),
    'rim-dial': fact(
      angled(step),
      'Dial readings on the rim of the other half, with both halves turned together. Plunger pushed in is positive. The offset is half of top minus bottom.',
      { onBoat: true, example: 'top 0 mm, starboard -0.04 mm, bottom -0.11 mm, port -0.07 mm' },
    ),
    'rim-dial-at': fact(
      amount('length', plane),
      'Distance of the rim dial plunger forward of the coupling faces. Aft of them is negative. If not stated, at the faces.',
      { onBoat: true, example: '20 mm' },
    ),
    'dial-carried-by': fact(
      choice(['shaft', 'machine']),
      'Which half carries the dials of `face-dial` and `rim-dial`. The plunger is on the other half. If not stated, the shaft carries them.',
      { example: 'shaft' },
    ),
    'reverse-dial': fact(
      angled(step),
      'Readings of a second rim dial, carried by the half that does not carry the first (reverse indicator). Plunger pushed in is positive. With `rim-dial` in another plane it gives slope and offset, so the faces need not be read.',
      { onBoat: true, example: 'top 0 mm, starboard 0.03 mm, bottom 0.08 mm, port 0.05 mm' },
    ),
    'reverse-dial-at': fact(
      amount('length', plane),
      'Distance of the reverse dial plunger forward of the coupling faces. Aft of them is negative.',
      { onBoat: true, example: '-120 mm' },
    ),
    'bar-droop': fact(
      amount('length', { min: 0, max: 0.01 }),
      'Droop of the bar that carries the rim dial. Zero the dial at the top of a stiff mandrel and read it at the bottom: the droop is half of that, without its sign.',
      { example: '0.05 mm' },
    ),
    lifts: fact(
      lifts,
      'How far each foot rose when its own fastening alone was slackened, with the others tight. More than 0.06 mm is a soft foot.',
      { onBoat: true, example: 'aft-port 0.02 mm, aft-stbd 0.03 mm, fwd-port 0.02 mm, fwd-stbd 0.02 mm' },
    ),
    by: fact(text, 'Who took it.', { from: 'as-built', example: '"fitter 2"' }),
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
