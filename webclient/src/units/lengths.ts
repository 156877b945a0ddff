// Lengths as people type and read them. Twin of server/fieldtally/trade/units.py: same vectors
// (fixtures/contract/units.json). An inch is 2.54 cm, a foot 30.48 cm, a yard 0.9144 m exactly
// (international yard and pound agreement, 1959).

export type System = "metric" | "imperial";

const CM_PER_INCH = 2.54;
const CM_PER_FOOT = 30.48;

const NUMBER = "(\\d+(?:[.,]\\d*)?|[.,]\\d+)";
const FEET = new RegExp(`^${NUMBER}(?:'|ft|feet|foot)(?:${NUMBER}(?:"|in|inch|inches)?)?$`);
const INCHES = new RegExp(`^${NUMBER}(?:"|in|inch|inches)$`);
const METRIC = new RegExp(`^${NUMBER}(mm|cm|m)?$`);
const METRES_AND_CM = /^(\d)m(\d\d)(?:cm)?$/; // 1m10
const DISTANCE = new RegExp(`^${NUMBER}(m|km|yd|yards|ft|feet)?$`);

const CM_IN: Record<string, number> = { mm: 0.1, cm: 1, m: 100 };
const METRES_IN: Record<string, number> = { m: 1, km: 1000, yd: 0.9144, yards: 0.9144, ft: 0.3048, feet: 0.3048 };

// what phones and keyboards make of feet, inches and halves
const SPELLINGS: Record<string, string> = {
  "’": "'", "‘": "'", "′": "'", "`": "'", "”": '"', "“": '"', "″": '"', "''": '"', "½": ".5", "¼": ".25", "¾": ".75",
};

/** Lower case, one spelling of each mark, no spaces. */
export function tidy(text: string): string {
  let plain = text.replace(/\s+/g, "").toLowerCase();
  for (const [seen, meant] of Object.entries(SPELLINGS)) plain = plain.replaceAll(seen, meant);
  return plain;
}

/** Centimetres from `2'11"`, `2ft11`, `35in`, `0,90 m`, `1m10`, `90`; null where it is none or out of bounds. */
export function parseHeight(text: string, least = 1, most = 1000): number | null {
  const length = lengthInCm(tidy(text));
  const cm = length === null ? null : rounded(length, 2);
  return cm !== null && cm >= least && cm <= most ? cm : null;
}

/** Metres from `420m`, `420`, `0.42 km`, `460yd`; null where it is none. */
export function parseDistance(text: string): number | null {
  const found = DISTANCE.exec(tidy(text));
  const value = found && numberIn(found[1]!);
  if (value === null) return null;
  const metres = rounded(value * METRES_IN[found?.[2] ?? "m"]!, 4);
  return metres >= 0.1 && metres <= 100_000 ? metres : null;
}

export function writeHeight(cm: number, system: System): string {
  return system === "metric" ? `${rounded(cm, 1)} cm` : feetAndInches(cm);
}

export function writeDistance(m: number, system: System): string {
  return system === "metric" ? `${rounded(m, 1)} m` : `${rounded(m / 0.9144, 1)} yd`;
}

/** The room between two lengths: `8.9 cm`, `3.5 in`; never nothing where there is some. */
export function writeGap(cm: number, system: System): string {
  const [size, unit] = system === "metric" ? [cm, "cm"] : [cm / CM_PER_INCH, "in"];
  return `${cm > 0 ? Math.max(0.1, rounded(size, 1)) : 0} ${unit}`;
}

/** `0.90 m`: to the centimetre. */
export function writeMetres(cm: number): string {
  return `${rounded(cm / 100, 2).toFixed(2)} m`;
}

/** `2'11"`: to the nearest inch, half an inch up. */
export function feetAndInches(cm: number): string {
  const inches = rounded(cm / CM_PER_INCH, 0);
  return `${Math.floor(inches / 12)}'${inches % 12}"`;
}

/** To `places` decimals, halves up; the server rounds by the same two operations. */
export function rounded(value: number, places: number): number {
  const scale = 10 ** places;
  return Math.floor(value * scale + 0.5) / scale;
}

function lengthInCm(plain: string): number | null {
  const mixed = METRES_AND_CM.exec(plain);
  if (mixed) return Number(mixed[1]) * 100 + Number(mixed[2]);
  const metric = METRIC.exec(plain);
  if (metric) return times(numberIn(metric[1]!), CM_IN[metric[2] ?? "cm"]!);
  const inches = INCHES.exec(plain);
  if (inches) return times(numberIn(inches[1]!), CM_PER_INCH);
  const feet = FEET.exec(plain);
  return feet && feetInCm(feet[1]!, feet[2]);
}

function feetInCm(feetDigits: string, inchDigits: string | undefined): number | null {
  const feet = numberIn(feetDigits);
  const inches = numberIn(inchDigits ?? "0");
  if (feet === null || inches === null || inches >= 12) return null;
  if (inchDigits !== undefined && !Number.isInteger(feet)) return null;
  return feet * CM_PER_FOOT + inches * CM_PER_INCH;
}

/** A number with a decimal point or comma; `1,850` can be read in two ways, so it is neither. */
export function numberIn(digits: string): number | null {
  return /^\d+,\d{3}$/.test(digits) ? null : Number(digits.replace(",", "."));
}

function times(value: number | null, factor: number): number | null {
  return value === null ? null : value * factor;
}
