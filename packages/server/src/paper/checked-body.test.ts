import { z } from '@hono/zod-openapi';
import { describe, expect, it } from 'vitest';
import { ProblemError } from '../problem.ts';
import { checkedBody } from './checked-body.ts';
import { buildingPlanSchema, drillSheetSchema } from './plan-requests.ts';

function issuesFor(schema: z.ZodType, given: unknown): Record<string, unknown>[] {
  try {
    checkedBody(schema, given);
  } catch (error) {
    if (error instanceof ProblemError) {
      return error.problem.extra!.issues as Record<string, unknown>[];
    }
    throw error;
  }
  return [];
}

describe('a body that is refused', () => {
  it.each([
    [
      { demandGpm: 50_000 },
      'demandGpm is 50000 gpm; allowed: a number from 1 to 20,000 gpm.',
      'Send demandGpm as a number from 1 to 20,000 gpm, or leave it out.',
    ],
    [
      { demandGpm: 'lots' },
      'demandGpm is "lots"; allowed: a number from 1 to 20,000 gpm.',
      'Send demandGpm as a number from 1 to 20,000 gpm, or leave it out.',
    ],
    [
      { fireLinePdpPsi: 10 },
      'fireLinePdpPsi is 10 psi; allowed: a number from 50 to 400 psi.',
      'Send fireLinePdpPsi as a number from 50 to 400 psi, or leave it out.',
    ],
    [
      { arrivesMin: { E3: -3 } },
      'arrivesMin.E3 is -3 min; allowed: a number from 0 to 240 min.',
      'Send arrivesMin.E3 as a number from 0 to 240 min, or leave it out.',
    ],
    [
      { marginShare: 3 },
      'marginShare is 3; allowed: a number from 0 to 2.',
      'Send marginShare as a number from 0 to 2, or leave it out.',
    ],
    [
      { paper: 'a5' },
      'paper is "a5"; allowed: letter or a4.',
      'Send paper as letter or a4, or leave it out.',
    ],
    [
      { buildingId: undefined },
      'buildingId is left out; allowed: text of at most 40 characters.',
      'Send buildingId as text of at most 40 characters.',
    ],
  ])('%o names field, value, range with its unit, and what to do', (given, message, remedy) => {
    const issues = issuesFor(buildingPlanSchema, { buildingId: 'B1', ...given });
    expect(issues).toHaveLength(1);
    expect(issues[0]).toMatchObject({ message, remedy });
    expect(message).toContain(String(issues[0]!.allowed));
  });

  it('names what it does not know and what it does', () => {
    const [issue] = issuesFor(buildingPlanSchema, { buildingId: 'B1', demand: 900 });
    expect(issue).toMatchObject({ path: 'demand', value: 900, remedy: 'Leave demand out.' });
    expect(issue!.message).toContain('demandGpm');
  });

  it('tells every fault of a list by its place', () => {
    const issues = issuesFor(drillSheetSchema, {
      plan: 'x',
      duties: [{ rigId: 'E1', rigName: '', duty: 'lays' }, 7],
    });
    expect(issues.map(({ path }) => path)).toEqual(['duties.0.rigName', 'duties.1']);
    expect(issues[0]!.message).toBe(
      'duties.0.rigName is ""; allowed: text of 1 to 120 characters.',
    );
  });

  it('has words for whole numbers and for limits at one end', () => {
    const schema = z.strictObject({
      lines: z.int().min(1).max(6),
      riseFt: z.number().positive(),
      rigs: z.array(z.string()).min(2),
    });
    const messages = issuesFor(schema, { lines: 2.5, riseFt: 0, rigs: ['a'] }).map(
      ({ message }) => message,
    );
    expect(messages).toEqual([
      'lines is 2.5; allowed: a whole number from 1 to 6.',
      'riseFt is 0 ft; allowed: a number, above 0 (ft).',
      'rigs is a list of 1; allowed: a list of 2 or more.',
    ]);
  });
});
