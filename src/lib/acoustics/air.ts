import type { DegreesCelsius, KilogramsPerCubicMetre, MetresPerSecond } from '../units.js';

export interface Air {
  temperatureC: DegreesCelsius;
}

/**
 * Speed of sound in dry air: 343.2·√((T + 273.15)/293.15) m/s (ISO 9613-1:1993).
 */
export function soundSpeed(air: Air): MetresPerSecond {
  return 343.2 * Math.sqrt((air.temperatureC + 273.15) / 293.15);
}

/** The density that belongs to a speed of sound: ρc² is the same at any temperature (ideal gas at one pressure). */
export function densityAt(c: MetresPerSecond): KilogramsPerCubicMetre {
  return 1.204 * (343.2 / c) ** 2;
}

/** Density of dry air at sea level: 1.204 kg/m³ at 20 °C, ideal gas otherwise. */
export function airDensity(air: Air): KilogramsPerCubicMetre {
  return (1.204 * 293.15) / (air.temperatureC + 273.15);
}
