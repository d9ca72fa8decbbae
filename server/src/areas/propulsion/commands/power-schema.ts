import * as z from 'zod'
import { head } from '../../common/command-json.ts'

const driveAt = z.object({
  drive: z.string(),
  propellerSpeed_rpm: z.number(),
  motorSpeed_rpm: z.number(),
  thrust_N: z.number().describe('Of the propeller.'),
  motorTorque_Nm: z.number(),
  motorPower_kW: z.number().describe('At the shaft of the motor.'),
  efficiency: z.number().describe('Of the propeller alone, in open water.'),
  slip: z.number().describe('Apparent slip, against the speed of the boat.'),
})

const limitedBy = z.enum(['torque', 'speed']).describe('Of the motor: what keeps it from turning faster.')

const row = z.object({
  boatSpeed_kn: z.number(),
  point: z.string().nullable().describe('The point of the service; null in the rows of the table.'),
  resistance_N: z.number().describe('With the sea margin.'),
  drives: z.array(driveAt),
  batteryPower_kW: z.number().nullable().describe('From all banks; null if it is not known.'),
  endurance_h: z.number().nullable().describe('Until the first bank is down to its reserve.'),
  range_nmi: z.number().nullable(),
})

export const powerSchema = z
  .object({
    version: z.literal(1),
    ...head.shape,
    fault: z.string().nullable().describe('Why there is no table.'),
    energyFault: z.string().nullable().describe('Why endurance and range are not known.'),
    topSpeed: z
      .object({
        value_kn: z.number(),
        bound: z
          .enum(['at-least', 'less-than'])
          .nullable()
          .describe('Where the known resistance ends or begins.'),
        limitedBy: limitedBy.nullable(),
      })
      .nullable()
      .describe('The highest speed that all drives hold continuously; null if it is not known.'),
    bollard: z
      .array(
        z.union([
          driveAt.omit({ slip: true, efficiency: true }).extend({ fault: z.null(), limitedBy }),
          z.object({ drive: z.string(), fault: z.string() }),
        ]),
      )
      .describe('With the boat at rest and the motor at all it can give continuously.'),
    rows: z.array(row).describe('By speed, up to the top speed; points of the service among them.'),
    assumptions: z.array(z.string()),
    source: z.array(z.string()),
  })
  .describe('Output of `shaftwright power --format json`.')

export type PowerJson = z.infer<typeof powerSchema>
