import { findProgram } from '../clients/find-program.ts'

/** The browser the workbench is shown in. */
export const findChromium = (): string =>
  findProgram({
    title: 'Chromium or Chrome',
    names: ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'],
    debian: 'chromium',
    variable: 'CHROMIUM_PATH',
  })
