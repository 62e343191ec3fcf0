import { join } from 'node:path';
import { adjusted, asTheyCome, chooseSupply, type SupplyWay } from '@plugside/fireground';
import { fillDemo, openStore, situationAt, storedTerrain } from '@plugside/records';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Plugside, preparePlugside } from './run-plugside.ts';

let plugside: Plugside;
let db: string;

beforeAll(async () => {
  plugside = await preparePlugside();
  db = join(plugside.folder, 'district.sqlite');
  const store = await openStore({ file: db });
  await fillDemo(store);
  await store.close();
}, 120_000);
afterAll(() => plugside.remove());

describe('choose', () => {
  it('lays out the ways for a building on record, those that bring enough first', () => {
    const { status, stdout } = plugside.run(['choose', 'Hotel, 10 Alder Street', '--db', db]);
    expect(status).toBe(0);
    expect(stdout).toMatch(/made up for practice/);
    expect(stdout).toMatch(/Who does what/);
    expect(stdout).toMatch(/Tank water, with 300 gpm from the first lines\n\S/);
    expect(stdout).toMatch(/One more hand line \(150 gpm\) is wanted .*(met|short)/);
    const spare = [...stdout.matchAll(/^ *\d+ {2}.* ([+-])[\d,]+ +\d+:\d\d/gm)].map(
      ([, sign]) => sign,
    );
    expect(spare.length).toBeGreaterThan(3);
    // What ranks is told: the sentence, the time of all the water, mains that may be one.
    const inOneLine = stdout.replace(/\s+/g, ' ');
    expect(inOneLine).toMatch(/Ranked: ways that bring enough, .*of those the soonest with all/);
    expect(inOneLine).toMatch(/Under a minute or 100 ft of hose apart counts as alike\./);
    const { ways } = plugside.json(['choose', 'Hotel, 10 Alder Street', '--db', db]).answer;
    const minutes = (min: number) => {
      const seconds = Math.round(min * 60);
      return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
    };
    const lines = stdout.split('\n');
    ways.slice(0, 12).forEach((way: SupplyWay, index: number) => {
      const line = lines.find((one) => one.trimStart().startsWith(`${index + 1}  ${way.title}`))!;
      expect(line).toMatch(
        new RegExp(` ${minutes(way.time.waterAtMin)} +${minutes(way.time.fullAtMin)} `),
      );
      expect(/little to spare/.test(line)).toBe(way.littleToSpare ?? false);
      const sum = way.mains?.basis === 'not known' && way.mains.apart - way.mains.shared >= 5;
      expect(/ [\d,]+ if one main$/.test(line)).toBe(sum);
    });
    expect(spare).toEqual([...spare].sort());
  });

  it('answers programs in inside units, and people in metric where asked', () => {
    const { answer } = plugside.json(['choose', 'Hotel, 10 Alder Street', '--db', db]);
    expect(answer.ways[0]).toMatchObject({ meetsDemand: true });
    expect(answer.ways[0].mostGpm).toBeGreaterThanOrEqual(answer.demandGpm);
    const si = plugside.run(['choose', 'Hotel, 10 Alder Street', '--db', db, '--units', 'si']);
    expect(si.stdout).toMatch(/Brings, L\/min/);
    expect(si.stdout).not.toMatch(/\d (gpm|psi)\b/);
  });

  it('tells how a pump drafts and how tenders keep up, where the first way has them', () => {
    const pond = ['choose', 'Barn, 175 Pond Lane', '--db', db];
    expect(plugside.run(pond).stdout).toMatch(
      /At draft\n- Engine \d+ at Pond Lane \S+.*: lift \d+ ft[\s\S]*Access: /,
    );
    const little = plugside.run([...pond, '--demand', '200']);
    expect(little.stdout).toMatch(/Tenders from Pond Lane .* filling\nTender +Load, gal/);
  });

  it('calls each engine at the fire by its name', () => {
    const { stdout } = plugside.run(['choose', 'Timber yard, 34 Kiln Way', '--db', db]);
    const said = /Pumps, and what their operators say\n([\s\S]*?)\n\n/.exec(stdout)![1]!;
    const names = said.split('\n').map((line) => line.trim().split(':')[0]!);
    expect(names.length).toBeGreaterThan(2);
    for (const name of names) expect(name).toMatch(/^(Engine|Ladder|Tender) \d$/);
  });

  it('says what is short with exit code 1 where nothing brings enough', () => {
    const asked = ['choose', 'Hotel, 10 Alder Street', '--db', db, '--demand', '12000'];
    const { status, stdout } = plugside.run(asked);
    expect(status).toBe(1);
    expect(stdout).toMatch(/No way brings 12,000 gpm/);
  });

  it('takes flow to spare and pressure for the lines at the fire as the screen does, printed too', async () => {
    const asked = ['--spare', '25%', '--line-pressure', '190 psi', '--db', db];
    const { answer } = plugside.json(['choose', 'Hotel, 10 Alder Street', ...asked]);
    expect(answer.asked).toMatchObject({ marginShare: 0.25, fireLinePdpPsi: 190 });
    // As the screen chooses, from the same records.
    const store = await openStore({ file: db });
    const found = await situationAt(store, answer.building.id, {
      terrain: await storedTerrain(store),
    });
    await store.close();
    const changes = { ...asTheyCome, marginShare: 0.25, fireLinePdpPsi: 190 };
    const { ways, why } = chooseSupply(adjusted(found.situation!, changes));
    const figures = (all: typeof ways) =>
      all.map(({ id, mostGpm, littleToSpare = false }) => [id, mostGpm.toFixed(3), littleToSpare]);
    expect(answer.why).toBe(why);
    expect(figures(answer.ways)).toEqual(figures(ways));
    const print = ['print', 'building-plan', '--building', 'Hotel, 10 Alder Street'];
    const printed = plugside.json([...print, ...asked, '-o', 'asked.pdf']);
    expect(printed.answer.asked).toEqual(answer.asked);
    expect(printed.answer.why).toBe(why);
    expect(printed.answer.way.id).toBe(ways[0]!.id);
    const told = plugside.run(['choose', 'Hotel, 10 Alder Street', ...asked]).stdout;
    expect(told.replace(/\s+/g, ' ')).toMatch(
      /Chosen with: 25 % of the demand \([\d,]+ gpm\) .*: as given\. The lines at the fire need 190 psi .*: as given\./,
    );
  });

  it.each([
    [['choose', 'Nowhere at all'], /No building on record is called "Nowhere at all"/],
    [['choose', 'Hotel'], /Several buildings fit "Hotel"/],
    [['choose', 'Hotel', '--demand', 'lots'], /lots/],
    [['choose', 'Hotel', '--demand', '20001'], /1 to 20,000 gpm/],
    [['choose', 'Hotel', '--hydrants', '99'], /1 to 40/],
    [['choose', 'Hotel', '--spare', '250%'], /0 % to 200 %/],
    [['choose', 'Hotel', '--spare', '0.15'], /in per cent, as 15%/],
    [['choose', 'Hotel', '--line-pressure', '30'], /50 to 400 psi/],
    [
      ['print', 'building-plan', '--building', 'Hotel', '-o', 'x.pdf', '--spare', 'much'],
      /0 % to 200 %/,
    ],
    [
      ['print', 'building-plan', '--building', 'Hotel', '-o', 'x.pdf', '--line-pressure', '40 bar'],
      /50 to 400 psi/,
    ],
  ])('refuses %j with exit code 2 and a remedy', (words, told) => {
    const { status, stderr } = plugside.run([...words, '--db', db]);
    expect(status).toBe(2);
    expect(stderr).toMatch(told);
  });
});
