// What the page and the calculator's worker say to each other.

export type ToWorker =
  | { readonly kind: "start"; readonly wasm: string } // absolute URL
  | { readonly kind: "ask"; readonly id: number; readonly name: string; readonly body: string };

// Said is what a calculation said: the body is JSON, an answer (200) or {"errors":[...]}.
export interface Said {
  readonly status: number;
  readonly body: string;
}

export type FromWorker =
  | { readonly kind: "ready" }
  | { readonly kind: "refused"; readonly reason: string } // WASM did not start
  | { readonly kind: "answer"; readonly id: number; readonly status: number; readonly body: string }
  | { readonly kind: "crashed"; readonly reason: string }; // started, and then ended or broke
