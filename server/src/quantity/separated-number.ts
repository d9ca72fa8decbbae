/** What a number with separators can mean, as numbers of the language. Both are there where the writing leaves it open. */
export interface Readings {
  /** The separators part thousands: `15,000` as `15000`. */
  readonly thousands?: string
  /** The comma is a decimal comma: `15,000` as `15.000`. */
  readonly decimal?: string
  /** The separators are not in one kind and in groups of three: the number may be a slip of the pen. */
  readonly isIrregular?: true
}

/** Spaces and apostrophes that part thousands. */
const groupMarks = " '’\\u00A0\\u2009\\u202F"

const power = '(?:[eE][+-]?[0-9]+(?![A-Za-z]))?'

/** `15 000`, `15'000`, `15_000`: nothing but thousands. */
const grouped = `(?:[1-9][0-9]{0,2}(?:[${groupMarks}][0-9]{3})+|[0-9]+(?:_[0-9]+)+)(?![0-9])`
export const groupedNumber = grouped + power

const byMarks = new RegExp(`^(${grouped})(?:[.,]([0-9]+))?$`)
/** `1,234.5`, `1.234,5`: one sign parts thousands, the other the decimals. */
const byBoth = /^([1-9]\d{0,2}(?:,\d{3})+)\.(\d+)$|^([1-9]\d{0,2}(?:\.\d{3})+),(\d+)$/
/** `1,234,567`: no number has two decimal commas. */
const byMany = /^[1-9]\d{0,2}(?:,\d{3}){2,}$|^[1-9]\d{0,2}(?:\.\d{3}){2,}$/
const byComma = /^(\d*),(\d+)$/

const digits = (text = ''): string => text.replace(/[^0-9]/g, '')

/** Undefined for a plain number, and for what is no number. */
export function readingsOf(written: string): Readings | undefined {
  const [, digits = '', times] = /^(.*?)([eE][+-]?\d+)?$/.exec(written) ?? []
  const readings = mantissaOf(digits)
  if (!readings) return undefined
  const { thousands, decimal, isIrregular } = readings
  const timed = (mantissa: string) => mantissa + (times ?? '')
  return {
    ...(thousands !== undefined && { thousands: timed(thousands) }),
    ...(decimal !== undefined && { decimal: timed(decimal) }),
    ...(isIrregular && { isIrregular }),
  }
}

/** `15 000`, `1_500_000`: one kind of mark, before each group of three. */
const isRegular = (marked: string): boolean =>
  /^[1-9]\d{0,2}(?:\D\d{3})+$/.test(marked) && new Set(marked.replace(/\d/g, '')).size === 1

function mantissaOf(written: string): Readings | undefined {
  const [, marked, decimals] = byMarks.exec(written) ?? []
  if (marked !== undefined) return markedOf(marked, decimals)
  const both = byBoth.exec(written)
  if (both) return { thousands: `${digits(both[1] ?? both[3])}.${both[2] ?? both[4]}` }
  if (byMany.test(written)) return { thousands: digits(written) }
  const [, whole, part = ''] = byComma.exec(written) ?? []
  if (whole === undefined) return undefined
  const decimal = `${whole || '0'}.${part}`
  if (part.length !== 3) return { decimal }
  if (/^0\d/.test(whole))
    return { thousands: plain(whole + part), decimal: plain(decimal), isIrregular: true }
  return /^[1-9]\d{0,2}$/.test(whole) ? { thousands: whole + part, decimal } : { decimal }
}

function markedOf(marked: string, decimals: string | undefined): Readings {
  const thousands = digits(marked) + (decimals ? `.${decimals}` : '')
  if (isRegular(marked)) return { thousands }
  const [, whole, part] = decimals === undefined ? (/^(\d+)_(\d+)$/.exec(marked) ?? []) : []
  const decimal = whole !== undefined && { decimal: plain(`${whole}.${part}`) }
  return { thousands: plain(thousands), ...decimal, isIrregular: true }
}

/** Without zeros before its first digit. */
const plain = (number: string): string => number.replace(/^0+(?=\d)/, '')

/** Such numbers within a text. */
export const separated = new RegExp(
  `(?:${grouped}(?:[.,]\\d+)?|[\\d.]*(?:,[\\d.]+)+|\\d+(?:\\.\\d+){2,})${power}`,
  'g',
)

/** `15.000`: what a point before three digits means where it parts thousands, and how the number is written so that it cannot. */
export function pointReadings(written: string): Required<Omit<Readings, 'isIrregular'>> | undefined {
  const [, whole, part = ''] = /^([1-9]\d{0,2})\.(\d{3})$/.exec(written) ?? []
  if (whole === undefined) return undefined
  const short = part.replace(/0+$/, '')
  const decimals = short.length === 3 ? `${short}0` : short
  return { thousands: whole + part, decimal: decimals === '' ? whole : `${whole}.${decimals}` }
}
