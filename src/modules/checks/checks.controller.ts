import { Body, Controller, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { CalculatorAnswer, CalculatorBody } from './checks.schemas.js';
import { ChecksService } from './checks.service.js';

@ApiTags('checks')
@Controller('checks')
export class ChecksController {
  constructor(private readonly service: ChecksService) {}

  @Post('form-pressure')
  @Answers(CalculatorAnswer, { summary: 'Pressure of fresh concrete on a wall form', permission: 'check.run' })
  formPressure(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'form-pressure', body);
  }

  @Post('cut-stock')
  @Answers(CalculatorAnswer, { summary: 'How few bars or forms make these pieces, and how each is cut', permission: 'check.run' })
  cutStock(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'cut-stock', body);
  }

  @Post('height-stack')
  @Answers(CalculatorAnswer, { summary: 'Courses, strips and a ripped course that stand for a height', permission: 'check.run' })
  heightStack(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'height-stack', body);
  }

  @Post('rise-limit')
  @Answers(CalculatorAnswer, { summary: "How fast a wall may rise for the form's rated pressure", permission: 'check.run' })
  riseLimit(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'rise-limit', body);
  }

  @Post('bend-thrust')
  @Answers(CalculatorAnswer, { summary: 'Thrust of fresh concrete on the forms of a corner', permission: 'check.run' })
  bendThrust(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'bend-thrust', body);
  }

  @Post('hoop-tension')
  @Answers(CalculatorAnswer, { summary: 'Tension along the forms of a curved wall', permission: 'check.run' })
  hoopTension(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'hoop-tension', body);
  }

  @Post('tee')
  @Answers(CalculatorAnswer, { summary: 'Force on the far panel of a tee, and the ties that hold it', permission: 'check.run' })
  tee(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'tee', body);
  }

  @Post('uplift')
  @Answers(CalculatorAnswer, { summary: 'Uplift of a form whose face leans over the concrete', permission: 'check.run' })
  uplift(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'uplift', body);
  }

  @Post('wind')
  @Answers(CalculatorAnswer, { summary: 'Wind on a wall of forms before its structure holds it', permission: 'check.run' })
  wind(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'wind', body);
  }

  @Post('brace')
  @Answers(CalculatorAnswer, { summary: 'Forces of raking braces along a wall', permission: 'check.run' })
  brace(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'brace', body);
  }

  @Post('timber-column')
  @Answers(CalculatorAnswer, { summary: 'Compression a wood brace or shore takes before it buckles', permission: 'check.run' })
  timberColumn(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'timber-column', body);
  }

  @Post('evaporation')
  @Answers(CalculatorAnswer, { summary: 'Rate at which water evaporates from fresh concrete', permission: 'check.run' })
  evaporation(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'evaporation', body);
  }

  @Post('concrete-temperature')
  @Answers(CalculatorAnswer, { summary: 'Temperature of fresh concrete from what goes into it', permission: 'check.run' })
  concreteTemperature(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'concrete-temperature', body);
  }

  @Post('pour-plan')
  @Answers(CalculatorAnswer, { summary: 'Concrete, time and trucks of a lift, its rate of rise and its pressure', permission: 'check.run' })
  pourPlan(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.pourPlan(actor, body);
  }

  @Post('flexure')
  @Answers(CalculatorAnswer, { summary: 'Moment a reinforced section resists', permission: 'check.run' })
  flexure(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'flexure', body);
  }

  @Post('lap')
  @Answers(CalculatorAnswer, { summary: 'Length of a lap of reinforcing bars', permission: 'check.run' })
  lap(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'lap', body);
  }

  @Post('bar-shape')
  @Answers(CalculatorAnswer, { summary: 'Length a bent bar is cut from', permission: 'check.run' })
  barShape(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'bar-shape', body);
  }

  @Post('basement-wall')
  @Answers(CalculatorAnswer, { summary: 'Reactions and moment of a wall under soil', permission: 'check.run' })
  basementWall(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'basement-wall', body);
  }

  @Post('wall-bars')
  @Answers(CalculatorAnswer, { summary: 'Bars of a wall by the prescriptive tables', permission: 'check.run' })
  wallBars(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'wall-bars', body);
  }

  @Post('lintel')
  @Answers(CalculatorAnswer, { summary: 'Bars and stirrups of a lintel', permission: 'check.run' })
  lintel(@CurrentActor() actor: Actor, @Body({ schema: CalculatorBody }) body: CalculatorBody) {
    return this.service.calculate(actor, 'lintel', body);
  }
}
