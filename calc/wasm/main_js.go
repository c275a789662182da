// Command wasm is the browser's way in to the calculations: it hangs a function on the page's global object and waits.
//
//	rimsideCall(name, body Uint8Array) -> {status, body}   status as the server would answer
package main

import (
	"syscall/js"

	"rimside/calc/registry"
)

func main() {
	js.Global().Set("rimsideCall", js.FuncOf(func(_ js.Value, args []js.Value) any {
		body := make([]byte, args[1].Get("length").Int())
		js.CopyBytesToGo(body, args[1])
		status, answer := call(args[0].String(), body, registry.Call)
		return map[string]any{"status": status, "body": string(answer)}
	}))
	select {}
}
