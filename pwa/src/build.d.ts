// What the builder fills in or resolves.

declare const __WORKER_URL__: string;
declare const __WASM_URL__: string;
declare const __VERSION__: string;
declare const __FILES__: readonly string[];

declare module "*.css";

declare module "wasm_exec.js";
