import { block, fact } from '../block.ts'
import { amount, band, count, yesNo } from '../shape.ts'

export const seal = block({
  kind: 'seal',
  doc: 'Bellows seal between shaft and shaft log. While it is open, the boat is only as watertight as what blocks the log.',
  heading: 'none',
  within: ['drive', 'top'],
  many: false,
  facts: {
    'shaft-size': fact(amount('length', { min: 0.005, max: 0.6 }), 'Shaft diameter the seal is made for.', {
      from: 'for-review',
      example: '35 mm',
    }),
    compression: fact(band('length', { min: 0, max: 0.5 }), 'Bellows compression specified by the maker.', {
      from: 'for-review',
      example: '26 mm +3/-2 mm',
    }),
    'free-length': fact(
      amount('length', { min: 0.001, max: 2 }),
      'Length of the bellows before compression.',
      {
        from: 'issued',
        onBoat: true,
        example: '148 mm',
      },
    ),
    'fitted-length': fact(amount('length', { min: 0.001, max: 2 }), 'Length of the bellows as fitted.', {
      from: 'as-built',
      perDrive: true,
      example: '121 mm',
    }),
    'clamps-each-end': fact(count({ min: 0, max: 10 }), 'Clamps at each end of the bellows.', {
      from: 'issued',
      example: '2',
    }),
    'water-feed': fact(yesNo, 'Whether water is led to the seal.', { from: 'issued', example: 'yes' }),
  },
  example: `seal {
  shaft-size:    35 mm
  compression:   26 mm +3/-2 mm [maker]
  free-length:   148 mm         [measured]
  fitted-length: 121 mm         [measured]
}`,
})
