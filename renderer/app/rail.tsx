import { Icon } from '../look/icon.tsx';
import { say } from '../words/say.ts';
import { addressOf, go, useAddress } from './address.ts';
import { keysOf } from './commands.ts';
import { places } from './places.ts';

/** The ten places. Library and Farm stand apart, being what the others draw on. */
export function Rail() {
  const { place } = useAddress();
  return (
    <nav className="rail" aria-label={say('Places')}>
      <span className="rail-name">{say('Bedwright')}</span>
      <ul>
        {places.map((each) => (
          <li key={each.name}>
            {each.name === 'library' ? <div className="rail-split" /> : null}
            <a
              href={addressOf(each.name)}
              aria-current={each.name === place ? 'page' : undefined}
              title={say('{each} ({keys})', { each: each.title, keys: keysOf(each.name) })}
              onClick={(event) => {
                if (event.ctrlKey || event.metaKey || event.shiftKey) return;
                event.preventDefault();
                go(each.name);
              }}
            >
              <Icon name={each.icon} />
              <span>{each.title}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
