import { sensorFigures } from './sensor.ts'
import { testFigures } from './test.ts'

export const figures = [...sensorFigures, ...testFigures]
