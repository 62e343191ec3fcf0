import {
  type QuickEstimate as Estimate,
  type LineEstimate,
  type PanelReading,
  quickEstimate,
} from '@plugside/fireground';
import { useMemo, useState } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { Findings } from './Findings.tsx';
import { MAIN_PRESSURE, PANEL_FLOW } from './field-ranges.ts';
import { MeasureField } from './MeasureField.tsx';
import { QuickGraph } from './QuickGraph.tsx';

interface QuickEstimateProps {
  /** Where to start: a hydrant's known static, the flow of a usual line. */
  initial?: Partial<PanelReading>;
}

const NAMES: Record<LineEstimate['method'], string> = {
  percent: 'Percentage',
  'first digit': 'First digit',
  squaring: 'Squaring',
  curve: 'Supply curve',
};

/** At the panel, one line flowing: how many more like it? */
export function QuickEstimate({ initial }: QuickEstimateProps) {
  const [draft, setDraft] = useState<Partial<PanelReading>>(initial ?? {});
  const change = (part: Partial<PanelReading>) => setDraft((before) => ({ ...before, ...part }));
  const found = useMemo(() => {
    const { staticPsi, residualPsi, flowGpm } = draft;
    if (staticPsi === undefined || residualPsi === undefined || flowGpm === undefined) return null;
    const reading = { staticPsi, residualPsi, flowGpm };
    return { reading, estimate: quickEstimate(reading) };
  }, [draft]);
  return (
    <section className="test-screen quick-screen" aria-label="How many more lines">
      <div className="test-form">
        <div className="test-fields">
          <MeasureField
            {...MAIN_PRESSURE}
            label="Static"
            kind="pressure"
            value={draft.staticPsi}
            onChange={(staticPsi) => change({ staticPsi })}
            hint="intake before water flowed"
          />
          <MeasureField
            {...MAIN_PRESSURE}
            label="Residual"
            kind="pressure"
            value={draft.residualPsi}
            onChange={(residualPsi) => change({ residualPsi })}
            hint="intake, one line flowing"
          />
          <MeasureField
            {...PANEL_FLOW}
            label="That line"
            kind="flow"
            value={draft.flowGpm}
            onChange={(flowGpm) => change({ flowGpm })}
            hint="what it flows"
          />
        </div>
        <div role="status">
          {found ? (
            <QuickAnswer estimate={found.estimate} />
          ) : (
            <p className="soft-text">
              Read the intake gauge before water flows and again with one line flowing.
            </p>
          )}
        </div>
        {found && <QuickNumbers estimate={found.estimate} />}
      </div>
      <div className="test-found">{found && <QuickGraph {...found} />}</div>
    </section>
  );
}

function QuickAnswer({ estimate: { curve, moreVolumes } }: { estimate: Estimate }) {
  if (!curve) return null;
  return (
    <p className="test-answer">
      <span className="figure">{curve.moreLines}</span>{' '}
      <span className="answer-unit">more {curve.moreLines === 1 ? 'line' : 'lines'}</span>{' '}
      <span className="soft-text">
        by the supply curve
        {moreVolumes !== null && moreVolumes > 0 && ` (room for ${moreVolumes.toFixed(2)})`}
      </span>
    </p>
  );
}

function QuickNumbers({ estimate }: { estimate: Estimate }) {
  const units = useUnits();
  const { curve, rules, q20Gpm } = estimate;
  return (
    <div className="test-numbers">
      {curve && (
        <>
          <p className="soft-text">
            {units.text(q20Gpm ?? 0, 'flow')} in all before the intake is down to{' '}
            {units.text(20, 'pressure')}.
          </p>
          <table className="test-table">
            <caption className="hidden-text">Each rule beside the curve</caption>
            <thead>
              <tr>
                <th scope="col">By</th>
                <th scope="col">More lines</th>
                <th scope="col">In all</th>
                <th scope="col">Leaves</th>
              </tr>
            </thead>
            <tbody>
              {[curve, ...rules].map((rule) => (
                <tr key={rule.method}>
                  <th scope="row">{NAMES[rule.method]}</th>
                  <td>{rule.moreLines}</td>
                  <td>{units.text(rule.totalGpm, 'flow')}</td>
                  <td className={rule.leftPsi < 20 ? 'tone-warning' : undefined}>
                    {rule.leftPsi < 20 && <span aria-hidden="true">▲ </span>}
                    {rule.leftPsi > 0 ? units.text(rule.leftPsi, 'pressure') : 'nothing'}
                    {rule.leftPsi < 20 && <span className="hidden-text">, too little</span>}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
      <Findings findings={estimate.notices} />
    </div>
  );
}
