import { Controller, Get, Headers, Param, Post, Put, Query, Req, Res, StreamableFile } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiHeader, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import { Configuration } from '../../platform/config/configuration.js';
import type { Actor } from '../../platform/database/actor.js';
import { IfMatch } from '../../platform/http/if-match.js';
import { Answers, AnswersRaw } from '../contract/answers.js';
import { Id, PageQuery } from '../contract/contract.schemas.js';
import { uploadedParts } from '../schedules/read-upload.js';
import { ScheduleAnswer, ScheduleUpload } from '../schedules/schedules.schemas.js';
import { JobEvents } from './job-events.js';
import { JobAnswer, JobList, SubmitQuery } from './jobs.schemas.js';
import { isOver, JobsService } from './jobs.service.js';

const PREFER = { name: 'prefer', required: false, description: '`respond-async`: answer 202 at once' };

@ApiTags('jobs')
@Controller('jobs')
export class JobsController {
  constructor(
    private readonly service: JobsService,
    private readonly events: JobEvents,
    private readonly configuration: Configuration,
  ) {}

  @Post()
  @ApiConsumes('application/json', 'multipart/form-data')
  @ApiBody(ScheduleUpload)
  @ApiHeader(PREFER)
  @Answers(JobAnswer, {
    summary: 'Submit a wall schedule; answered when it is measured, or 202 where that takes longer',
    permission: 'job.submit',
    status: 201,
    orStatus: 202,
  })
  async submit(
    @CurrentActor() actor: Actor,
    @Req() request: FastifyRequest,
    @Query({ schema: SubmitQuery }) query: SubmitQuery,
    @Headers('prefer') prefer: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ) {
    const parts = await uploadedParts(request, this.configuration.uploadLimitBytes);
    return this.told(reply, 201, await this.service.submit(actor, parts, query.organisation, patience(prefer)));
  }

  @Get()
  @Answers(JobList, { summary: 'Jobs, the newest first', permission: 'job.read' })
  list(@CurrentActor() actor: Actor, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.list(actor, query);
  }

  @Get(':id')
  @Answers(JobAnswer, { summary: 'One job', permission: 'job.read' })
  one(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string) {
    return this.service.one(actor, id);
  }

  @Get(':id/schedule')
  @Answers(ScheduleAnswer, { summary: 'The wall schedule in force, as it was understood', permission: 'job.read' })
  schedule(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string) {
    return this.service.schedule(actor, id);
  }

  @Put(':id/schedule')
  @ApiConsumes('application/json', 'multipart/form-data')
  @ApiBody(ScheduleUpload)
  @ApiHeader(PREFER)
  @Answers(JobAnswer, {
    summary: 'Replace the wall schedule; If-Match is required',
    permission: 'job.revise',
    status: 200,
    orStatus: 202,
    ifMatch: 'required',
  })
  async revise(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @IfMatch('required') version: number | null,
    @Req() request: FastifyRequest,
    @Headers('prefer') prefer: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ) {
    const parts = await uploadedParts(request, this.configuration.uploadLimitBytes);
    return this.told(reply, 200, await this.service.revise(actor, id, version, parts, patience(prefer)));
  }

  @Get(':id/events')
  @AnswersRaw(['text/event-stream'], {
    summary: 'Progress of the run: `progress` events with stage, done and total, until it is over',
    permission: 'job.read',
  })
  async progress(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ) {
    const stream = await this.events.open(actor, id);
    void reply.headers({ 'cache-control': 'no-store', connection: 'close' });
    return new StreamableFile(stream, { type: 'text/event-stream; charset=utf-8' });
  }

  private told(reply: FastifyReply, settled: number, job: JobAnswer): JobAnswer {
    void reply.status(isOver(job) ? settled : 202).header('location', `/v1/jobs/${job.id}`);
    return job;
  }
}

const patience = (prefer: string | undefined) => ({ respondAsync: /(?:^|,)\s*respond-async\s*(?:,|;|$)/i.test(prefer ?? '') });
