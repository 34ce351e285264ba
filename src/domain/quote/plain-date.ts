/** A day of the calendar without a time of day, `2026-03-01`. Plain dates compare as text. */
export type PlainDate = string;

const DAYS_PER_ERA = 146_097;
/** From 0000-03-01 to 1970-01-01. */
const DAYS_TO_EPOCH = 719_468;

/** Whether a text is a day that the Gregorian calendar has, in the years 1000 to 9999. */
export function isPlainDate(text: string): boolean {
  const [, year, month, day] = /^([1-9]\d{3})-(\d\d)-(\d\d)$/.exec(text) ?? [];
  return year !== undefined && Number(month) >= 1 && Number(month) <= 12 && Number(day) >= 1 && plainDate(dayNumber(text)) === text;
}

/**
 * The day some days later.
 *
 * @param date a plain date
 * @param days whole number
 * @throws     a defect where `date` is no plain date
 */
export function addDays(date: PlainDate, days: number): PlainDate {
  if (!isPlainDate(date)) throw new RangeError(`${date} is not a day`);
  return plainDate(dayNumber(date) + days);
}

/** Days since 1970-01-01. Years are counted from 1 March, so that a leap day is a year's last day; 400 years are one era. */
function dayNumber(date: PlainDate): number {
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  const marchYear = month > 2 ? year : year - 1;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  return era * DAYS_PER_ERA + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - DAYS_TO_EPOCH;
}

function plainDate(days: number): PlainDate {
  const shifted = days + DAYS_TO_EPOCH;
  const era = Math.floor(shifted / DAYS_PER_ERA);
  const dayOfEra = shifted - era * DAYS_PER_ERA;
  const yearOfEra = Math.floor((dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  const year = era * 400 + yearOfEra + (month <= 2 ? 1 : 0);
  return [String(year).padStart(4, '0'), String(month).padStart(2, '0'), String(day).padStart(2, '0')].join('-');
}
