import type { ButtonHTMLAttributes, ReactNode } from 'react';
import { Icon, type IconName } from '../look/icon.tsx';

type Weight = 'main' | 'plain' | 'quiet' | 'harm';

/** A button. `name` is what it is called when it shows only its mark. */
export function Button({
  weight = 'plain',
  icon,
  name,
  children,
  ...rest
}: {
  readonly weight?: Weight;
  readonly icon?: IconName;
  readonly name?: string;
  readonly children?: ReactNode;
} & ButtonHTMLAttributes<HTMLButtonElement>) {
  return (
    <button type="button" className="button" data-weight={weight} aria-label={name} title={name} {...rest}>
      {icon === undefined ? null : <Icon name={icon} />}
      {children}
    </button>
  );
}
