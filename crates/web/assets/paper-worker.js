// Makes the sheets as PDF beside the page. Its module is fetched when it is first asked for, and kept from then on.
self.onmessage = async (event) => {
  const { files, date } = event.data;
  try {
    const { default: init, pdf } = await import('./groundhold_web_paper.js');
    await init({ module_or_path: new URL('./groundhold_web_paper_bg.wasm', import.meta.url) });
    const bytes = pdf(files.map((f) => f[0]), files.map((f) => f[1]), date);
    self.postMessage({ pdf: bytes }, [bytes.buffer]);
  } catch (error) {
    self.postMessage({ error: String(error) });
  }
};
