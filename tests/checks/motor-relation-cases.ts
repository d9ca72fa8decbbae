// The same for the rules between rated, highest and short-time figures of a drive.
import { type Case, drive } from './relation-cases.ts'

export const motorCases: Readonly<Record<string, Case>> = {
  'motor-max-speed': {
    broken: ['1400 rpm', '15 rpm'].map((most) => drive(`motor m { speed: 1500 rpm  max-speed: ${most} }`)),
    kept: ['1500 rpm', '3400 rpm', '25 Hz'].map((most) =>
      drive(`motor m { speed: 1500 rpm  max-speed: ${most} }`),
    ),
  },
  'motor-peak-torque': {
    // 15 kW at 1500 rpm: 95.5 N·m.
    broken: [
      ...['94 N·m', '60 lbf·ft', '0.15 N·m'].map((peak) =>
        drive(`motor m { power: 15 kW  speed: 1500 rpm  peak-torque: ${peak} }`),
      ),
      drive('motor m { torque-curve: 0 rpm 120 N·m, 1500 rpm 95 N·m  peak-torque: 110 N·m }'),
    ],
    kept: [
      ...['95 N·m', '150 N·m', '71 lbf·ft'].map((peak) =>
        drive(`motor m { power: 15 kW  speed: 1500 rpm  peak-torque: ${peak} }`),
      ),
      drive('motor m { torque-curve: 0 rpm 120 N·m, 1500 rpm 95 N·m  peak-torque: 120 N·m }'),
      drive('motor m { power: 15 kW  peak-torque: 1 N·m }'),
    ],
  },
  'motor-torque-curve': {
    // 15 kW at 1500 rpm: 95.5 N·m; 85.9 to 105.0 N·m count as the same.
    broken: [
      '0 rpm 85 N·m, 1500 rpm 85 N·m',
      '0 rpm 106 N·m, 1500 rpm 106 N·m',
      '0 rpm 70 lbf·ft, 1500 rpm 7 lbf·ft',
      '0 rpm 95 N·m, 1400 rpm 95 N·m',
      '1600 rpm 95 N·m, 2400 rpm 60 N·m',
    ].map((curve) => drive(`motor m { power: 15 kW  speed: 1500 rpm  torque-curve: ${curve} }`)),
    kept: [
      '0 rpm 95 N·m, 1500 rpm 95 N·m, 2400 rpm 60 N·m',
      '0 rpm 87 N·m, 1500 rpm 87 N·m',
      '1000 rpm 104 N·m, 2000 rpm 104 N·m',
      '0 rpm 70 lbf·ft, 1500 rpm 70 lbf·ft',
    ].map((curve) => drive(`motor m { power: 15 kW  speed: 1500 rpm  torque-curve: ${curve} }`)),
  },
  'controller-peak-current': {
    broken: ['219 A', '33 A'].map((peak) => drive(`controller { current: 220 A  peak-current: ${peak} }`)),
    kept: ['220 A', '330 A'].map((peak) => drive(`controller { current: 220 A  peak-current: ${peak} }`)),
  },
  ...Object.fromEntries(
    ['gear', 'coupling'].map((part) => [
      `${part}-peak-torque`,
      {
        broken: ['119 N·m', '18 N·m', '80 lbf·ft'].map((peak) =>
          drive(`${part} { rated-torque: 120 N·m  peak-torque: ${peak} }`),
        ),
        kept: ['120 N·m', '180 N·m', '100 lbf·ft'].map((peak) =>
          drive(`${part} { rated-torque: 120 N·m  peak-torque: ${peak} }`),
        ),
      },
    ]),
  ),
}
