import { block, fact } from '../block.ts'
import { amount } from '../shape.ts'
import { angled } from '../shapes/angled.ts'

export const shaftLog = block({
  kind: 'shaft-log',
  doc: 'The tube that carries the shaft through the hull.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    bore: fact(amount('length', { min: 0.005, max: 2 }), 'Bore of the log.', {
      from: 'for-review',
      example: '60 mm',
    }),
    clearance: fact(
      angled({ min: 0, max: 1 }),
      'Clearance between shaft and log, measured round the shaft.',
      {
        from: 'as-built',
        example: 'top 12.4 mm, starboard 12.1 mm, bottom 12.6 mm, port 12.9 mm',
        perDrive: true,
      },
    ),
  },
  example: `shaft-log {
  bore:      60 mm
  clearance: top 12.4 mm, starboard 12.1 mm, bottom 12.6 mm, port 12.9 mm [measured]
}`,
})
