import { byStation } from '../../../engineering/alignment/feet.ts'
import { listed } from '../../common/listed.ts'
import type { Correction } from './correction.ts'
import type { CorrectedFoot } from './steps.ts'

export const named = (feet: readonly CorrectedFoot[], last?: 'or'): string =>
  listed(
    feet.map(({ name }) => name),
    last,
  )

/** Feet told alike together, in their order. */
export function alike<T>(
  feet: readonly CorrectedFoot[],
  key: (foot: CorrectedFoot) => T,
): ReadonlyMap<T, readonly CorrectedFoot[]> {
  const groups = new Map<T, CorrectedFoot[]>()
  for (const foot of feet) groups.set(key(foot), [...(groups.get(key(foot)) ?? []), foot])
  return groups
}

/** The feet of the aft and of the fore station. */
export function endsOf(feet: readonly CorrectedFoot[]): readonly (readonly CorrectedFoot[])[] {
  const stations = byStation(feet).map((station) => station.feet.flatMap((i) => feet[i] ?? []))
  return [stations[0] ?? [], stations.at(-1) ?? []]
}

/** Each foot the farthest from the one before. Common practice, no source. */
export function crosswise(feet: readonly CorrectedFoot[]): readonly CorrectedFoot[] {
  const [first, ...left] = feet
  const order = first ? [first] : []
  while (left.length > 0) {
    const from = order.at(-1)
    const away = left.map(({ x, y }) => Math.hypot(x - (from?.x ?? 0), y - (from?.y ?? 0)))
    order.push(...left.splice(away.indexOf(Math.max(...away)), 1))
  }
  return order
}

/** Whether the feet stand on nuts: as the bed says, or has a thread for. */
export const onStuds = ({ adjuster, feet }: Correction): boolean =>
  adjuster === 'stud-and-nuts' || feet.some(({ step }) => step.by === 'nut')

/** What holds a foot down. */
export const holder = (c: Correction): string =>
  onStuds(c) ? 'upper nuts' : c.adjuster === 'shims' ? 'bolts' : 'fastenings'
