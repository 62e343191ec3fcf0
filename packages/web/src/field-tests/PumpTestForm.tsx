import { type PumpReading, type PumpTestEntry, pumpCurve } from '@plugside/fireground';
import type { FieldsIn } from '@plugside/records/model';
import { useMemo } from 'react';
import { useUnits } from '../editing/use-units.ts';
import { dayAheadWords } from './day-ahead.ts';
import { NET_PRESSURE, PUMP_FLOW, SPEED } from './field-ranges.ts';
import { MeasureField } from './MeasureField.tsx';
import { PumpTestGraph } from './PumpTestGraph.tsx';
import { PumpTestNumbers } from './PumpTestNumbers.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import { ownFields, type Row, rowOf, unfinished, withRow, written } from './reading-rows.ts';
import { DayOfTest, TestScreen, WhoAndNote } from './TestScreen.tsx';
import { type KeptTyping, useTestDraft } from './use-test-draft.ts';

export type PumpTestFields = FieldsIn<'pump-tests'>;

interface PumpTestFormProps {
  rigId: string;
  rigName: string;
  /** Rated capacity [gpm] at 150 psi net; undefined where the rig has none. */
  ratedGpm: number | undefined;
  initial?: Partial<PumpTestFields>;
  /** The rig's other tests. */
  earlier?: readonly PumpTestEntry[];
  /** ISO date. */
  today: string;
  onSave(fields: PumpTestFields): void | Promise<void>;
  onCancel?: () => void;
  /** Where typing is kept until it is saved. */
  kept?: KeptTyping;
}

type Draft = { [Name in keyof PumpReading]: number | undefined };

const NONE: readonly PumpTestEntry[] = [];
/** The rating's own points, with readings to fill in. */
const STAGES = [1, 0.7, 0.5];

const complete = ({ value }: Row<Draft>): PumpReading[] =>
  value.flowGpm !== undefined && value.netPsi !== undefined
    ? [written({ flowGpm: value.flowGpm, netPsi: value.netPsi, speedRpm: value.speedRpm })]
    : [];

const EMPTY: Draft = { flowGpm: undefined, netPsi: undefined, speedRpm: undefined };

const begun = (initial: Partial<PumpTestFields> | undefined, today: string) => ({
  testedOn: initial?.testedOn ?? today,
  by: initial?.by ?? '',
  note: initial?.note ?? '',
  rows: initial?.points
    ? initial.points.map((point) => rowOf<Draft>({ ...point, speedRpm: point.speedRpm }))
    : STAGES.map(() => rowOf<Draft>(EMPTY)),
});

/** A pump test as it is written down, with the rig's curve drawn while the numbers come in. */
export function PumpTestForm(props: PumpTestFormProps) {
  const { rigId, rigName, ratedGpm, initial, earlier = NONE, today, onSave, onCancel } = props;
  const units = useUnits();
  const [draft, put, unread] = useTestDraft(props.kept, () => begun(initial, today), EMPTY);
  const { testedOn, by, note, rows } = draft;
  const change = (key: number, part: Partial<Draft>) => put({ rows: withRow(rows, key, part) });
  const points = useMemo(() => rows.flatMap(complete), [rows]);
  const curve = useMemo(() => {
    const id = 'being written';
    return pumpCurve([...earlier, { id, testedOn, points }], ratedGpm, { chosenId: id });
  }, [earlier, testedOn, points, ratedGpm]);
  const ahead = dayAheadWords(testedOn, today);
  const missing =
    ahead ??
    (testedOn === ''
      ? 'Enter the date of the test first.'
      : points.length === 0
        ? 'Enter the flow and the net pressure of one reading or more.'
        : unfinished(rows, ['flowGpm', 'netPsi', 'speedRpm'], ['flowGpm', 'netPsi']));
  return (
    <TestScreen
      spoken={`Pump test of ${rigName}`}
      title={`Pump test, ${rigName}`}
      intro={
        <>
          {ratedGpm !== undefined &&
            `Rated ${units.text(ratedGpm, 'flow')} at ${units.text(150, 'pressure')} net. `}
          Net is discharge less intake; at draft, discharge plus lift and suction loss.
        </>
      }
      unread={unread}
      missing={missing}
      onSave={() =>
        onSave(
          written({
            ...ownFields(initial ?? {}),
            rigId,
            testedOn,
            points,
            by: by.trim(),
            note: note.trim(),
          }),
        )
      }
      onCancel={onCancel}
      found={
        <>
          <PumpTestGraph curve={curve} ratedGpm={ratedGpm} earlier={earlier} />
          {points.length > 0 ? (
            <PumpTestNumbers curve={curve} />
          ) : (
            <p className="soft-text">Flow and net pressure of each reading draw the curve.</p>
          )}
        </>
      }
    >
      <div className="test-fields">
        <DayOfTest day={testedOn} onChange={(day) => put({ testedOn: day })} problem={ahead} />
      </div>
      <ReadingTable
        name="Readings"
        heads={['Flow', 'Net pressure', 'Speed']}
        onRemove={(key) => put({ rows: rows.filter((row) => row.key !== key) })}
        onAdd={() => put({ rows: [...rows, rowOf<Draft>(EMPTY)] })}
        rows={rows.map(({ key, value }, index) => ({
          key,
          cells: [
            <MeasureField
              key="flow"
              {...PUMP_FLOW}
              hideLabel
              label={`Flow, reading ${index + 1}`}
              kind="flow"
              at={`${key}.flowGpm`}
              value={value.flowGpm}
              onChange={(flowGpm) => change(key, { flowGpm })}
            />,
            <MeasureField
              key="net"
              {...NET_PRESSURE}
              hideLabel
              label={`Net pressure, reading ${index + 1}`}
              kind="pressure"
              at={`${key}.netPsi`}
              value={value.netPsi}
              onChange={(netPsi) => change(key, { netPsi })}
            />,
            <MeasureField
              key="speed"
              {...SPEED}
              hideLabel
              label={`Speed, reading ${index + 1}`}
              kind="count"
              unit="rpm"
              at={`${key}.speedRpm`}
              value={value.speedRpm}
              onChange={(speedRpm) => change(key, { speedRpm })}
            />,
          ],
        }))}
      />
      <div className="test-fields">
        <WhoAndNote by={by} note={note} onChange={put} />
      </div>
    </TestScreen>
  );
}
