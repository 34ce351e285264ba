/** Grades of reinforcing bars: what they are called in ksi, and the yield strengths that go by the name, metric ones too [psi]. From memory. */
const GRADES = [
  { psi: 40_000, from: 39_990, to: 40_611 },
  { psi: 60_000, from: 59_990, to: 60_917 },
] as const;

/** No grade of ψg = 1 is stronger: 420 MPa, the metric name of Grade 60 [psi]. aci-318-19 Table 25.4.2.5, from memory. */
export const GRADE_60_AT_MOST_PSI = GRADES[1].to;

/** Grade 40 (280 MPa) or Grade 60 (420 MPa) in psi, for tables that print these two; the strength itself where it is neither. */
export function gradePsi(fyPsi: number): number {
  return GRADES.find(({ from, to }) => fyPsi >= from && fyPsi <= to)?.psi ?? fyPsi;
}
