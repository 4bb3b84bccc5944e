import { Button as AriaButton, Menu, MenuItem, MenuTrigger, Popover, Separator } from 'react-aria-components';
import { Icon } from '../look/icon.tsx';
import { type Contrast, setLook, type Theme, useLook } from '../look/theme.ts';
import { say } from '../words/say.ts';

const themes: readonly { readonly id: Theme; readonly text: string }[] = [
  { id: 'system', text: say('As the system') },
  { id: 'light', text: say('Light') },
  { id: 'dark', text: say('Dark') },
];

/** Light, dark, as the system; normal or high contrast. */
export function ThemeSwitch() {
  const look = useLook();
  const toggled: Contrast = look.contrast === 'high' ? 'normal' : 'high';
  return (
    <MenuTrigger>
      <AriaButton className="button" data-weight="quiet" aria-label={say('Look: light, dark, contrast')}>
        <Icon name="look" />
      </AriaButton>
      <Popover className="menu-place" placement="bottom end">
        <Menu
          className="menu"
          aria-label={say('Look')}
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
          <MenuItem id="contrast" className="menu-item" textValue={say('High contrast')}>
            <span className="menu-mark">{look.contrast === 'high' ? <Icon name="check" size={14} /> : null}</span>
            {say('High contrast')}
          </MenuItem>
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
