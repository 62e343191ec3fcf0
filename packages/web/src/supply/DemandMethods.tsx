import type { BuildingField, BuildingForDemand, DemandAnswer } from '@plugside/fireground';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useUnits } from '../editing/use-units.ts';
import { DemandInput } from './DemandInput.tsx';
import { type Governing, isGoverning } from './governing.ts';
import { LinesInUse } from './LinesInUse.tsx';
import { MethodInputs } from './MethodInputs.tsx';

interface DemandMethodsProps {
  answers: readonly DemandAnswer[];
  /** Inputs that the record tells of: they stand there whatever is in them. */
  known: readonly BuildingField[];
  inputs: BuildingForDemand;
  assumed: Partial<Record<BuildingField, string>>;
  onInputs(inputs: BuildingForDemand): void;
  governing: Governing;
  onChoose(chosen: { neededGpm: number; title: string }): void;
}

/** Every public method side by side: what it says, how, from where, and what it still needs. */
export function DemandMethods(props: DemandMethodsProps) {
  const { answers } = props;
  // Where nothing is on record yet, they are what helps.
  const [openAtFirst] = useState(props.governing.gpm === null);
  const told = answers.filter(({ neededGpm }) => neededGpm !== null).length;
  return (
    <details className="more-facts methods" open={openAtFirst}>
      <summary>
        What the public methods say: {told} of {answers.length} have what they need
      </summary>
      <KnownInputs {...props} />
      <ul className="method-list">
        {answers.map((answer) => (
          <Method key={answer.method} answer={answer} {...props} />
        ))}
        <LinesInUse governing={props.governing} onChoose={props.onChoose} />
      </ul>
    </details>
  );
}

/** What the methods were given, each changeable. */
function KnownInputs({ known, inputs, assumed, onInputs }: DemandMethodsProps) {
  if (known.length === 0) return null;
  return (
    <fieldset className="demand-inputs">
      <legend className="section-name">Known of the building</legend>
      {known.map((field) => (
        <DemandInput
          key={field}
          field={field}
          inputs={inputs}
          note={assumed[field]}
          onInputs={onInputs}
        />
      ))}
    </fieldset>
  );
}

function Method({
  answer,
  known,
  inputs,
  onInputs,
  governing,
  onChoose,
}: DemandMethodsProps & { answer: DemandAnswer }) {
  const units = useUnits();
  const { title, neededGpm, durationMin, totalGal, steps, source, notices } = answer;
  const governs = neededGpm !== null && isGoverning(governing, title, neededGpm);
  return (
    <li className="method" aria-label={title}>
      <div className="method-head">
        <h3>{title}</h3>
        {neededGpm !== null && (
          <p className="method-figure figures">
            <b>{units.text(neededGpm, 'flow')}</b>
            {durationMin !== undefined && (
              <span className="soft-text"> for {Math.round(durationMin)} min</span>
            )}
            {totalGal !== undefined && durationMin === undefined && (
              <span className="soft-text">, {units.text(totalGal, 'volume')} in all</span>
            )}
          </p>
        )}
        {neededGpm !== null && (
          <Button
            className="plain-button"
            isDisabled={governs}
            onPress={() => onChoose({ neededGpm, title })}
          >
            {governs ? 'Governs' : 'Go by this'}
          </Button>
        )}
      </div>
      <MethodInputs answer={answer} known={known} inputs={inputs} onInputs={onInputs} />
      {steps.length > 0 && (
        <details className="more-facts">
          <summary>How</summary>
          <ol className="method-steps">
            {steps.map(({ text }) => (
              <li key={text}>{text}</li>
            ))}
          </ol>
        </details>
      )}
      {notices.length > 0 && (
        <ul>
          {notices.map(({ level, text }) => (
            <li key={text} className={level === 'fact' ? 'fact' : 'caution'}>
              {level === 'caution' && <span className="caution-shape" aria-hidden="true" />}
              <span>{text}</span>
            </li>
          ))}
        </ul>
      )}
      <p className="fact-origin">
        {source.title}
        {source.edition ? `, ${source.edition}` : ''}
        {source.fromMemory ? '; parts from memory, to be checked against your copy' : ''}
      </p>
    </li>
  );
}
