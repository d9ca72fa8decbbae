import { formatSi } from '../../quantity/format.ts'
import { formatAmperes } from '../../quantity/format-measures.ts'

/** To the safe side, the last bits of a double aside. */
const rounded = (amps: number, decimals: number, to: (n: number) => number): number =>
  to(Number((amps * 10 ** decimals).toPrecision(9))) / 10 ** decimals

const load = (amps: number, decimals: number): number => rounded(amps, decimals, Math.ceil)
const carried = (amps: number, decimals: number): number => rounded(amps, decimals, Math.floor)

/** A load, or the least a fuse may be, rounded up: in whole amperes, but one decimal for a load that the reader is to multiply by 1.25, as that
 * gives the same whole ampere then. */
export const formatLoad = (amps: number, decimals: Decimals = 0): string =>
  formatSi(load(amps, decimals), 'current', 'metric', 12)

/** What can be carried, or the most a fuse may be, rounded down. */
export const formatCarried = (amps: number, decimals: Decimals = 0): string =>
  formatSi(carried(amps, decimals), 'current', 'metric', 12)

type Decimals = 0 | 1 | 2

/** So many decimals that a load and what can carry it show whether it does: in whole amperes where these do. */
export const decimalsOfLoading = (current: number, carries: number): Decimals =>
  current <= carries
    ? (([0, 1, 2] as const).find((decimals) => load(current, decimals) <= carried(carries, decimals)) ?? 2)
    : 0

/** A load beside what can carry it: with decimals where whole amperes show one that fits as one that does not. */
export function formatLoading(
  current: number,
  carries: number,
): { readonly current: string; readonly carries: string } {
  const decimals = decimalsOfLoading(current, carries)
  return {
    current: formatAmperes(load(current, decimals), decimals),
    carries: formatAmperes(carried(carries, decimals), decimals),
  }
}
