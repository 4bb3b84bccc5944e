import { convert } from '../../../planner/units/convert.ts';
import { QuantityField } from '../../fields/quantity-field.tsx';

/** A bore: kept in metres, entered and shown in millimetres or inches. */
export function BoreField({
  label,
  path,
  value_m,
  onChange,
  hint,
}: {
  readonly label: string;
  readonly path?: string;
  readonly value_m: number | null;
  readonly onChange: (value_m: number | null) => void;
  readonly hint?: string;
}) {
  return (
    <QuantityField
      label={label}
      unit="mm"
      value={value_m === null ? null : convert(value_m, 'm', 'mm')}
      onChange={(value) => onChange(value === null ? null : convert(value, 'mm', 'm'))}
      {...(path === undefined ? {} : { path })}
      {...(hint === undefined ? {} : { hint })}
    />
  );
}
