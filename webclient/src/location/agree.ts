// Whether two speeds of one canter agree within what each can know.

/** Expanded uncertainty is so many standard ones: about 95 % (JCGM 100:2008, 6.3.3). */
const COVERAGE = 2;

interface Speed {
  speed_mpm: number;
  speed_u_mpm: number;
}

export interface Agreement {
  /** The score E_n of ISO 13528 and ISO/IEC 17043: the difference over the expanded uncertainty of it. */
  en: number;
  agrees: boolean;
}

/** The second speed against the first; the errors of a watch and of satellites have nothing in common. */
export function agreement(one: Speed, other: Speed): Agreement {
  const en = (other.speed_mpm - one.speed_mpm) / (COVERAGE * Math.hypot(one.speed_u_mpm, other.speed_u_mpm));
  return { en, agrees: Math.abs(en) <= 1 };
}
