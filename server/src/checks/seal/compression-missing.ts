import { compressionHint } from '../../engineering/seal.ts'
import { atHead, check, commonPractice } from '../check.ts'

export default check({
  id: 'seal/compression-missing',
  severity: 'error',
  title: 'Compression of the bellows not stated',
  why: "How far the bellows is squeezed is all that presses the faces together: too little leaks, too much wears. The figure is the maker's, for this seal and this shaft.",
  source: commonPractice('the maker states the figure'),
  on: 'seal',
  fires: `drive main {
  seal { free-length: 148 mm }
# ^^^^ does not say
}`,
  quiet: `drive main {
  seal { compression: 26 mm +3/-2 mm  free-length: 148 mm }
}`,
  run: (_facts, { block }) => {
    const silent = !block.facts.has('compression') && !block.unread.has('compression')
    if (!silent || !block.parent) return []
    return [
      atHead(block, {
        message: 'The seal does not say how far its bellows is to be compressed.',
        todo: `Add \`compression\` from the maker's sheet. ${compressionHint.text.replace(/^./, (c) => c.toUpperCase())} (${compressionHint.source}): a hint only. While the seal is open the boat is only as watertight as what blocks the log.`,
        limit: 'compression',
        data: { add: 'compression', example: '26 mm +3/-2 mm' },
      }),
    ]
  },
})
