import { atHead, check, commonPractice } from '../check.ts'
import { addFact } from '../fix-text.ts'

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
        todo: "Add `compression` from the maker's sheet. 3/4 in (19 mm) on a 1 in shaft, common practice, no source: a check value only, the maker's figure decides. The boat is only as watertight as the seal while it is open.",
        limit: 'compression',
        data: { add: 'compression', example: '26 mm +3/-2 mm' },
      }),
    ]
  },
  fixes: (_finding, { block }) =>
    block
      ? [
          {
            title: 'Add compression',
            edits: [addFact(block, 'compression')],
            preferred: true,
            leaves: ['job/value-empty'],
          },
        ]
      : [],
})
