import { Body, Controller, Get, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { PageQuery } from '../contract/contract.schemas.js';
import { MeAnswer, NewTokenAnswer, PersonAnswer, PersonBody, PersonList, TokenBody, TokenList } from './people.schemas.js';
import { PeopleService } from './people.service.js';

@ApiTags('people')
@Controller()
export class PeopleController {
  constructor(private readonly service: PeopleService) {}

  @Get('me')
  @Answers(MeAnswer, { summary: 'Who the token speaks for', permission: 'me.read' })
  me(@CurrentActor() actor: Actor) {
    return this.service.me(actor);
  }

  @Get('people')
  @Answers(PersonList, { summary: 'People of the supplier and its contractors', permission: 'person.read' })
  people(@CurrentActor() actor: Actor, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.people(actor, query);
  }

  @Post('people')
  @Answers(PersonAnswer, { summary: 'Add a person', permission: 'person.write', status: 201 })
  addPerson(@CurrentActor() actor: Actor, @Body({ schema: PersonBody }) body: PersonBody) {
    return this.service.addPerson(actor, body);
  }

  @Get('tokens')
  @Answers(TokenList, { summary: 'Bearer tokens, without the tokens themselves', permission: 'token.read' })
  tokens(@CurrentActor() actor: Actor, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.tokens(actor, query);
  }

  @Post('tokens')
  @Answers(NewTokenAnswer, {
    summary: 'Make a bearer token for a person; shown this once',
    permission: 'token.write',
    status: 201,
  })
  addToken(@CurrentActor() actor: Actor, @Body({ schema: TokenBody }) body: TokenBody) {
    return this.service.addToken(actor, body);
  }
}
