export type * from './schedule.js';
export type { ScheduleContext } from './schedule-context.js';
export type { RefusalCode } from './file-refusal.js';
export * from './schedule-limits.js';
export { readScheduleDocument, SCHEDULE_FORMAT } from './read-schedule-document.js';
export { readSchedule, type ScheduleRefusal, type UploadedFile } from './read-schedule.js';
