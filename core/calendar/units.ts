/**
 * Lengths of time. A day is a day of UTC, of 86,400 seconds, without leap seconds (POSIX.1, 4.16 Seconds Since the Epoch); a civil
 * day of a zone may be an hour longer or shorter and is reckoned in core/calendar/zone.ts.
 */
export const minuteMs = 60_000
export const dayMs = 86_400_000

/** Minutes of a day. */
export const dayMinutes = 1440

/** Seconds of a day. */
export const daySeconds = 86_400
