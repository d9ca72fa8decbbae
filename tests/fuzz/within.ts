/** Whether something ended in time. */
export async function within(milliseconds: number, work: Promise<unknown>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<false>((done) => {
    timer = setTimeout(() => done(false), milliseconds)
  })
  const inTime = await Promise.race([work.then(() => true), late])
  clearTimeout(timer)
  return inTime
}
