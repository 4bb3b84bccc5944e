import '../look/tokens.css';
import '../look/base.css';
import '../look/parts.css';
import '../cautions/cautions.css';
import './field.css';
import { speak } from '../words/language.ts';
import { chosenLanguage, readLanguage } from '../words/languages.ts';

const language = await readLanguage(chosenLanguage(null, window.navigator.languages));
speak(language);
document.documentElement.lang = language.code;
const { start } = await import('./start.tsx');
start();
