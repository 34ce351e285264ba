import { Args, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { PageQuery } from '../contract/contract.schemas.js';
import type { JobAnswer } from '../jobs/jobs.schemas.js';
import { JobsService } from '../jobs/jobs.service.js';
import { PeopleService } from '../people/people.service.js';
import { QuotesService } from '../quotes/quotes.service.js';
import { TakeoffQuery } from '../takeoffs/takeoffs.schemas.js';
import { TakeoffsService } from '../takeoffs/takeoffs.service.js';
import { TicketQuery } from '../tickets/tickets.schemas.js';
import { TicketsService } from '../tickets/tickets.service.js';
import { checked } from './checked-arguments.js';

@Resolver('Job')
export class JobsResolver {
  constructor(
    private readonly jobs: JobsService,
    private readonly takeoffs: TakeoffsService,
    private readonly quotes: QuotesService,
    private readonly tickets: TicketsService,
    private readonly people: PeopleService,
  ) {}

  @Query('me')
  me(@CurrentActor() actor: Actor) {
    return this.people.me(actor);
  }

  @Query('job')
  job(@CurrentActor() actor: Actor, @Args('id') id: string) {
    return this.jobs.one(actor, id);
  }

  @Query('jobs')
  list(@CurrentActor() actor: Actor, @Args() args: Record<string, unknown>) {
    return this.jobs.list(actor, checked(PageQuery, args));
  }

  @Query('quote')
  quote(@CurrentActor() actor: Actor, @Args('id') id: string) {
    return this.quotes.one(actor, id);
  }

  @Query('ticket')
  ticket(@CurrentActor() actor: Actor, @Args('id') id: string) {
    return this.tickets.one(actor, id);
  }

  @Query('tickets')
  listTickets(@CurrentActor() actor: Actor, @Args() args: Record<string, unknown>) {
    return this.tickets.list(actor, checked(TicketQuery, args));
  }

  @ResolveField('takeoff')
  takeoff(@CurrentActor() actor: Actor, @Parent() job: JobAnswer, @Args() args: Record<string, unknown>) {
    const { detail } = checked(TakeoffQuery, args);
    return detail === undefined ? this.takeoffs.takeoff(actor, job.id) : this.takeoffs.detailed(actor, job.id);
  }

  @ResolveField('findings')
  findings(@CurrentActor() actor: Actor, @Parent() job: JobAnswer, @Args() args: Record<string, unknown>) {
    return this.takeoffs.findings(actor, job.id, checked(PageQuery, args));
  }

  @ResolveField('bracing')
  bracing(@CurrentActor() actor: Actor, @Parent() job: JobAnswer, @Args() args: Record<string, unknown>) {
    return this.takeoffs.bracing(actor, job.id, checked(PageQuery, args));
  }

  @ResolveField('quotes')
  quotesOf(@CurrentActor() actor: Actor, @Parent() job: JobAnswer) {
    return this.quotes.ofJob(actor, job.id);
  }

  @ResolveField('tickets')
  ticketsOf(@CurrentActor() actor: Actor, @Parent() job: JobAnswer) {
    return this.tickets.ofJob(actor, job.id);
  }
}
