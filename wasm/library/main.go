//go:build js && wasm

package main

import (
	"fmt"
	"os"
	"syscall/js"

	"cohoist/wasm/bytes"
)

// main hands its functions to the global function that its argument names, and stays to answer them.
func main() {
	api := js.Global().Get("Object").New()
	for name, call := range calls {
		api.Set(name, answering(func(text string) (any, error) { return call(text) }))
	}
	api.Set("files", answering(func(text string) (any, error) {
		list, err := files(text)
		out := make([]any, len(list))
		for i, f := range list {
			out[i] = map[string]any{"name": f.Name, "line": f.Line, "data": bytes.To(f.Data)}
		}
		return out, err
	}))
	js.Global().Call(os.Args[1], api)
	select {}
}

// answering is a function of one text for JavaScript. It returns an object with a value, or with an error in words: nothing
// crosses as a panic, which would end the program.
func answering(call func(string) (any, error)) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) (answer any) {
		defer func() {
			if r := recover(); r != nil {
				answer = map[string]any{"error": fmt.Sprint("The calculation failed: ", r)}
			}
		}()
		if len(args) != 1 || args[0].Type() != js.TypeString {
			return map[string]any{"error": "The function takes one text."}
		}
		value, err := call(args[0].String())
		if err != nil {
			return map[string]any{"error": err.Error()}
		}
		return map[string]any{"value": value}
	})
}
