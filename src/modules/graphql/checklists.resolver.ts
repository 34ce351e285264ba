import { Args, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { TickBody } from '../checklists/checklists.schemas.js';
import { ChecklistsService } from '../checklists/checklists.service.js';
import { PageQuery } from '../contract/contract.schemas.js';
import type { JobAnswer } from '../jobs/jobs.schemas.js';
import { checked } from './checked-arguments.js';

@Resolver('Job')
export class ChecklistsResolver {
  constructor(private readonly checklists: ChecklistsService) {}

  @ResolveField('checklist')
  checklist(@CurrentActor() actor: Actor, @Parent() job: JobAnswer, @Args() args: Record<string, unknown>) {
    return this.checklists.list(actor, job.id, checked(PageQuery, args));
  }

  @Mutation('tickChecklistItem')
  tick(@CurrentActor() actor: Actor, @Args() { job, item, ...said }: ItemArguments) {
    return this.checklists.tick(actor, job, item, null, checked(TickBody, said));
  }

  @Mutation('untickChecklistItem')
  untick(@CurrentActor() actor: Actor, @Args() { job, item, ...said }: ItemArguments) {
    return this.checklists.untick(actor, job, item, null, checked(TickBody, said));
  }
}

interface ItemArguments {
  readonly job: string;
  readonly item: string;
  readonly note?: string | null;
}
