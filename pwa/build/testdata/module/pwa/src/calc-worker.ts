import 'wasm_exec.js'; postMessage('ready');
