/** Dates of ISO 8601, with or without a time of day and a zone. Those without a zone are of one and the same. */

export const hasTime = (date: string): boolean => date.length > 10

const zone = /(Z|[+-]\d{2}:\d{2})$/
const withoutZone = (date: string): string => date.replace(zone, '')

/** Milliseconds between two dates: by the clock where both have a time, else from day to day. */
export function between(from: string, to: string): number {
  const dates = [from, to]
  if (!dates.every(hasTime)) return Date.parse(to.slice(0, 10)) - Date.parse(from.slice(0, 10))
  const zoned = dates.every((date) => zone.test(date))
  const [start = 0, end = 0] = dates.map((date) => Date.parse(zoned ? date : `${withoutZone(date)}Z`))
  return end - start
}

/** Whether a date is later than another; of one day, only where both have a time. */
export const isLater = (date: string, than: string): boolean =>
  hasTime(date) && hasTime(than) ? between(than, date) > 0 : date.slice(0, 10) > than.slice(0, 10)

const day = (date: string): string => date.slice(0, 10)

/** The latest of some dates, in each way that they can be compared. */
export interface Latest {
  readonly day: string
  /** Of those without a time. */
  readonly untimed: string
  readonly local: string | undefined
  readonly zoned: string | undefined
  readonly unzoned: string | undefined
}

export function latestOf(dates: readonly string[]): Latest {
  const lastDay = (of: readonly string[]): string => of.map(day).toSorted().at(-1) ?? ''
  const latest = (of: readonly string[]): string | undefined =>
    of.reduce<string | undefined>((last, date) => (last && between(last, date) <= 0 ? last : date), undefined)
  const timed = dates.filter(hasTime)
  const [local, zoned] = [timed.map(withoutZone), timed.filter((date) => zone.test(date))]
  return {
    day: lastDay(dates),
    untimed: lastDay(dates.filter((date) => !hasTime(date))),
    local: latest(local),
    zoned: latest(zoned),
    unzoned: latest(timed.filter((date) => !zone.test(date))),
  }
}

/** Whether any of some dates is later than one: as `isLater`, for many to be asked. */
export function isAnyLater(last: Latest, than: string): boolean {
  if (!hasTime(than)) return last.day > day(than)
  if (last.untimed > day(than)) return true
  const by = zone.test(than) ? [last.zoned, last.unzoned] : [last.local]
  return by.some((date) => date !== undefined && isLater(date, than))
}
