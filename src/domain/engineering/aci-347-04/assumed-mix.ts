/** What is assumed of a concrete where a pour does not state it; every use is listed beside the result. */
export const ASSUMED_MIX = {
  /** [pcf]: the value of form design for reinforced concrete. cc-form-pressure. */
  unitWeightPcf: 150,
  /** Row of the chemistry table that Type I belongs to. Common practice. */
  cement: 'portland-i-ii-iii',
  retarder: false,
  /** [in]: no more than the equations allow. Common practice. */
  slumpIn: 7,
} as const;

/** The same in words. */
export const ASSUMED_WORDS = {
  unitWeight: 'unitWeight: 150 pcf',
  cement: 'cement: I',
  retarder: 'retarder: none',
  slump: 'slump: not over 7 in',
} as const;

/** What is assumed instead where a question is asked in SI units: the same classes as the SI printing rounds them. */
export const ASSUMED_MIX_SI = { ...ASSUMED_MIX, unitWeightKgPerM3: 2400, slumpMm: 175 } as const;

/** The same in words. */
export const ASSUMED_WORDS_SI = {
  ...ASSUMED_WORDS,
  unitWeight: 'unitWeight: 2400 kg/m3',
  slump: 'slump: not over 175 mm',
} as const;
