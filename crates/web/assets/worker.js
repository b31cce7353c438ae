// A second engine beside the page: finds out what remedies cost while the first one answers the finger.
import init, { cost_of_remedies } from './groundhold_web.js';

const ready = init({ module_or_path: new URL('./groundhold_web_bg.wasm', import.meta.url) });
self.onmessage = async (event) => {
  const { ask, pack } = event.data;
  try {
    await ready;
    self.postMessage({ ask, answer: cost_of_remedies(pack) });
  } catch (error) {
    self.postMessage({ ask, error: String(error) });
  }
};
