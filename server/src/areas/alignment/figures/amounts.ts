import { expanded, type Uncertain } from '../../../quantity/uncertainty.ts'
import type { Amount } from '../../common/figure.ts'

export const uncertain = (u: Uncertain): Pick<Amount, 'value' | 'uncertainty'> => ({
  value: u.value,
  uncertainty: expanded(u),
})

/** What is below a nanometre is noise of the fit. */
export const withoutNoise = (length: number): number => (Math.abs(length) < 1e-9 ? 0 : length)
