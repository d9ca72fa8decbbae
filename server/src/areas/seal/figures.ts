import { theJobFile } from '../../checks/check.ts'
import { figure, whereKnown } from '../common/figure.ts'
import { squeezeOf } from './plans/squeeze.ts'

const compression = figure({
  id: 'seal/compression',
  on: 'seal',
  title: 'Compression',
  kind: 'length',
  doc: 'How far the bellows is compressed, + shorter than free.',
  formula: 'compression = free length - fitted length (definition).',
  source: theJobFile('the compression stated at the seal'),
  from: whereKnown(squeezeOf),
  of: (squeeze) =>
    squeeze && {
      value: squeeze.size,
      ...(squeeze.wanted && { limit: squeeze.wanted, limitFrom: 'as specified' }),
      from: squeeze.sum,
    },
})

export const figures = [compression]
