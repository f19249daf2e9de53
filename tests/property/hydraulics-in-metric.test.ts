import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  atmosphericPressure_psi, dryHydrantPipeLoss_ftPer100ft, elevation_psi, farmPond_gal, hoseVolume_gal, orificeFlow_gpm, streamFlow_gpm, vortexSubmergence_ft, velocityHead_ft,
} from '@/lib/hydraulics'
import { LITRES_PER_GALLON, PASCALS_PER_PSI, metricDisplay, metresFromFeet } from '@/lib/units'

/**
 * Each law again in SI from its textbook form, with its own constants (g = 9.80665 m/s², water 999 kg/m³), from the same
 * inputs taken across by the unit table. Source: SI definitions; the forms are in any hydraulics text.
 */
const G = 9.80665
const WATER_KGPERM3 = 999.0
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const metric = (value: number, unit: keyof typeof metricDisplay) => value * metricDisplay[unit].factor + metricDisplay[unit].offset

const bore_in = between(1, 12), flow_gpm = between(50, 2500)
const m3PerS = (gpm: number) => metric(gpm, 'gpm') / 1000 / 60
const metres = (inches: number) => metric(inches, 'in') / 1000
const area_m2 = (inches: number) => (Math.PI / 4) * metres(inches) ** 2

function agree(us: number, si: number, share = 1e-4): void {
  expect(Math.abs(us / si - 1)).toBeLessThan(share)
}

test('velocity head agrees in both systems', () => {
  fc.assert(fc.property(flow_gpm, bore_in, (q, d) => agree(metresFromFeet(velocityHead_ft(q, d)), (m3PerS(q) / area_m2(d)) ** 2 / (2 * G))))
})

test('Manning pipe loss of a dry hydrant agrees in both systems', () => {
  fc.assert(fc.property(flow_gpm, between(4, 12), (q, d) => {
    const slope = ((m3PerS(q) * 0.01) / (area_m2(d) * (metres(d) / 4) ** (2 / 3))) ** 2
    agree(dryHydrantPipeLoss_ftPer100ft(q, d) / 100, slope)
  }))
})

test('flow of an opening agrees in both systems, to the three figures of its constant', () => {
  fc.assert(fc.property(between(0.5, 10), between(1, 150), between(0.5, 1), (d, p, factor) => {
    agree(metric(orificeFlow_gpm(d, p, factor), 'gpm') / 60_000, factor * area_m2(d) * Math.sqrt((2 * p * PASCALS_PER_PSI) / WATER_KGPERM3), 2e-3)
  }))
})

test('vortex submergence agrees in both systems', () => {
  fc.assert(fc.property(flow_gpm, bore_in, (q, d) => {
    const bore_m = metres(d), speed = m3PerS(q) / area_m2(d)
    agree(metresFromFeet(vortexSubmergence_ft(q, d)), bore_m * (1 + (2.3 * speed) / Math.sqrt(G * bore_m)))
  }))
})

test('air pressure agrees with the hydrostatic law of the standard atmosphere', () => {
  // T0 288.15 K, lapse 6.5 K/km, R 287.053 J/(kg K): the definition behind the rounded ISA constants.
  fc.assert(fc.property(between(0, 15_000), (altitude_ft) => {
    const pascals = 101_325 * (1 - (0.0065 * metresFromFeet(altitude_ft)) / 288.15) ** (G / (287.053 * 0.0065))
    agree(metric(atmosphericPressure_psi(altitude_ft), 'psi') * 1000, pascals)
  }))
})

test('elevation, hose volume, stream and pond agree in both systems', () => {
  fc.assert(fc.property(between(1, 200), bore_in, (x, d) => {
    agree(metric(elevation_psi(x), 'psi') * 1000, WATER_KGPERM3 * G * metresFromFeet(x), 1e-3)
    agree(metric(hoseVolume_gal(d, x), 'gal') / 1000, area_m2(d) * metresFromFeet(x))
    agree(metric(streamFlow_gpm(x, 2, 1.5, 0.7), 'gpm') / 60_000, 0.7 * metresFromFeet(1.5) * metresFromFeet(x) * metresFromFeet(2))
    agree((farmPond_gal(1000 * x, 8) * LITRES_PER_GALLON) / 1000, 0.4 * metric(1000 * x, 'sqft') * metresFromFeet(8))
  }))
})
