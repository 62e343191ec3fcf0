import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { Switcher } from '../editing/Switcher.tsx';
import { useView } from '../plan-store/view.ts';

/** Units and theme: side by side where there is room, behind a button on a phone. */
export function ViewSwitches() {
  return (
    <>
      <div className="view-inline">
        <Choices />
      </div>
      <div className="view-folded">
        <DialogTrigger>
          <Button className="quiet-button">View ▾</Button>
          <Popover className="popover">
            <Dialog className="view-choices" aria-label="Units and theme">
              <Choices />
            </Dialog>
          </Popover>
        </DialogTrigger>
      </div>
    </>
  );
}

function Choices() {
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
