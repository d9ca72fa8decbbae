import { runAll } from './mocha.ts'

export const run = async (): Promise<void> => {
  const failures = await runAll()
  if (failures > 0) throw new Error(`${failures} failed`)
}
