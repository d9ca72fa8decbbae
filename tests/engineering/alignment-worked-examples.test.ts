import { describe, expect, it } from 'vitest'
import { gapsFromDial, rimFromDial, sagReading } from '../../server/src/engineering/alignment/dial.ts'
import { footCorrections } from '../../server/src/engineering/alignment/feet.ts'
import { poseFromFace, poseFromTwoPlanes } from '../../server/src/engineering/alignment/pose.ts'
import { softFeet } from '../../server/src/engineering/alignment/soft-foot.ts'
import { exactly } from '../../server/src/quantity/uncertainty.ts'
import { deg, face, feetOf, inch, mm, ok, rim, round } from './alignment-helpers.ts'

const inInches = (v: { value: number } | undefined): number => (v?.value ?? Number.NaN) / inch

describe('published worked examples', () => {
  // Bloch & Geitner, Machinery Component Maintenance and Repair, pp. 193-198. The direction "wider at the
  // bottom" is inferred from the printed moves; the outboard figure is derived from the same formula.
  const feet = feetOf([9 * inch, 0], [39 * inch, 0])
  const example1 = () => {
    const gaps = face(round([0.1, 0.1035, 0.107, 0.1035], inch), 2 * inch)
    const rims = rim(round([0.0055, 0, -0.0055, 0], inch))
    return ok(footCorrections(poseFromFace(gaps, rims), feet)).feet
  }
  it('face and rim: inboard feet down 0.021 in (Bloch & Geitner)', () => {
    const [inboard, outboard] = example1()
    expect(inInches(inboard?.vertical)).toBeCloseTo(-0.02125, 8)
    expect(inInches(outboard?.vertical)).toBeCloseTo(-0.07375, 8)
    expect(inInches(inboard?.horizontal)).toBeCloseTo(0, 8)
  })
  it('face and rim: within 0.0025 in of the rounded two-step and graph results of the book', () => {
    const [inboard, outboard] = example1()
    expect(Math.abs(inInches(inboard?.vertical) + 0.022)).toBeLessThan(0.0025)
    for (const printed of [-0.075, -0.076])
      expect(Math.abs(inInches(outboard?.vertical) - printed)).toBeLessThan(0.0025)
  })

  it('reverse indicator: inboard feet down 0.003 in, outboard up 0.007 in (Bloch & Geitner p. 203)', () => {
    const plane = (x: number, vertical: number) => ({
      x: x * inch,
      offset: { vertical: exactly(vertical * inch), horizontal: exactly(0) },
    })
    const pose = poseFromTwoPlanes(plane(0, 0.012), plane(14, 0.007))
    const [inboard, outboard] = ok(footCorrections(pose, feetOf([26 * inch, 0], [52 * inch, 0]))).feet
    expect(inInches(inboard?.vertical)).toBeCloseTo(-0.0027, 4)
    expect(inInches(outboard?.vertical)).toBeCloseTo(0.0066, 4)
    expect(Math.round(inInches(inboard?.vertical) * 1000)).toBe(-3)
    expect(Math.round(inInches(outboard?.vertical) * 1000)).toBe(7)
  })

  it("angular shim 0.006 in (A Millwright's Guide to Motor/Pump Alignment; same as Nelson's method S = M L / D)", () => {
    // Face reading 0.012 in on a 12 in circle; one pair of bolts is the pivot, the other 6 in away.
    const gaps = face(round([0.1, 0.094, 0.088, 0.094], inch), 6 * inch)
    const [pivot, bolt] = ok(footCorrections(poseFromFace(gaps, 'pilot'), feetOf([0, 0], [6 * inch, 0]))).feet
    expect(inInches(pivot?.vertical)).toBeCloseTo(0, 10)
    expect(inInches(bolt?.vertical)).toBeCloseTo(0.006, 8)
  })

  it('sag: 0/15/15/30 with 0/-5/-5/-10 is 0/20/20/40, offset 0.20 mm (dial-indicator course notes)', () => {
    const measured = round([0, 15, 30, 15], 0.01 * mm)
    const corrected = rimFromDial(measured, { carriedBy: 'shaft', droop: 0.05 * mm })
    expect(corrected.map((r) => Math.round(r.value / (0.01 * mm)))).toEqual([0, 20, 40, 20])
    expect(Math.abs(rim(corrected).offset.vertical.value)).toBeCloseTo(0.2 * mm, 12)
  })
  it('sag reading: -s at the sides, -2s at the bottom when zeroed at top (FIST 4-1A)', () => {
    const s = 0.05 * mm
    expect([0, 90, 180, 270].map((a) => sagReading(a * deg, s) / s)).toEqual([
      expect.closeTo(0, 12),
      expect.closeTo(-1, 12),
      expect.closeTo(-2, 12),
      expect.closeTo(-1, 12),
    ])
  })
  it('sag reading between the four points follows the cosine of what hangs ([derived]: -s (1 - cos a))', () => {
    expect(sagReading(60 * deg, 1e-4)).toBeCloseTo(-0.5e-4, 12)
  })

  it('soft foot: one foot 0.005 in, others 0.002 in, shim 0.003 in (FIST 4-1A)', () => {
    const lifts = [0.002, 0.005, 0.002, 0.002].map((v, i) => ({ name: `foot ${i + 1}`, lift: v * inch }))
    const { soft, missing } = softFeet(lifts, 0.06 * mm, 0.001 * inch)
    expect(soft).toEqual(['foot 2'])
    expect(missing?.name).toBe('foot 2')
    expect((missing?.height ?? 0) / inch).toBeCloseTo(0.003, 8)
  })
})

