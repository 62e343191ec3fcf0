import type { Adjustments, BuildingField } from '@plugside/fireground';
import { buildingFields, demandByMethods } from '@plugside/fireground';
import type { Stored } from '@plugside/records/model';
import { demandInputs } from '@plugside/records/planning';
import { type ReactNode, useMemo, useState } from 'react';
import { originWords } from '../district/list/Facts.tsx';
import { QuantityField } from '../editing/QuantityField.tsx';
import { DEMAND } from '../editing/ranges.ts';
import { useUnits } from '../editing/use-units.ts';
import { AskedFields } from './AskedFields.tsx';
import { DemandMethods } from './DemandMethods.tsx';
import { FirstDemand } from './FirstDemand.tsx';
import { KeepDemand } from './KeepDemand.tsx';

interface DemandPartProps {
  building: Stored<'buildings'>;
  changes: Adjustments;
  onChange(changes: Adjustments): void;
  /** The method that the demand is by; null where it was entered or is the record's. */
  chosen: string | null;
  onChosen(method: string | null): void;
  /** Beside what it needs. */
  children?: ReactNode;
}

/** What the building needs, where that comes from, and what the public methods say. */
export function DemandPart(props: DemandPartProps) {
  const { building, changes, onChange, chosen, onChosen, children } = props;
  const { system } = useUnits();
  const { inputs: recorded, assumed } = useMemo(() => demandInputs(building), [building]);
  const known = (Object.keys(buildingFields) as BuildingField[]).filter(
    (field) => field in recorded || field in assumed,
  );
  const [inputs, setInputs] = useState(recorded);
  const answers = useMemo(() => demandByMethods(inputs, { units: system }), [inputs, system]);
  const onRecordGpm = building.neededGpm;
  const demandGpm = changes.demandGpm ?? onRecordGpm;
  const set = (neededGpm: number | null, from: string | null) => {
    onChosen(from);
    onChange({ ...changes, demandGpm: neededGpm });
  };
  return (
    <>
      <section className="demand" aria-labelledby="demand">
        <h2 className="section-name" id="demand">
          What it needs
        </h2>
        {demandGpm === undefined ? (
          <FirstDemand onGiven={(gpm) => set(gpm, null)} />
        ) : (
          <p className="demand-figure">
            <QuantityField
              label="Needed fire flow"
              kind="flow"
              size="figure"
              value={demandGpm}
              {...DEMAND}
              onChange={(gpm) => set(gpm, null)}
            />
          </p>
        )}
        <p className="soft-text">
          {changes.demandGpm === null &&
            (onRecordGpm === undefined
              ? 'Not on record: pick what a method says, or enter the flow.'
              : `On record, ${originWords(building.origins.neededGpm)}.`)}
          {changes.demandGpm !== null && (chosen ? `By ${chosen}.` : 'Entered here.')}
        </p>
        {changes.demandGpm !== null && (
          <KeepDemand
            building={building}
            neededGpm={changes.demandGpm}
            method={chosen}
            onBack={onRecordGpm === undefined ? null : () => set(null, null)}
          />
        )}
        {demandGpm !== undefined && <AskedFields changes={changes} onChange={onChange} />}
      </section>
      {children}
      <DemandMethods
        answers={answers}
        inputs={inputs}
        assumed={assumed}
        onInputs={setInputs}
        known={known}
        governing={{
          gpm: demandGpm ?? null,
          method: changes.demandGpm === null ? (building.origins.neededGpm?.text ?? null) : chosen,
        }}
        onChoose={({ neededGpm, title }) => set(Math.round(neededGpm), title)}
      />
    </>
  );
}
