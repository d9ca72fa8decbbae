/** Dates of ISO 8601, with or without a time of day and a zone. Those without a zone are of one and the same. */

export const hasTime = (date: string): boolean => date.length > 10

const zone = /(Z|[+-]\d{2}:\d{2})$/

/** Milliseconds between two dates: by the clock where both have a time, else from day to day. */
export function between(from: string, to: string): number {
  const dates = [from, to]
  if (!dates.every(hasTime)) return Date.parse(to.slice(0, 10)) - Date.parse(from.slice(0, 10))
  const zoned = dates.every((date) => zone.test(date))
  const [start = 0, end = 0] = dates.map((date) => Date.parse(zoned ? date : `${date.replace(zone, '')}Z`))
  return end - start
}

/** Whether a date is later than another; of one day, only where both have a time. */
export const isLater = (date: string, than: string): boolean =>
  hasTime(date) && hasTime(than) ? between(than, date) > 0 : date.slice(0, 10) > than.slice(0, 10)
