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
  propellerTorque_Nm: z.number(),
  deliveredPower_kW: z.number().describe('At the propeller.'),
  advanceRatio: z.number().describe('J of the propeller.'),
  motorTorqueLimit_Nm: z
    .number()
    .nullable()
    .describe(
      'What the motor alone gives continuously at this speed of it; 0 above its highest speed, null if not known, as beyond the ends of its torque-curve.',
    ),
  torqueLimit_Nm: z
    .number()
    .nullable()
    .describe('The same with the continuous current of its controller, where that is stated.'),
  bladeAreaNeeded: z
    .number()
    .nullable()
    .describe(
      'Against cavitation, by Keller: the least expanded blade area ratio; null if the depth of the propeller is not stated.',
    ),
})

const limitedBy = z
  .enum(['torque', 'speed', 'curve'])
  .describe(
    'Of the motor: what keeps it from turning faster. Its speed: the highest, or where its torque-curve ends.',
  )

/** What is said only where the boat runs. */
const atSpeed = {
  slip: true,
  efficiency: true,
  advanceRatio: true,
  motorTorqueLimit_Nm: true,
  torqueLimit_Nm: true,
  bladeAreaNeeded: true,
} as const

const row = z.object({
  boatSpeed_kn: z.number(),
  point: z.string().nullable().describe('The point of the service; null in the rows of the table.'),
  resistance_N: z.number().describe('With the sea margin.'),
  effectivePower_kW: z.number().describe('Resistance times speed.'),
  drives: z.array(driveAt),
  batteryPower_kW: z
    .number()
    .nullable()
    .describe('From all banks, other loads by their duty; null if it is not known.'),
  cRate: z
    .number()
    .nullable()
    .describe(
      'Current to capacity, 1/h, at that power and the nominal voltage: of the bank that is drawn on hardest.',
    ),
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
          driveAt.omit(atSpeed).extend({ fault: z.null(), limitedBy }),
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
