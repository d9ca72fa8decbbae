/** Thermal classes by letter, °C. A, E, B, F and H: IEC 60085 in summaries and motor manuals; N and R from memory. */
const temperatures = { A: 105, E: 120, B: 130, F: 155, H: 180, N: 200, R: 220 } as const

export type ThermalClass = keyof typeof temperatures

/** The classes, the coolest first. */
export const thermalClasses = Object.keys(temperatures) as readonly ThermalClass[]

/** Highest temperature of an insulation of this class, °C, at its hottest spot. Source: IEC 60085; N and R from memory. The life of insulation halves for
 * each 10 K above.
 * @example classTemperature('F') // 155 */
export const classTemperature = (thermalClass: ThermalClass): number => temperatures[thermalClass]
