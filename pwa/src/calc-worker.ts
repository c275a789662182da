// The calculator's worker: runs the Go program that does the sums, so that the page never waits for them.

import "wasm_exec.js";
import type { FromWorker, ToWorker } from "./calc-protocol.ts";

interface GoProgram {
  readonly importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

interface WorkerScope {
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
  postMessage(message: FromWorker): void;
  Go: new () => GoProgram;
  rimsideCall?: (name: string, body: Uint8Array) => { status: number; body: string };
}

const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data }) => {
  if (data.kind === "start") void start(data.wasm);
  else answer(data);
};

async function start(url: string): Promise<void> {
  try {
    if (typeof WebAssembly === "undefined") throw new Error("this browser has no WebAssembly");
    const program = new scope.Go();
    const instance = await instantiate(url, program.importObject);
    program.run(instance).then(
      () => scope.postMessage({ kind: "crashed", reason: "the calculator ended" }),
      (error: unknown) => scope.postMessage({ kind: "crashed", reason: describe(error) }),
    );
    // run works up to Go's first wait before it returns, and by then the functions are there.
    if (scope.rimsideCall === undefined) throw new Error("the calculator did not announce itself");
    scope.postMessage({ kind: "ready" });
  } catch (error) {
    scope.postMessage({ kind: "refused", reason: describe(error) });
  }
}

async function instantiate(url: string, imports: WebAssembly.Imports): Promise<WebAssembly.Instance> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the calculator could not be fetched: ${response.status}`);
  const copy = response.clone();
  try {
    return (await WebAssembly.instantiateStreaming(response, imports)).instance;
  } catch {
    // A host that sends another content type: the bytes are the same.
    return (await WebAssembly.instantiate(await copy.arrayBuffer(), imports)).instance;
  }
}

function answer(question: Exclude<ToWorker, { kind: "start" }>): void {
  try {
    if (scope.rimsideCall === undefined) throw new Error("not started");
    const { status, body } = scope.rimsideCall(question.name, new TextEncoder().encode(question.body));
    scope.postMessage({ kind: "answer", id: question.id, status, body });
  } catch (error) {
    scope.postMessage({ kind: "crashed", reason: describe(error) });
  }
}

function describe(error: unknown): string {
  return error instanceof Error ? `${error.name}: ${error.message}\n${error.stack ?? ""}` : String(error);
}
