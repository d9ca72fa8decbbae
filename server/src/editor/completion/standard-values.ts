import { conductorSizes } from '../../areas/electrical/plans/conductor-sizes.ts'
import { usTable5 } from '../../engineering/electrical/ampacity-tables.ts'
import { standardThreads } from '../../engineering/thread.ts'
import { formatSi } from '../../quantity/format.ts'
import type { UnitSystem } from '../../quantity/kinds.ts'
import type { FactPath } from '../../vocabulary/index.ts'

interface Standard {
  readonly values: Readonly<Record<UnitSystem, readonly string[]>>
  readonly source: string
}

const ratings = usTable5.columnsC.map((celsius) => formatSi(celsius + 273.15, 'temperature'))
const written = (sizes: typeof conductorSizes.metric) => sizes.map((size) => size.written)

const standards: { readonly [P in FactPath]?: Standard } = {
  'bed.thread': {
    values: { metric: standardThreads.metric, inch: standardThreads.inch.map((text) => `"${text}"`) },
    source: 'ISO 261, ISO 262; ASME B1.1',
  },
  'cable.conductor': {
    values: { metric: written(conductorSizes.metric), inch: written(conductorSizes.awg) },
    source: 'IEC 60228; 33 CFR 183.425 table 5',
  },
  'cable.insulation': { values: { metric: ratings, inch: ratings }, source: '33 CFR 183.425 table 5' },
}

/** The values of a fact that are made or rated, in the units of the job, and where that is from. */
export const standardOf = (kind: string, fact: string): Standard | undefined => {
  const path = `${kind}.${fact}`
  return Object.hasOwn(standards, path) ? standards[path as FactPath] : undefined
}
