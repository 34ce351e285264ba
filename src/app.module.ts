import { Module, type DynamicModule } from '@nestjs/common';
import { FeaturesModule } from './modules/features.module.js';
import type { Platform } from './platform/platform.js';
import { PlatformModule } from './platform/platform.module.js';

@Module({})
export class AppModule {
  static on(platform: Platform): DynamicModule {
    return { module: AppModule, imports: [PlatformModule.on(platform), FeaturesModule] };
  }
}
