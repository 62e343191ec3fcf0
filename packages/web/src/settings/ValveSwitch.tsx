import type { Line } from '@plugside/fireground';
import { Switcher } from '../editing/Switcher.tsx';
import { patchLine } from '../plan-store/edits/pieces.ts';
import { usePlan } from '../plan-store/plan-store.ts';

/** The valve at a line's upstream end. A valve that is gated stays so until it is moved. */
export function ValveSwitch({ line, name }: { line: Line; name: string }) {
  const change = usePlan((state) => state.change);
  const gated = typeof line.valve === 'object';
  const options = [
    { value: 'open', text: 'Open' },
    ...(gated ? [{ value: 'gated', text: 'Gated' }] : []),
    { value: 'shut', text: 'Shut' },
  ];
  return (
    <Switcher
      label={`Valve of ${name}`}
      value={typeof line.valve === 'object' ? 'gated' : line.valve}
      options={options}
      onChange={(valve) => {
        if (valve === 'open' || valve === 'shut') {
          change('Line valve', (now) => patchLine(now, line.id, { valve }));
        }
      }}
    />
  );
}
