import { Switcher } from '../editing/Switcher.tsx';
import { useView } from '../plan-store/view.ts';

/** Units and theme. */
export function ViewSwitches() {
  const view = useView();
  return (
    <>
      <Switcher
        label="Units"
        value={view.units}
        options={[
          { value: 'us', text: 'psi · gpm' },
          { value: 'si', text: 'bar · L/min' },
        ]}
        onChange={view.setUnits}
      />
      <Switcher
        label="Theme"
        value={view.theme}
        options={[
          { value: 'day', text: 'Day' },
          { value: 'night', text: 'Night' },
          { value: 'system', text: 'Auto', spoken: 'As the device is set' },
        ]}
        onChange={view.setTheme}
      />
    </>
  );
}
