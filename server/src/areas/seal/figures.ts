import { theJobFile } from '../../checks/check.ts'
import { figureWhereKnown } from '../common/figure.ts'
import { squeezeOf } from './plans/squeeze.ts'

export const compression = figureWhereKnown({
  id: 'seal/compression',
  on: 'seal',
  title: 'Compression',
  kind: 'length',
  doc: 'How far the bellows is compressed, + shorter than free.',
  formula: 'compression = free length - fitted length (definition).',
  source: theJobFile('the compression stated at the seal'),
  from: squeezeOf,
  of: (squeeze) => ({
    value: squeeze.size,
    // Where only the most is specified, it still has to be compressed.
    ...(squeeze.wanted && { limit: { low: 1e-9, ...squeeze.wanted }, limitFrom: 'as specified' }),
    from: squeeze.sum,
  }),
})

export const figures = [compression]
