import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { AppModule } from './app.module.js';
import { createServer } from './platform/http/create-server.js';
import type { Platform } from './platform/platform.js';

/** The whole API on a platform, ready to listen. */
export const createApp = (platform: Platform): Promise<NestFastifyApplication> => createServer(platform, AppModule.on(platform));
