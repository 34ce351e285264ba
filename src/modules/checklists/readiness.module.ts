import { Module } from '@nestjs/common';
import { ReadinessRepository } from './readiness.repository.js';
import { Readiness } from './readiness.js';

@Module({ providers: [Readiness, ReadinessRepository], exports: [Readiness] })
export class ReadinessModule {}
