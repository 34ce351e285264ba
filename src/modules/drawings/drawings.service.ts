import { Injectable } from '@nestjs/common';
import type { StoreyBracing } from '../../domain/checks/bracing-plan.js';
import type { CheckReport } from '../../domain/checks/check-report.js';
import { Clock } from '../../platform/clock/clock.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { WorkerPool } from '../../platform/workers/worker-pool.js';
import { PeopleRepository } from '../people/people.repository.js';
import { permit } from '../people/permissions.js';
import { RangesService } from '../ranges/ranges.service.js';
import { SchedulesRepository } from '../schedules/schedules.repository.js';
import { TakeoffsRepository } from '../takeoffs/takeoffs.repository.js';
import { TakeoffsService } from '../takeoffs/takeoffs.service.js';
import { drawingCaution } from './drawing-caution.js';
import type { StoredWall } from '../takeoffs/stored-measurement.js';
import type { DrawInput } from './draw.worker.js';
import type { DrawingKind, DrawingType } from './drawings.schemas.js';

export interface WantedDrawing {
  readonly kind: DrawingKind;
  readonly ref: string;
  readonly type: DrawingType;
  readonly widthPx: number;
}

export interface DrawnFile {
  readonly bytes: Buffer;
  /** Number of the job that is drawn. */
  readonly job: string;
}

@Injectable()
export class DrawingsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly pool: WorkerPool,
    private readonly takeoffs: TakeoffsService,
    private readonly takeoffsRepository: TakeoffsRepository,
    private readonly schedules: SchedulesRepository,
    private readonly ranges: RangesService,
    private readonly people: PeopleRepository,
  ) {}

  async draw(actor: Actor, jobId: string, wanted: WantedDrawing): Promise<DrawnFile> {
    permit(actor, 'drawing.read');
    const input = await this.database.transaction(actor, (tx) => this.input(tx, jobId, wanted));
    const drawing = await this.pool.run<DrawInput, string | Uint8Array | null>('modules/drawings/draw.worker.js', 'draw', input);
    if (drawing === null) throw nothingOf(wanted);
    return { bytes: Buffer.from(drawing as Uint8Array), job: input.header.job };
  }

  private async input(tx: Transaction, jobId: string, wanted: WantedDrawing): Promise<DrawInput> {
    const { job, measurementId } = await this.takeoffs.shown(tx, jobId);
    const { summary, revision } = await this.takeoffsRepository.measurement(tx, measurementId, false);
    const storeyId = await this.storeyOf(tx, measurementId, wanted);
    const storey = summary.takeoff.storeys.find(({ id, junctions }) =>
      wanted.kind === 'junction' ? junctions.some((junction) => junction.id === wanted.ref) : id === storeyId,
    );
    if (!storey) throw nothingOf(wanted);
    const walls = await this.takeoffsRepository.wallsOfStorey(tx, measurementId, storey.id);
    const schedule = await this.schedules.revision(tx, job.id, revision);
    if (!schedule) throw new Error(`revision ${revision} of job ${job.id} has no schedule`);
    return {
      ...wanted,
      storey,
      walls,
      pressurePsf: wanted.kind === 'junction' ? pressureAt(summary.checks, storey, walls, wanted.ref) : null,
      bracing: bracingOf(summary.bracing, storey.id, wanted),
      createdAt: this.clock.now().toISOString(),
      units: schedule.schedule.units,
      range: await this.ranges.version(tx, summary.range.code, summary.range.version),
      header: {
        job: job.number,
        jobName: job.name,
        revision,
        supplier: (await this.people.supplier(tx)).name,
        caution: drawingCaution(),
      },
    };
  }

  private async storeyOf(tx: Transaction, measurementId: string, { kind, ref }: WantedDrawing): Promise<string | null> {
    return kind === 'elevation' ? this.takeoffsRepository.storeyOfWall(tx, measurementId, ref) : ref;
  }
}

/** What the storey's concrete presses at the junction, as its check worked it out; null where no check did. */
function pressureAt(
  checks: readonly CheckReport[],
  storey: DrawInput['storey'],
  walls: readonly StoredWall[],
  id: string,
): number | null {
  const [mark] = storey.junctions.find((junction) => junction.id === id)?.walls ?? [];
  const core = walls.find((wall) => wall.mark === mark)?.core.code;
  const report = checks.find((check) => check.check === 'form-pressure' && check.storey === storey.id && check.core === core);
  const psf = report?.results['pressurePsf'];
  return typeof psf === 'number' ? psf : null;
}

/** What the drawing shows of the bracing plan; a measurement stored before there was one has none. */
function bracingOf(plans: readonly StoreyBracing[] | undefined, id: string, { kind, ref }: WantedDrawing): DrawInput['bracing'] {
  const plan = plans?.find(({ storey }) => storey === id);
  if (!plan || kind === 'junction') return null;
  const { spacing, walls, count } = plan;
  return { spacing, count, walls: kind === 'elevation' ? walls.filter(({ mark }) => mark === ref) : walls };
}

const nothingOf = ({ kind, ref }: WantedDrawing): Refusal =>
  new Refusal('not-found', `There is no ${kind} of ${ref.slice(0, 80)} in this job.`);
