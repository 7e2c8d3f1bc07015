/** Standard gravity in m/s², exact: 3rd CGPM 1901 (NIST SP 330, 2008, p. 52). */
export const standardGravity = 9.80665

/**
 * Constants of normal gravity on a reference ellipsoid: at the equator in m/s², Somigliana's k, first eccentricity
 * squared.
 */
interface Ellipsoid {
  readonly equator: number
  readonly k: number
  readonly e2: number
}

/** WGS84: NGA/NIMA TR8350.2. GRS80: Moritz, Geodetic Reference System 1980. */
export const ellipsoids = {
  WGS84: { equator: 9.7803253359, k: 0.00193185265241, e2: 0.00669437999013 },
  GRS80: { equator: 9.7803267715, k: 0.001931851353, e2: 0.0066943800229 },
} as const satisfies Record<string, Ellipsoid>

/** Change of gravity with height, m/s² per metre (free air). */
export const freeAirPerMetre = -3.086e-6

/** Normal gravity in m/s² at sea level, latitude in degrees −90 to 90: Somigliana's closed formula. */
export function normalGravity(latitude: number, ellipsoid: keyof typeof ellipsoids = 'WGS84'): number {
  const { equator, k, e2 } = ellipsoids[ellipsoid]
  const sine2 = Math.sin((latitude * Math.PI) / 180) ** 2
  return (equator * (1 + k * sine2)) / Math.sqrt(1 - e2 * sine2)
}

/** Gravity in m/s² at a latitude in degrees and a height in metres above the sea, WGS84 and free air. */
export const gravityAt = (latitude: number, heightMetres = 0): number =>
  normalGravity(latitude) + freeAirPerMetre * heightMetres
