import '@fontsource/barlow/latin-400.css';
import '@fontsource/barlow/latin-600.css';
import '@fontsource/barlow-semi-condensed/latin-400.css';
import '@fontsource/barlow-semi-condensed/latin-600.css';
import './styles/tokens.css';
import './styles/base.css';
import './styles/shell.css';
import './styles/drawing.css';
import './styles/practise.css';
import { render } from 'preact';
import { App } from './app.tsx';
import { partMissing } from './renewed.ts';
import { start } from './start.ts';
import { fetchWords, language } from './words.ts';

document.documentElement.lang = language;
const page = document.getElementById('page');
const starting = start();
// It may fail before there are words to say so with: the page says it then.
starting.catch(() => undefined);
// Without its words the page has nothing to say: the browser's own report of a script that could not be had stands.
fetchWords('first').then(
  () => page && render(<App starting={starting} />, page),
  () => undefined,
);
// A script that is fetched when it is wanted was not to be had.
addEventListener('vite:preloadError', () => {
  partMissing().catch(() => undefined);
});
if ('serviceWorker' in navigator && import.meta.env.PROD) {
  // Without it everything works as long as there is a network.
  navigator.serviceWorker.register('/service-worker.js').catch(() => undefined);
}
