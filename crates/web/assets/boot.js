// Begins the page: the engine first, then the service worker that keeps it for use without a network.
import init, { begin } from './groundhold_web.js';

const app = document.getElementById('app');
try {
  await init({ module_or_path: new URL('./groundhold_web_bg.wasm', import.meta.url) });
  app.replaceChildren();
  begin(app);
} catch (error) {
  const p = document.createElement('p');
  p.className = 'loading';
  p.setAttribute('role', 'alert');
  p.textContent = `The engine could not be started: ${error}. A browser of 2023 or later is needed; nothing that was stored is lost.`;
  app.replaceChildren(p);
  throw error;
}
if ('serviceWorker' in navigator && window.isSecureContext) {
  navigator.serviceWorker.register('sw.js').catch((error) => console.warn('not kept for offline use:', error));
}
