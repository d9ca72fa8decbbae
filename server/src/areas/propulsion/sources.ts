import { commonPractice, published } from '../../checks/check.ts'

export const series = published('Oosterveld & van Oossanen 1975, Wageningen B-series, Reynolds number 2e6')
export const balance = published(
  'balance of hull, propeller and motor, textbooks of ship propulsion; propeller by Oosterveld & van Oossanen 1975',
)
export const keller = published('Keller 1966, as in textbooks of ship propellers (from memory)')
export const energyBalance = commonPractice(
  'energy balance; lead by Peukert 1897 in the form for a stated hour rate',
)
