/** IEC 60228:2004, maximum DC resistance at 20 °C, Ω/km, as four independent cable references print it and
 * agree. Class 2 is stranded, class 5 flexible. Class 5 at 50 mm² really is lower than class 2: both are as
 * printed. */
export const iec60228 = {
  source: 'IEC 60228:2004, maximum DC resistance at 20 °C',
  columns: ['class 2 plain', 'class 2 tinned', 'class 5 plain', 'class 5 tinned'],
  rows: [
    { mm2: 1.5, ohmPerKilometre: [12.1, 12.2, 13.3, 13.7] },
    { mm2: 2.5, ohmPerKilometre: [7.41, 7.56, 7.98, 8.21] },
    { mm2: 4, ohmPerKilometre: [4.61, 4.7, 4.95, 5.09] },
    { mm2: 6, ohmPerKilometre: [3.08, 3.11, 3.3, 3.39] },
    { mm2: 10, ohmPerKilometre: [1.83, 1.84, 1.91, 1.95] },
    { mm2: 16, ohmPerKilometre: [1.15, 1.16, 1.21, 1.24] },
    { mm2: 25, ohmPerKilometre: [0.727, 0.734, 0.78, 0.795] },
    { mm2: 35, ohmPerKilometre: [0.524, 0.529, 0.554, 0.565] },
    { mm2: 50, ohmPerKilometre: [0.387, 0.391, 0.386, 0.393] },
    { mm2: 70, ohmPerKilometre: [0.268, 0.27, 0.272, 0.277] },
    { mm2: 95, ohmPerKilometre: [0.193, 0.195, 0.206, 0.21] },
    { mm2: 120, ohmPerKilometre: [0.153, 0.154, 0.161, 0.164] },
    { mm2: 150, ohmPerKilometre: [0.124, 0.126, 0.129, 0.132] },
    { mm2: 185, ohmPerKilometre: [0.0991, 0.1, 0.106, 0.108] },
    { mm2: 240, ohmPerKilometre: [0.0754, 0.0762, 0.0801, 0.0817] },
  ],
} as const
