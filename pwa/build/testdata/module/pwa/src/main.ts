import './main.css'; document.title = __WORKER_URL__ + __WASM_URL__;
