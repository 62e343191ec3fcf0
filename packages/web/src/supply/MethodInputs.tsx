import type {
  BuildingField,
  BuildingForDemand,
  DemandAnswer,
  DemandMethod,
} from '@plugside/fireground';
import { useState } from 'react';
import { DemandInput } from './DemandInput.tsx';

interface MethodInputsProps {
  answer: DemandAnswer;
  /** Shown above for all methods. */
  known: readonly BuildingField[];
  inputs: BuildingForDemand;
  onInputs(inputs: BuildingForDemand): void;
}

/** What a method turns on, asked even where it answers without. */
const TURNS_ON: Partial<Record<DemandMethod, readonly BuildingField[]>> = {
  'area and involvement': ['storeysInvolved', 'involvedShare', 'exposures'],
};

const HINTS: Partial<Record<BuildingField, string>> = {
  storeysInvolved: 'All of them where left out',
  involvedShare: 'Of those floors: 0.25 is a quarter. All where left out',
  exposureFactor: 'X, 0 to 0.25',
  communicationFactor: 'P, 0 to 0.35',
  areaFt2: 'Goes before length times width',
};

/**
 * The inputs that one method takes beside those known: what it waits for or turns on, and the rest
 * on request. What was asked for once stays, so that a figure can be changed or taken away again.
 */
export function MethodInputs({ answer, known, inputs, onInputs }: MethodInputsProps) {
  const { method, inputs: takes, unanswered } = answer;
  const [asked, setAsked] = useState<readonly BuildingField[]>(TURNS_ON[method] ?? []);
  const news = (unanswered?.fields ?? []).filter((field) => !asked.includes(field));
  if (news.length > 0) setAsked([...asked, ...news]);
  const own = takes.filter((field) => !known.includes(field));
  const first = own.filter((field) => asked.includes(field) || news.includes(field));
  const rest = own.filter((field) => !first.includes(field));
  const fields = (some: readonly BuildingField[]) => (
    <div className="demand-inputs">
      {some.map((field) => (
        <DemandInput
          key={field}
          field={field}
          inputs={inputs}
          note={HINTS[field]}
          onInputs={onInputs}
        />
      ))}
    </div>
  );
  return (
    <>
      {unanswered && (
        <p className={unanswered.problem ? 'tone-warning' : 'soft-text'}>{unanswered.text}</p>
      )}
      {first.length > 0 && fields(first)}
      {rest.length > 0 && (
        <details className="more-facts">
          <summary>What else it takes</summary>
          {fields(rest)}
        </details>
      )}
    </>
  );
}
