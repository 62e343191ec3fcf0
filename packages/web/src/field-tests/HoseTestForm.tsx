import { fitCoefficient, type HoseReading, type HoseSize, hoseSizes } from '@plugside/fireground';
import type { FieldsIn } from '@plugside/records/model';
import { useMemo } from 'react';
import { Checkbox } from 'react-aria-components';
import { HoseChoice } from '../editing/HoseChoice.tsx';
import { useUnits } from '../editing/use-units.ts';
import { dayAheadWords } from './day-ahead.ts';
import { HOSE_FLOW, HOSE_LOSS, TEST_LENGTH } from './field-ranges.ts';
import { HoseTestGraph } from './HoseTestGraph.tsx';
import { HoseTestNumbers } from './HoseTestNumbers.tsx';
import { MeasureField } from './MeasureField.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import { ownFields, type Row, rowOf, unfinished, withRow, written } from './reading-rows.ts';
import { DayOfTest, TestScreen, WhoAndNote } from './TestScreen.tsx';
import { type KeptTyping, useTestDraft } from './use-test-draft.ts';

export type HoseTestFields = FieldsIn<'hose-tests'>;

interface HoseTestFormProps {
  initial?: Partial<HoseTestFields>;
  /** ISO date. */
  today: string;
  onSave(fields: HoseTestFields): void | Promise<void>;
  onCancel?: () => void;
  /** Where typing is kept until it is saved. */
  kept?: KeptTyping;
}

type Draft = { [Name in keyof HoseReading]: number | undefined };

const empty = (lengthFt?: number): Row<Draft> =>
  rowOf<Draft>({ flowGpm: undefined, lossPsi: undefined, lengthFt });

const complete = ({ value: { flowGpm, lossPsi, lengthFt } }: Row<Draft>): HoseReading[] =>
  flowGpm !== undefined && lossPsi !== undefined && lengthFt !== undefined
    ? [{ flowGpm, lossPsi, lengthFt }]
    : [];

const sizeOf = (text: string | undefined): HoseSize =>
  hoseSizes.find((size) => size === text) ?? '5';

const begun = (initial: Partial<HoseTestFields> | undefined, today: string) => ({
  size: sizeOf(initial?.size) as string,
  testedOn: initial?.testedOn ?? today,
  by: initial?.by ?? '',
  note: initial?.note ?? '',
  adopted: initial?.adopted ?? false,
  rows: initial?.points?.map((point) => rowOf<Draft>(point)) ?? [empty(), empty(), empty()],
});

/** Losses measured through a hose, with its coefficient fitted while the numbers come in. */
export function HoseTestForm({ initial, today, onSave, onCancel, kept }: HoseTestFormProps) {
  const units = useUnits();
  const [draft, put, unread] = useTestDraft(kept, () => begun(initial, today), empty().value);
  const { testedOn, by, note, adopted, rows } = draft;
  const size = sizeOf(draft.size);
  const change = (key: number, part: Partial<Draft>) => put({ rows: withRow(rows, key, part) });
  const points = useMemo(() => rows.flatMap(complete), [rows]);
  const fit = useMemo(() => fitCoefficient(points, size), [points, size]);
  const adopts = adopted && fit.coefficient !== null;
  const ahead = dayAheadWords(testedOn, today);
  const missing =
    ahead ??
    (testedOn === ''
      ? 'Enter the date of the test first.'
      : points.length === 0
        ? 'Enter flow, loss and length of one reading or more.'
        : unfinished(rows, ['flowGpm', 'lossPsi'], ['flowGpm', 'lossPsi', 'lengthFt']));
  return (
    <TestScreen
      spoken="Hose test"
      title="Hose test"
      intro={
        <>
          Loss is the gauge upstream less the gauge downstream, on level ground: take off{' '}
          {units.system === 'us' ? '0.434 psi for each ft' : '0.1 bar for each m'} that the hose
          climbs.
        </>
      }
      unread={unread}
      missing={missing}
      onSave={() =>
        onSave(
          written({
            ...ownFields(initial ?? {}),
            size,
            testedOn,
            points,
            adopted: adopts,
            by: by.trim(),
            note: note.trim(),
          }),
        )
      }
      onCancel={onCancel}
      found={
        <>
          <HoseTestGraph fit={fit} readings={points} />
          {points.length > 0 ? (
            <HoseTestNumbers fit={fit} />
          ) : (
            <p className="soft-text">Flow, loss and length of each reading give the coefficient.</p>
          )}
        </>
      }
    >
      <div className="test-fields">
        <div className="test-field">
          <span className="test-label">Hose</span>
          <HoseChoice label="Hose size" value={size} onChange={(next) => put({ size: next })} />
        </div>
        <DayOfTest day={testedOn} onChange={(day) => put({ testedOn: day })} problem={ahead} />
      </div>
      <ReadingTable
        name="Readings"
        heads={['Flow', 'Loss', 'Length']}
        onRemove={(key) => put({ rows: rows.filter((row) => row.key !== key) })}
        onAdd={() => put({ rows: [...rows, empty(rows.at(-1)?.value.lengthFt)] })}
        rows={rows.map(({ key, value }, index) => ({
          key,
          cells: [
            <MeasureField
              key="flow"
              {...HOSE_FLOW}
              hideLabel
              label={`Flow, reading ${index + 1}`}
              kind="flow"
              at={`${key}.flowGpm`}
              value={value.flowGpm}
              onChange={(flowGpm) => change(key, { flowGpm })}
            />,
            <MeasureField
              key="loss"
              {...HOSE_LOSS}
              hideLabel
              label={`Loss, reading ${index + 1}`}
              kind="pressure"
              at={`${key}.lossPsi`}
              value={value.lossPsi}
              onChange={(lossPsi) => change(key, { lossPsi })}
            />,
            <MeasureField
              key="length"
              {...TEST_LENGTH}
              hideLabel
              label={`Length, reading ${index + 1}`}
              kind="length"
              at={`${key}.lengthFt`}
              value={value.lengthFt}
              onChange={(lengthFt) => change(key, { lengthFt })}
            />,
          ],
        }))}
      />
      <div className="test-fields">
        <WhoAndNote by={by} note={note} onChange={put} />
      </div>
      <Checkbox
        className="test-check"
        isSelected={adopts}
        isDisabled={fit.coefficient === null}
        onChange={(yes) => put({ adopted: yes })}
      >
        <span className="check-box" aria-hidden="true" />
        Plans use this coefficient for {units.hose(size)} hose
      </Checkbox>
    </TestScreen>
  );
}
