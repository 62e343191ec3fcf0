import { formatHoseSize, type HoseSize, hoseSizes } from '@plugside/fireground';
import { useView } from '../plan-store/view.ts';
import { Choice } from './Choice.tsx';

interface HoseChoiceProps {
  label: string;
  value: HoseSize;
  onChange(value: HoseSize): void;
}

/** A hose size out of the catalogue. */
export function HoseChoice({ label, value, onChange }: HoseChoiceProps) {
  const system = useView((view) => view.units);
  const options = hoseSizes.map((size) => ({ value: size, text: formatHoseSize(size, system) }));
  return <Choice label={label} value={value} options={options} onChange={onChange} />;
}
