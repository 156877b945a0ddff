// Metres on the ellipsoid of WGS 84, for points no more than some kilometres apart. The radii are a and e² of
// NGA.STND.0036 (WGS 84); the lengths of a degree follow from them as every textbook of geodesy has it.

const EQUATOR_M = 6_378_137;
const E2 = 0.00669437999014;
const RADIAN = Math.PI / 180;

interface Place {
  latitude: number;
  longitude: number;
}

/** Length of a degree northwards and eastwards, in m. */
export function metresPerDegree(latitude: number): { north: number; east: number } {
  const flat = 1 - E2 * Math.sin(latitude * RADIAN) ** 2;
  return {
    north: (RADIAN * EQUATOR_M * (1 - E2)) / flat ** 1.5,
    east: (RADIAN * EQUATOR_M * Math.cos(latitude * RADIAN)) / Math.sqrt(flat),
  };
}

/** The other place as seen from one, in m east and north. */
export function offsetOf(from: Place, to: Place): { x: number; y: number } {
  const { north, east } = metresPerDegree((from.latitude + to.latitude) / 2);
  const turn = to.longitude - from.longitude;
  return { x: east * (turn - 360 * Math.round(turn / 360)), y: north * (to.latitude - from.latitude) };
}

export function metresBetween(one: Place, other: Place): number {
  const { x, y } = offsetOf(one, other);
  return Math.hypot(x, y);
}
