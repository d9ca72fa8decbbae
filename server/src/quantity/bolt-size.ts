const inch = 0.0254

const metric = /^M\s*(\d+(?:\.\d+)?)(?:\s*[x×*]\s*\d+(?:\.\d+)?)?$/i
const fraction = /^(?:(\d+)[\s-]+)?(\d+)\/([1-9]\d*)(?:\s*in|")?(?:\s*-\s*\d+(?:\.\d+)?)?(?:\s*UN[CF])?$/i
const number = /^#\s*(\d+)(?:\s*-\s*\d+)?(?:\s*UN[CF])?$/i

/** Nominal diameter of a stud, a bolt or the lug for it by its designation, m: `M8`, `M10x1`, `3/8`, `3/8-16 UNC`, `#10`. Undefined where it is none,
 * and outside 2 to 60 mm. A number is 0.060 in and 0.013 in more for each (ASME B1.1).
 * @example boltSize('M8') // 0.008 */
export function boltSize(text: string): number | undefined {
  const size = sizeOf(text.trim())
  return size !== undefined && size >= 0.002 && size <= 0.06 ? size : undefined
}

function sizeOf(text: string): number | undefined {
  const [, millimetres] = metric.exec(text) ?? []
  if (millimetres !== undefined) return Number(millimetres) / 1000
  const [, whole = '0', over, under] = fraction.exec(text) ?? []
  if (over !== undefined) return (Number(whole) + Number(over) / Number(under)) * inch
  const [, of] = number.exec(text) ?? []
  return of === undefined || Number(of) > 12 ? undefined : (0.06 + 0.013 * Number(of)) * inch
}
