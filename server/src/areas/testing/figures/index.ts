import { sensorFigures } from './sensor.ts'

export const figures = [...sensorFigures]
