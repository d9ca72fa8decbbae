import { theJobFile } from '../../checks/check.ts'
import { figureWhereKnown } from '../common/figure.ts'
import { squeezeOf } from './plans/squeeze.ts'

/** A bellows that is compressed by less than this (m) presses nothing together. Common practice, no source. */
const leastCompression = 1e-5

export const compression = figureWhereKnown({
  id: 'seal/compression',
  on: 'seal',
  title: 'Compression',
  unknown: 'Its free or fitted length is not stated, or cannot be used as written.',
  kind: 'length',
  doc: 'How far the bellows is compressed, + shorter than free.',
  formula: 'compression = free length - fitted length (definition).',
  source: theJobFile('the compression stated at the seal'),
  from: squeezeOf,
  of: (squeeze) => ({
    value: squeeze.size,
    // Where only the most is specified, it still has to be compressed.
    ...(squeeze.wanted && { limit: { low: leastCompression, ...squeeze.wanted }, limitFrom: 'as specified' }),
    from: squeeze.sum,
  }),
})

export const figures = [compression]
