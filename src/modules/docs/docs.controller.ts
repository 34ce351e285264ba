import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Controller, Get, Header } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { PACKAGE_ROOT } from '../../platform/config/package-root.js';
import { AnswersRaw } from '../contract/answers.js';
import { DOCS_PAGE } from './docs-page.js';

export const OPENAPI_FILE = join(PACKAGE_ROOT, 'shared', 'contracts', 'openapi.json');

@ApiTags('docs')
@Controller()
export class DocsController {
  @Get('openapi.json')
  @Header('content-type', 'application/json; charset=utf-8')
  @AnswersRaw(['application/json'], { summary: 'This document', permission: null })
  openapi(): Promise<string> {
    return readFile(OPENAPI_FILE, 'utf8');
  }

  @Get('docs')
  @Header('content-type', 'text/html; charset=utf-8')
  @AnswersRaw(['text/html'], { summary: 'This document, to read', permission: null })
  page(): string {
    return DOCS_PAGE;
  }
}
