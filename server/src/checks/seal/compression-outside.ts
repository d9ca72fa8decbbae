import { compression, squeezedAsWanted } from '../../engineering/seal.ts'
import { at, check, theJobFile } from '../check.ts'

export default check({
  id: 'seal/compression-outside',
  severity: 'error',
  title: 'Bellows squeezed too little or too far',
  why: 'Too little leaks, too much wears the faces and can pull the rotor along the shaft. Compression is the free length less the fitted length.',
  source: theJobFile('the limits stated at the seal, as the maker gives them'),
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
            ? `The bellows is stretched: the fitted length is longer than the free length. ${limit} of compression is wanted.`
            : `The bellows is ${little && band.value.low === undefined ? 'not compressed' : `compressed ${found}`}; ${limit} is wanted.`,
        todo: `Slide the rotor ${little ? 'towards' : 'away from'} the bellows, read the length again, and lock it as the maker says. The boat is only as watertight as the seal while it is open.`,
        found,
        limit,
        related: [{ at: band.at, message: 'the compression wanted' }],
      }),
    ]
  },
})
