import { formatSi } from '../../../quantity/format.ts'
import { formatAmperes } from '../../../quantity/format-measures.ts'

/** To the safe side, the last bits of a double aside. */
const rounded = (amps: number, decimals: number, to: (n: number) => number): number =>
  to(Number((amps * 10 ** decimals).toPrecision(9))) / 10 ** decimals

const load = (amps: number, decimals: number): number => rounded(amps, decimals, Math.ceil)
const carried = (amps: number, decimals: number): number => rounded(amps, decimals, Math.floor)

/** A load, or the least a fuse may be, rounded up: in whole amperes, but one decimal for a load that the reader is to multiply by 1.25, as that
 * gives the same whole ampere then. */
export const formatLoad = (amps: number, decimals: 0 | 1 = 0): string =>
  formatSi(load(amps, decimals), 'current', 'metric', 12)

/** What can be carried, or the most a fuse may be, in whole amperes: rounded down. */
export const formatCarried = (amps: number): string => formatSi(carried(amps, 0), 'current', 'metric', 12)

/** A load beside what can carry it: with decimals where whole amperes show one that fits as one that does not. */
export function formatLoading(
  current: number,
  carries: number,
): { readonly current: string; readonly carries: string } {
  const fits = [0, 1, 2].find((decimals) => load(current, decimals) <= carried(carries, decimals))
  const decimals = current <= carries ? (fits ?? 2) : 0
  return {
    current: formatAmperes(load(current, decimals), decimals),
    carries: formatAmperes(carried(carries, decimals), decimals),
  }
}
