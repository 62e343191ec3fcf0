import { type Adjustments, usualFireLinePdpPsi, usualMarginShare } from '@plugside/fireground';
import { Button } from 'react-aria-components';
import { QuantityField } from '../editing/QuantityField.tsx';
import { type EntryKind, type EntryRange, shownEntry } from '../editing/quantity-entry.ts';
import { FIRE_LINE_PDP, MARGIN_SHARE } from '../editing/ranges.ts';
import { useUnits } from '../editing/use-units.ts';

interface AskedFieldsProps {
  changes: Adjustments;
  onChange(changes: Adjustments): void;
}

/** What ways are asked besides the demand: flow to spare, and pressure for the lines at the fire. */
export function AskedFields({ changes, onChange }: AskedFieldsProps) {
  const { marginShare, fireLinePdpPsi, ...rest } = changes;
  return (
    <ul className="asked">
      <AskedField
        label="To spare, of the demand"
        kind="share"
        range={MARGIN_SHARE}
        value={marginShare}
        usual={usualMarginShare}
        onChange={(share) =>
          onChange({
            ...rest,
            ...(fireLinePdpPsi !== undefined && { fireLinePdpPsi }),
            ...(share !== undefined && { marginShare: share }),
          })
        }
      />
      <AskedField
        label="Discharge pressure for the lines at the fire"
        kind="pressure"
        range={FIRE_LINE_PDP}
        value={fireLinePdpPsi}
        usual={usualFireLinePdpPsi}
        onChange={(psi) =>
          onChange({
            ...rest,
            ...(marginShare !== undefined && { marginShare }),
            ...(psi !== undefined && { fireLinePdpPsi: psi }),
          })
        }
      />
    </ul>
  );
}

interface AskedFieldProps {
  label: string;
  kind: EntryKind;
  range: EntryRange;
  /** Undefined: the usual. */
  value: number | undefined;
  usual: number;
  onChange(value: number | undefined): void;
}

function AskedField({ label, kind, range, value, usual, onChange }: AskedFieldProps) {
  const { system } = useUnits();
  const { number, unit } = shownEntry(usual, kind, system);
  return (
    <li>
      <span className="asked-label">{label}</span>
      {value === undefined ? (
        <span className="soft-text">default</span>
      ) : (
        <Button className="quiet-button" onPress={() => onChange(undefined)}>
          Back to {number} {unit}
          <span className="hidden-text">, the default: {label}</span>
        </Button>
      )}
      <QuantityField
        label={label}
        kind={kind}
        value={value ?? usual}
        {...range}
        onChange={(next) => onChange(Math.abs(next - usual) < 1e-9 ? undefined : next)}
      />
    </li>
  );
}
