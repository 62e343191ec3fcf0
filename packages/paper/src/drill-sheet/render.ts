/** A drill sheet on paper: the evolution drawn, what each crew does, what is looked for. */
import type { Readable } from 'node:stream';
import { nameOf, profileOf } from '@plugside/fireground';
import { checklist } from '../sheet/checklist.ts';
import { inTens } from '../sheet/figures.ts';
import { cautions, sources } from '../sheet/notes.ts';
import type { PaperOptions } from '../sheet/options.ts';
import { documentOf, type Sheet } from '../sheet/sheet.ts';
import { type Cell, table } from '../sheet/table.ts';
import { comesToGpm, enginesOf } from './at-fire.ts';
import type { DrillSheet } from './data.ts';
import { schematic } from './schematic.ts';

/** Of one source; of several each gets less [pt]. */
const DRAWING_HEIGHT = 224;
const EACH_HEIGHT = 142;

/**
 * A plan's drill sheet as a PDF: an overview, a checklist for each role, and the evaluation.
 * @returns the PDF as it is made
 */
export function renderDrillSheet(drill: DrillSheet, options: PaperOptions): Readable {
  return documentOf(`Drill sheet, ${drill.title}`, options, (sheet) => {
    const { full } = sheet.figures;
    sheet.begin({
      kind: 'Drill sheet',
      name: drill.title,
      aside: `${full(drill.demandGpm - drill.shortGpm, 'flow')} at the scene`,
      from: 'the plan, solved',
      invented: drill.invented,
    });
    if (drill.shortGpm > 0.5) {
      sheet.y += 2;
      cautions(
        sheet,
        [
          `This plan falls ${full(drill.shortGpm, 'flow')} short of its demand: the sheet is for the most that it gives.`,
        ],
        12,
      );
    }
    if (drill.note) sheet.paragraph(drill.note.replace(/\s+/g, ' '), { size: 10 });
    if (drill.supply) sheet.paragraph(drill.supply, { size: 12, bold: true });
    drawing(sheet, drill);
    settings(sheet, drill);
    sheet.heading('Before you begin', { withPt: 50 });
    cautions(sheet, drill.cautions, 9.5);
    for (const role of drill.roles) {
      sheet.heading(`${role.role}: ${role.who}`, {
        aside: 'tick when done; write the time',
        withPt: 60,
      });
      checklist(sheet, role.steps, { size: 12, numbered: true, blank: 'time' });
    }
    sheet.heading('Benchmarks', {
      aside: 'the department’s own targets; fill in where blank',
      withPt: 60,
    });
    checklist(
      sheet,
      drill.benchmarks.map(({ text, target }) => ({ text, ...(target && { target }) })),
      { size: 12, blank: 'time' },
    );
    sheet.heading('Looked for by the evaluator', { withPt: 60 });
    checklist(
      sheet,
      drill.points.map((text) => ({ text })),
      { size: 11.5 },
    );
    sheet.heading('Where the numbers come from', { withPt: 40 });
    sources(sheet, drill.sources, { size: 8.5, columns: 2 });
  });
}

function drawing(sheet: Sheet, { plan, state }: DrillSheet): void {
  const profile = profileOf(plan, state);
  const legs = Math.max(1, profile.supply.length);
  const height = legs > 1 ? EACH_HEIGHT : DRAWING_HEIGHT;
  sheet.heading('The evolution, and the pressure along it', {
    aside: 'hookups not to scale; dashed: least intake',
    withPt: height,
  });
  for (let leg = 0; leg < legs; leg += 1) {
    if (leg > 0) sheet.need(height + 18);
    if (legs > 1) {
      const brings = sheet.figures.full(profile.supply[leg]!.flowGpm, 'flow');
      sheet.paragraph(`${profile.supply[leg]!.label}: ${brings}`, { size: 10, bold: true });
    }
    schematic(sheet, plan, profile, leg, {
      x: sheet.left,
      y: sheet.y + 2,
      width: sheet.width,
      height,
    });
    sheet.y += height + 2;
  }
}

function settings(sheet: Sheet, drill: DrillSheet): void {
  const { bare, unit } = sheet.figures;
  sheet.heading('Settings', { withPt: 60 });
  const rows = drill.orders.map((order): Cell[] => {
    const rig = drill.plan.rigs.find(({ id }) => id === order.id);
    const state = drill.state.rigs.find(({ id }) => id === order.id);
    const idle = order.setting.mode === 'idle' || order.pdpPsi <= 0;
    const scene = order.id === drill.plan.scene;
    // A plan that ends at the scene's intake says nothing of its lines.
    const ends =
      (scene || !rig) &&
      drill.plan.lines.every(({ from }) => !from.startsWith(`${drill.plan.scene}.`));
    const engine = enginesOf(drill.plan).find(
      ({ name }) => name === (rig ? nameOf(rig) : order.id),
    );
    const sceneState = drill.state.rigs.find(({ id }) => id === drill.plan.scene);
    const intake = engine ? sceneState : state;
    const flowGpm = engine
      ? comesToGpm(engine.lines, drill.state)
      : scene
        ? drill.state.sceneGpm
        : (state?.flowGpm ?? Number.NaN);
    return [
      rig ? nameOf(rig) : order.id,
      intake ? bare(intake.intakePsi, 'pressure') : '—',
      idle || ends ? '—' : bare(order.pdpPsi, 'pressure'),
      bare(flowGpm, 'flow'),
      `${ends ? 'Sets what its lines need. ' : ''}“${inTens(order.radio)}”`,
    ];
  });
  table(
    sheet,
    [
      { head: 'Rig', share: 2.4, size: 12, bold: true },
      { head: 'Intake', unit: unit('pressure'), share: 0.9, number: true, size: 14 },
      { head: 'Set to', unit: unit('pressure'), share: 1, number: true, size: 15, bold: true },
      { head: 'Flow', unit: unit('flow'), share: 1.1, number: true, size: 14 },
      { head: 'Says', share: 4.2, size: 10.5 },
    ],
    rows,
    { rowPt: 23 },
  );
}
