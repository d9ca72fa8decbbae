import { formatSi } from '../../quantity/format.ts'

/** °C at 0 K: facts are in kelvin, the kernels of temperature in °C. */
const zero = 273.15

/** Rounded to a millionth of a degree, so that 155 degC is the 155 of a table. */
export const celsius = (kelvin: number): number => Math.round((kelvin - zero) * 1e6) / 1e6

export const kelvin = (temperature: number): number => temperature + zero

/** `18.2 degC`. */
export const formatCelsius = (temperature: number): string =>
  formatSi(kelvin(temperature), 'temperature', 'metric', 4)
