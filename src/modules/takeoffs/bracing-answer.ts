import type { BraceCase, PlannedBrace, StoreyBracing } from '../../domain/checks/bracing-plan.js';
import { toMm } from '../../domain/quantity/length.js';
import { inUnit } from '../../domain/quantity/quantity.js';
import type { BracingAnswer } from './bracing.schemas.js';
import { findingAnswer } from './takeoff-answer.js';

/** The braces of a storey as the contract shows them. */
export const bracingAnswer = (bracing: StoreyBracing): BracingAnswer => ({
  storey: bracing.storey,
  side: bracing.side,
  spacingMm: toMm(bracing.spacing),
  count: bracing.count,
  cases: bracing.cases.map(caseAnswer),
  walls: bracing.walls.map(({ mark, braces }) => ({ mark, braces: braces.map(braceAnswer) })),
  trace: [...bracing.trace],
  source: bracing.source,
  defaults: [...bracing.defaults],
  notes: [...bracing.notes],
  findings: bracing.findings.map(findingAnswer),
});

const caseAnswer = ({ forms, topLoad, governs }: BraceCase): BracingAnswer['cases'][number] => ({
  forms,
  topLoadKnPerM: topLoad,
  topLoadLbPerFt: topLoad === null ? null : inUnit('force per length', 'lb/ft', topLoad),
  governs,
});

const braceAnswer = (brace: PlannedBrace): BracingAnswer['walls'][number]['braces'][number] => ({
  atMm: toMm(brace.at),
  reason: brace.reason,
  widthMm: toMm(brace.width),
  heightMm: toMm(brace.height),
  axialKn: brace.axial,
  axialLb: pounds(brace.axial),
  horizontalKn: brace.horizontal,
  horizontalLb: pounds(brace.horizontal),
  upliftKn: brace.uplift,
  upliftLb: pounds(brace.uplift),
});

const pounds = (kN: number | null): number | null => (kN === null ? null : inUnit('force', 'lb', kN));
