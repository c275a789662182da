package main

import (
	"errors"
	"runtime"

	"rimside/calc/registry"
)

// call runs one calculation and answers as the server would: 200, 404 or 422. A panic becomes a 500 with its stack, for the
// page to show, never a dead button.
func call(name string, body []byte, run func(string, []byte) ([]byte, error)) (status int, answer []byte) {
	defer func() {
		if caught := recover(); caught != nil {
			status, answer = 500, panicked(caught, stack())
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

// stack is where the panic happened. (Package runtime/debug would bring all of fmt into the browser's download.)
func stack() []byte {
	text := make([]byte, 8<<10)
	return text[:runtime.Stack(text, false)]
}

func panicked(caught any, stack []byte) []byte {
	message := "a fault in the calculation"
	switch c := caught.(type) {
	case error:
		message = c.Error()
	case string:
		message = c
	}
	return registry.PanicJSON(message, string(stack))
}
