import type { InTables } from '../../../engineering/electrical/ampacity.ts'
import { formatNumber } from '../../../quantity/format.ts'
import { formatCarried, formatLoad, formatLoading } from '../../common/amperes.ts'
import type { CableAmpacity } from './cable-ampacity.ts'
import type { CableLoading } from './cable-loading.ts'

/** How the ampacity came about: table, factors, number of conductors. */
export function ampacityWords({ ampacity, parallel }: Pick<CableAmpacity, 'ampacity' | 'parallel'>): string {
  const factors = ampacity.factors.map(({ name, value }) => `${name} ${formatNumber(value, 3)}`).join(', ')
  const many = parallel === 1 ? '' : `, ${parallel} in parallel`
  return `${ampacity.table}${factors === '' ? '' : `; ${factors}`}${many}.${beyond[ampacity.tables]}`
}

const beyond: Readonly<Record<InTables, string>> = {
  in: '',
  above: ' The cable is larger than every row, so the largest row is used.',
  below: ' The cable is smaller than every row, so it can carry less than the smallest row.',
}

/** `144 A`; beyond the tables `at least 475 A`, `less than 18 A`. */
export function capacityWords({ carries, ampacity }: Pick<CableAmpacity, 'carries' | 'ampacity'>): string {
  if (ampacity.tables === 'below') return `less than ${formatLoad(carries)}`
  return `${ampacity.tables === 'above' ? 'at least ' : ''}${formatCarried(carries)}`
}

/** What a cable must carry and what it can, with as many digits as tell them apart. */
export function loadingWords({
  current,
  carries,
  ampacity,
}: Pick<CableLoading, 'current' | 'carries' | 'ampacity'>): {
  readonly current: string
  readonly carries: string
} {
  return ampacity.tables === 'in'
    ? formatLoading(current, carries)
    : { current: formatLoad(current), carries: capacityWords({ carries, ampacity }) }
}

/** A cable in a few words: `203 A, can carry 144 A`. */
export function briefLoad(load: CableLoading): string {
  const said = loadingWords(load)
  return `${said.current}, can carry ${said.carries}`
}
