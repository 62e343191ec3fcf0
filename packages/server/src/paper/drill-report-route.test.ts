/** The report of a real drill, over real connections to a real server. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { joined, makeDrill, type RoomServer, roomServer } from '../drill-rooms/test-room.ts';
import type { Problem } from '../problem.ts';

let server: RoomServer;
beforeAll(async () => {
  server = await roomServer();
});
afterAll(() => server.close());

const problemIn = async (answer: Response) =>
  (await answer.json()) as Pick<Problem, 'status' | 'title' | 'detail'>;

describe('a drill’s report', () => {
  it('is there once the drill has ended, and not before', async () => {
    const { url } = server;
    const made = await makeDrill(url, {
      evolution: 'boost through valve',
      seed: 7,
      crew: 'B shift',
    });
    const { code, roomId, keys } = made;
    const path = `/paper/drill-report/${roomId}.pdf`;
    const instructor = await joined(url, code, { role: 'instructor', key: keys.instructor });
    const nozzle = await joined(url, code, { role: 'nozzle crew' });
    await nozzle.act({ do: 'radio', message: { text: 'Ready at the nozzle.' } });
    await instructor.act({
      do: 'arm fault',
      fault: { id: 'kink', kind: 'hose kinked', hose: 'lay', factor: 20 },
    });
    const early = await server.ask(path);
    expect(early.status).toBe(409);
    expect(await problemIn(early)).toMatchObject({ title: 'Still runs' });

    const ended = nozzle.next('ended');
    instructor.say({ type: 'end' });
    await ended;
    const answer = await server.ask(`${path}?paper=a4&units=si`);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    const pdf = Buffer.from(await answer.arrayBuffer()).toString('latin1');
    expect(pdf.startsWith('%PDF-1.')).toBe(true);
    expect(pdf.trimEnd().endsWith('%%EOF')).toBe(true);
    expect(pdf).toContain('/MediaBox [0 0 595.28 841.89]');
    // Score and charts on the first page, the log on another.
    expect((pdf.match(/\/Type \/Page\b/g) ?? []).length).toBe(2);
  });

  it('of no such drill is 404', async () => {
    const answer = await server.ask('/paper/drill-report/01JZ0000000000000000000000.pdf');
    expect(answer.status).toBe(404);
    expect((await problemIn(answer)).detail).toContain('/api/drill-runs');
  });

  it('on paper that there is not is refused by name', async () => {
    const answer = await server.ask('/paper/drill-report/any.pdf?paper=a5');
    expect(answer.status).toBe(400);
    expect((await problemIn(answer)).detail).toContain('letter or a4');
  });
});
