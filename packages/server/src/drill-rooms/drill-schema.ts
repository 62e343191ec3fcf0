/** What the drills' routes take and answer with. */
import { z } from '@hono/zod-openapi';
import { isPlainText, playedRoles } from '@plugside/drill';

const seconds = z.number().min(0).max(86_400);
const count = z.int().min(0).max(1_000);
const psi = z.number().min(0).max(500);

/** Keys of `Benchmarks`; each left out keeps the drill's own. */
const benchmarksSchema = z
  .strictObject({
    nozzleSuppliedShare: z.number().min(0).max(1),
    interruptedS: seconds,
    intakePsi: psi,
    intakeUnderS: seconds,
    mainPsi: psi,
    mainUnderS: seconds,
    hoseOverS: seconds,
    nozzleSwingPsi: psi,
    swingWindowS: z.number().min(0.1).max(60),
    boostWithinS: seconds,
    stepsOutOfOrder: count,
    wrongConnections: count,
    messagesMissed: count,
    surgesOverLimit: count,
    openedFast: count,
    hydrantOpenS: seconds,
    handleOpenS: seconds,
    largeOpenS: seconds,
    lineOpenS: seconds,
    stepsUndone: count,
    unsafeActs: count,
    extraLineS: seconds,
  })
  .partial();

/** A name in the department's words. */
const name = z.string().trim().min(1).max(120).refine(isPlainText, 'plain text');

export const newDrillSchema = z
  .strictObject({
    evolution: z.string().max(80).optional().openapi({ description: 'Key of one that ships' }),
    hydrantId: z.string().max(40).optional().openapi({
      description: 'A hydrant among the records, in the place of the evolution’s first one',
    }),
    plan: z.string().max(1_000_000).optional().openapi({ description: 'A plan file, as YAML' }),
    planId: z.string().max(40).optional().openapi({ description: 'A plan among the records' }),
    start: z
      .enum(['hose laid', 'hose connected', 'water flowing'])
      .optional()
      .openapi({ description: 'Of a plan; an evolution has its own' }),
    title: name.optional(),
    crew: name.optional().openapi({ description: 'Who drills: "B shift". No names of persons.' }),
    guided: z.boolean().optional().openapi({ description: 'Roles are shown their next step' }),
    benchmarks: benchmarksSchema.optional(),
    faults: z
      .array(z.record(z.string(), z.unknown()))
      .max(20)
      .optional()
      .openapi({ description: 'Faults that wait for their tick, as an instructor arms them' }),
    seed: z
      .int()
      .min(0)
      .max(4_294_967_295)
      .optional()
      .openapi({ description: 'Of what is random; drawn where left out' }),
  })
  .openapi('NewDrill');

export const madeDrillSchema = z
  .object({
    roomId: z.string(),
    code: z.string().openapi({ description: 'To join by', example: 'KTMRB' }),
    keys: z
      .object({
        instructor: z.string(),
        watch: z.string().openapi({
          description: 'To watch with; eight letters, to be typed at the wall’s computer',
          example: 'KTMRBWXZ',
        }),
      })
      .openapi({
        description: 'Told this once; a role’s own key is told to the device that takes it',
      }),
    live: z.string().openapi({ description: 'Path of its WebSocket' }),
  })
  .openapi('MadeDrill');

const roleSchema = z.object({
  role: z.enum(playedRoles),
  seat: z.enum(['free', 'taken', 'computer']),
  connected: z.boolean(),
});

export const runningDrillSchema = z
  .object({
    roomId: z.string(),
    title: z.string(),
    evolution: z.string().optional(),
    crew: z.string().optional(),
    startedAt: z.string(),
    timeS: z.number().openapi({ description: 'Of the drill’s own time [s]' }),
  })
  .openapi('RunningDrill');

export const drillFactsSchema = runningDrillSchema
  .extend({
    code: z.string(),
    state: z.enum(['running', 'paused']),
    roles: z.array(roleSchema),
    instructors: z.int(),
    observers: z.int(),
  })
  .openapi('DrillFacts');

const judgementSchema = z.record(z.string(), z.unknown());

export const drillRunSchema = runningDrillSchema
  .extend({
    endedAt: z.string().optional().openapi({ description: 'Left out while it runs' }),
    result: z.array(judgementSchema).optional().openapi({
      description: 'Each criterion with its value, its benchmark and whether it is met',
    }),
  })
  .openapi('DrillRun');

export const replaySchema = z
  .object({
    roomId: z.string(),
    title: z.string(),
    crew: z.string().optional(),
    startedAt: z.string(),
    scene: z.record(z.string(), z.unknown()),
    seed: z.int(),
    tick: z.int().openapi({ description: 'Where it stands, or ended' }),
    log: z.array(z.record(z.string(), z.unknown())),
    result: z.array(judgementSchema).optional(),
  })
  .openapi('DrillReplay');

export const endedSchema = z
  .object({ roomId: z.string(), result: z.array(judgementSchema) })
  .openapi('EndedDrill');
