/** Published sources by the key that docstrings, traces and findings carry; the bibliography says how each was read. */
export const SOURCE_TITLES = {
  'aci-347-04': 'ACI 347-04, Guide to Formwork for Concrete',
  'aci-305-1-14': 'ACI 305.1-14, Specification for Hot Weather Concreting',
  'salman-lecture-3': 'Lecture 3, Pressure of Concrete on Formwork',
  'peurifoy-oberlender-4': 'Formwork for Concrete Structures',
  'hurd-2006': 'Use updated wall pressure formulas',
  'cc-form-pressure': 'Form pressure (question and answer)',
  nunnally: 'Construction Methods and Management, chapter 12, Concrete Form Design',
  en5466a: 'Concrete Engineering, subcourse EN5466A',
  'estimating-lecture': 'Construction Cost Estimating, lecture transcript',
  'wall-form-si-sheet': 'Wall Form Design SI Unit, spreadsheet after ACI SP-4, 7th edition',
  'formwork-problem-set-3': 'Formwork, problem set 3',
  'dipra-thrust-restraint': 'Thrust Restraint Design for Ductile Iron Pipe',
  'engineering-forum-thrust': 'Thread 298624, thrust of pipe bends',
  'nfpa-24-thrust-sheet': 'Thrust block sheet after NFPA 24 Table A-8-6.2',
  'pvc-pipe-design-text': 'PVC pipe design text, thrust of bends',
  'pipe-fittings-thrust-table': 'Thrust of pipe fittings at 100 psi',
  'en5151-forms': 'Design Forms for a Concrete Wall, subcourse EN5151',
  'steel-wire-gauges': 'Diameters of steel wire by Washburn & Moen gauge',
  'irc-2018': 'International Residential Code, 2018',
  'irc-2021': 'International Residential Code, 2021',
  'ibc-2018': 'International Building Code, 2018',
  'obc-2024': 'Ontario Building Code, 2024',
  'aci-318-14': 'ACI 318-14, Building Code Requirements for Structural Concrete',
  'aci-318-19': 'ACI 318-19, Building Code Requirements for Structural Concrete',
  'bs-8666-2005': 'BS 8666:2005, Scheduling, dimensioning, bending and cutting of steel reinforcement for concrete',
  'astm-a615': 'ASTM A615, Deformed and Plain Carbon-Steel Bars for Concrete Reinforcement',
  'csa-g30-18': 'CSA G30.18, Carbon Steel Bars for Concrete Reinforcement',
  'pci-handbook': 'PCI Design Handbook, Design Aid 15.4.4',
  'class-b-lap-chart': 'Class B lap splices, field chart',
  'retaining-wall-sheet': 'Retaining wall calculation sheet',
  'navfac-dm-2-8': 'Blast Resistant Structures, Design Manual 2.08',
  'one-way-slab-example': 'One-way slab, worked example',
  'floodproofing-manual': 'Floodproofing manual, figure 11.6',
  'irc-web-copies': 'Transcriptions of the residential code on public web pages',
  'bar-shape-charts': 'Shape codes and minimum radii, charts on public web pages',
  'asce-7-05': 'ASCE 7-05, Minimum Design Loads for Buildings and Other Structures',
  'asce-7-10': 'ASCE 7-10, Minimum Design Loads for Buildings and Other Structures',
  'asce-7-16': 'ASCE 7-16, Minimum Design Loads for Buildings and Other Structures',
  'asce-7-22': 'ASCE 7-22, Minimum Design Loads for Buildings and Other Structures',
  'asce-37-14': 'ASCE 37-14, Design Loads on Structures during Construction',
  'wind-wall-sheet': 'Calculation sheet of wind on a solid freestanding wall after ASCE 7-05',
  'permit-wind-sheet': 'Permit calculations, identification 19-00780',
  'wind-sign-sheet': 'Calculation sheet of wind on a solid sign',
  'public-code-listing': 'Public listing of the velocity pressure exposure coefficient',
  'tilt-up-bracing-guideline': 'Guideline for temporary wind bracing of concrete panels, article',
  'hanna-formwork': 'Concrete Formwork Systems',
  'formwork-problem-set-5': 'Formwork, problem set 5',
  'nds-2018': 'National Design Specification for Wood Construction',
  'nds-column-page': 'Column stability after NDS 2018 §3.7, calculation page',
  'uno-1998': 'Plastic Shrinkage Cracking and Evaporation Formulas, ACI Materials Journal 95-M34',
  'evaporation-pages': 'Pages that print the evaporation formula of Uno',
  'evaporation-meter-note': 'Evaporation Rate Calculation, support note',
  'evaporation-question-page': 'How do you calculate the evaporation rate of concrete?',
  'hover-2020': 'Evaporation of bleed water, ACI SP-338 (abstract)',
  'aci-305r': 'ACI 305R-91, Hot Weather Concreting',
  'aci-306r': 'ACI 306R, Cold Weather Concreting',
  'silica-fume-slide': 'Slide on plastic shrinkage of silica fume concrete',
  'hot-concrete-lecture': 'Lecture notes on concreting in hot and cold weather',
  'ice-and-mix-blog': 'Temperature of concrete with ice, worked example',
  'ice-study-2017': 'Wasit Journal of Engineering Sciences 5(2), abstract on the ice equation',
  'astm-c94-before-2021': 'ASTM C94/C94M, Specification for Ready-Mixed Concrete, editions before 2021',
  'astm-c94-21': 'ASTM C94/C94M-21, Specification for Ready-Mixed Concrete',
  'hold-the-deliveries': 'Hold the deliveries',
  'pumping-news-2022': 'News of 21 June 2022 on the time limit of ASTM C94',
  'engineering-forum-pours': 'Thread 150606, wall volumes and trucks',
  'building-forum-pours': 'Thread 178523, rate of rise and supply',
  'ciria-108': 'CIRIA Report 108, Concrete pressure on formwork',
  'ciria-forum-sheet': 'Calculation sheet of formwork pressure after CIRIA 108, forum of engineers',
  'ciria-sheet': 'Calculation sheet of formwork pressure after CIRIA 108',
  'din-18218-2010': 'DIN 18218:2010-01, Pressure of fresh concrete on vertical formwork',
  'din-18218-article': 'DIN Standard on Formwork Pressures Updated, Concrete International',
  'din-18218-1980-summary': 'Summary of DIN 18218, edition of 1980',
} as const satisfies Readonly<Record<string, string>>;

export type SourceKey = keyof typeof SOURCE_TITLES;

/** A source as a trace or finding carries it, taken apart. */
export interface Citation {
  /** Null where no publication stands behind the number. */
  readonly key: SourceKey | null;
  /** Clause, table or equation; empty where the whole source is meant. */
  readonly clause: string;
}

/**
 * Takes `aci-347-04 §2.2.2` apart.
 *
 * @param source text of a trace step's or finding's `source`
 * @returns      key and clause; key null for what is not published
 */
export function citation(source: string): Citation {
  const [first = '', ...rest] = source.split(' ');
  return Object.hasOwn(SOURCE_TITLES, first) ? { key: first as SourceKey, clause: rest.join(' ') } : { key: null, clause: '' };
}

/**
 * The source as a reader wants it: `ACI 347-04, Guide to Formwork for Concrete, §2.2.2`.
 *
 * @param source text of a trace step's or finding's `source`
 * @returns      title and clause; what is not published stays as it is
 */
export function citationText(source: string): string {
  const { key, clause } = citation(source);
  if (key === null) return source;
  return clause === '' ? SOURCE_TITLES[key] : `${SOURCE_TITLES[key]}, ${clause}`;
}