describe('formula rows', () => {
  it('four gaps: tv = (g180 - g0)/D, th = (g270 - g90)/D [derived from the plane]', () => {
    const { slope } = face(round([1.92, 1.8, 1.66, 1.78], mm), 55 * mm)
    expect(slope.vertical.value).toBeCloseTo((1.66 - 1.92) / 110, 12)
    expect(slope.horizontal.value).toBeCloseTo((1.78 - 1.8) / 110, 12)
  })
  it('angularity in mils per inch is mrad (Shaft Alignment white paper: rise over run)', () => {
    // 4 mil over 4 in is 1 mil an inch, 1 mrad.
    const { slope } = face(round([0.1, 0.102, 0.104, 0.102], inch), 2 * inch)
    expect(slope.vertical.value).toBeCloseTo(1e-3, 12)
  })
  it('rim dial carried by the shaft: oz = (R0 - R180)/2, oy = (R90 - R270)/2, half of the TIR (several texts)', () => {
    const { offset } = rim(rimFromDial(round([0.1, 0.3, -0.3, -0.5], mm), { carriedBy: 'shaft' }))
    expect(offset.vertical.value).toBeCloseTo(0.2 * mm, 12)
    expect(offset.horizontal.value).toBeCloseTo(0.4 * mm, 12)
  })
  it('rim dial carried by the machine: signs of oz and oy reversed [derived]', () => {
    const readings = round([0.1, 0.3, -0.3, -0.5], mm)
    const { offset } = rim(rimFromDial(readings, { carriedBy: 'machine' }))
    expect(offset.vertical.value).toBeCloseTo(-0.2 * mm, 12)
    expect(offset.horizontal.value).toBeCloseTo(-0.4 * mm, 12)
  })
  it('droop is taken out before the sign is reversed: add 2s at the bottom whoever carries the dial (FIST 4-1A)', () => {
    const [, , bottom] = rimFromDial(round([0, 0, 0, 0]), { carriedBy: 'machine', droop: 0.05 * mm })
    expect(bottom?.value).toBeCloseTo(-0.1 * mm, 12)
  })

  it('rim and face with the dial on the moved machine: F = bf B/D - br/2, R = bf A/D - br/2 (public face-and-rim sheet)', () => {
    // The dial turns with the machine and is zeroed at top. Face: + at the bottom means pushed in, so the
    // faces are nearer there, the machine face looks down, its axis falls going forward, the feet go up: bf
    // B/D > 0, as printed. Rim: + at the bottom means the shaft's rim stands lower there than the machine's
    // circle, so the machine is high, the feet go down: -br/2, as printed.
    const [bf, br, D, A, B] = [0.012, -0.02, 5, 34, 11]
    const gaps = face(gapsFromDial(round([0, bf / 2, bf, bf / 2], inch)), (D / 2) * inch)
    const rims = rim(rimFromDial(round([0, br / 2, br, br / 2], inch), { carriedBy: 'machine' }))
    const pose = poseFromFace(gaps, rims)
    const [front, rear] = ok(footCorrections(pose, feetOf([B * inch, 0], [A * inch, 0]))).feet
    expect(inInches(front?.vertical)).toBeCloseTo((bf * B) / D - br / 2, 8)
    expect(inInches(rear?.vertical)).toBeCloseTo((bf * A) / D - br / 2, 8)
  })

  it('loose at the top by 0.05 mm or more: the far feet are raised (common practice, no source)', () => {
    for (const loose of [0.05, 0.2, 1]) {
      const gaps = face(round([1 + loose, 1 + loose / 2, 1, 1 + loose / 2], mm), 55 * mm)
      expect(gaps.slope.vertical.value).toBeLessThan(0)
      for (const basis of ['pilot', 'unknown'] as const) {
        const [near, far] = ok(footCorrections(poseFromFace(gaps, basis), feetOf([0.18, 0], [0.56, 0]))).feet
        expect(far?.vertical.value).toBeGreaterThan(near?.vertical.value ?? 0)
        expect(near?.vertical.value).toBeGreaterThan(0)
      }
    }
  })
  it('open to starboard: the far feet go to starboard ([derived]: as loose at the top, turned a quarter)', () => {
    const gaps = face(round([1.5, 2, 1.5, 1], mm), 55 * mm)
    const [, far] = ok(footCorrections(poseFromFace(gaps, 'pilot'), feetOf([0.18, 0], [0.56, 0]))).feet
    expect(far?.horizontal.value).toBeGreaterThan(0)
    expect(far?.vertical.value).toBeCloseTo(0, 12)
  })
})
