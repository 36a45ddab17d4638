/** Unit names as documentation. SI inside the program; a name carries its unit wherever it is not SI. */

export type Hertz = number;
export type Metres = number;
export type SquareMetres = number;
export type CubicMetres = number;
export type Seconds = number;
export type MetresPerSecond = number;
export type KilogramsPerCubicMetre = number;
export type Kilograms = number;
export type Ohms = number;
export type Watts = number;
export type Radians = number;
export type Degrees = number;
export type DegreesCelsius = number;
export type Decibels = number;
/** Loudness units relative to full scale (ITU-R BS.1770-5). */
export type Lufs = number;
