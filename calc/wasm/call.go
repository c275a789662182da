package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"runtime/debug"

	"rimside/calc/registry"
)

// call runs one calculation and answers as the server would: 200, 404 or 422. A panic becomes a 500 with its stack, for the
// page to show, never a dead button.
func call(name string, body []byte, run func(string, []byte) ([]byte, error)) (status int, answer []byte) {
	defer func() {
		if caught := recover(); caught != nil {
			status, answer = 500, panicked(caught, debug.Stack())
		}
	}()
	answer, err := run(name, body)
	var fault *registry.Error
	switch {
	case err == nil:
		return 200, answer
	case !errors.As(err, &fault):
		panic(err)
	case fault.Code == registry.CodeUnknown:
		return 404, fault.JSON()
	}
	return 422, fault.JSON()
}

func panicked(caught any, stack []byte) []byte {
	raw, err := json.Marshal(map[string]map[string]string{"error": {
		"code": "panic", "field": "", "message": fmt.Sprint(caught), "details": string(stack),
	}})
	if err != nil { // four strings always encode
		return []byte(`{"error":{"code":"panic","field":"","message":"","details":""}}`)
	}
	return raw
}
