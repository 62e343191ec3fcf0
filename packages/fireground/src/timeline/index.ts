/** Tank water against supply: what happens when, when the tank runs dry, and the flow that bridges the gap. */
export { type LayForTimeline, layTasks, usualTimesOrigin } from './lay-tasks.ts';
export { type ScheduledTask, type SupplyTask, scheduleTasks } from './schedule.ts';
export { supplyOfWay } from './supply-of-way.ts';
export { type TanksOfWay, tanksOfWay } from './tanks-of-way.ts';
export { chargingMin, layingMin } from './task-durations.ts';
export { timeline } from './timeline.ts';
export type { TimelineAnswer, TimelineEvent, TimelineEventKind } from './timeline-answer.ts';
export type {
  AttackTank,
  FlowStep,
  NurseTank,
  TimelineInput,
  TimelineSource,
  TimelineSupply,
} from './timeline-input.ts';
