import { Button as AriaButton, Menu, MenuItem, MenuTrigger, Popover, Separator } from 'react-aria-components';
import { Icon } from '../look/icon.tsx';
import { type Contrast, setLook, type Theme, useLook } from '../look/theme.ts';

const themes: readonly { readonly id: Theme; readonly text: string }[] = [
  { id: 'system', text: 'As the system' },
  { id: 'light', text: 'Light' },
  { id: 'dark', text: 'Dark' },
];

/** Light, dark, as the system; normal or high contrast. */
export function ThemeSwitch() {
  const look = useLook();
  const toggled: Contrast = look.contrast === 'high' ? 'normal' : 'high';
  return (
    <MenuTrigger>
      <AriaButton className="button" data-weight="quiet" aria-label="Look: light, dark, contrast">
        <Icon name="look" />
      </AriaButton>
      <Popover className="menu-place" placement="bottom end">
        <Menu
          className="menu"
          aria-label="Look"
          onAction={(key) => {
            const theme = themes.find((each) => each.id === key);
            setLook(theme === undefined ? { ...look, contrast: toggled } : { ...look, theme: theme.id });
          }}
        >
          {themes.map((theme) => (
            <MenuItem key={theme.id} id={theme.id} className="menu-item" textValue={theme.text}>
              <span className="menu-mark">{look.theme === theme.id ? <Icon name="check" size={14} /> : null}</span>
              {theme.text}
            </MenuItem>
          ))}
          <Separator className="menu-split" />
          <MenuItem id="contrast" className="menu-item" textValue="High contrast">
            <span className="menu-mark">{look.contrast === 'high' ? <Icon name="check" size={14} /> : null}</span>
            High contrast
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
