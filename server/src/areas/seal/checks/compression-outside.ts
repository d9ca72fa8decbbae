import { at, check, theJobFile } from '../../../checks/check.ts'
import { compression, squeezedAsWanted } from '../../../engineering/seal.ts'

export default check({
  id: 'seal/compression-outside',
  severity: 'error',
  title: 'Bellows compressed too little or too much',
  why: 'Too little leaks. Too much wears the faces and can push the rotor along the shaft. Compression is the free length minus the fitted length.',
  source: theJobFile('the compression stated at the seal'),
  on: 'seal',
  needs: { free: 'seal.free-length', fitted: 'seal.fitted-length', band: 'seal.compression' },
  fires: `drive main {
  seal {
    compression: 26 mm +3/-2 mm
    free-length: 148 mm
    fitted-length: 130 mm
#                  ^^^^^^ 18 mm
  }
}`,
  quiet: `drive main {
  seal { compression: 26 mm +3/-2 mm  free-length: 148 mm  fitted-length: 122 mm }
}`,
  run: ({ free, fitted, band }, { show, showBand }) => {
    const squeeze = compression({ free: free.value, fitted: fitted.value })
    if (squeezedAsWanted(squeeze, band.value)) return []
    const found = show(squeeze, 'length')
    const limit = showBand(band.value, 'length')
    const little = squeeze < (band.value.low ?? 1e-9)
    return [
      at(fitted, {
        message:
          squeeze < 0
            ? 'The bellows is stretched: the fitted length is longer than the free length.'
            : `The bellows is ${little && band.value.low === undefined ? 'not compressed' : `compressed ${found}`}; required: ${limit}.`,
        ...(squeeze < 0 && { detail: `Required compression: ${limit}.` }),
        todo: `Slide the rotor ${little ? 'towards' : 'away from'} the bellows. Measure the length again, then lock the rotor as the maker says.`,
        found,
        limit,
        related: [{ at: band.at, message: 'the required compression' }],
      }),
    ]
  },
})
