export type * from './schedule.js';
export type { ScheduleContext } from './schedule-context.js';
export * from './schedule-limits.js';
export { readScheduleDocument, SCHEDULE_FORMAT } from './read-schedule-document.js';
