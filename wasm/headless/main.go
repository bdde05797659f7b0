// Command headless prints the report of a plan as JSON.
//
//	go run ./wasm/headless plan.json
//	go run ./wasm/headless - < plan.json
//	go run ./wasm/headless -advice plan.json
//
// With -advice the document has one more key, "advice": why not, what would do, what moves the answer.
// It ends with 0 whatever the verdict. A plan that cannot be read ends with 2 and one line for
// each fault on standard error: the field, what is wrong, what would fix it.
package main

import (
	"fmt"
	"io"
	"os"

	"cohoist/core/advice"
	"cohoist/core/plan"
	"cohoist/core/report"
)

const usage = `usage: headless [-advice] plan.json   print the report of a plan as JSON, with advice beside it
       headless [-advice] -           the same for a plan on standard input`

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run is main with its surroundings passed in, and returns the exit status.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	advise := len(args) == 2 && args[0] == "-advice"
	if advise {
		args = args[1:]
	}
	if len(args) != 1 || args[0] == "-h" || args[0] == "-help" || args[0] == "--help" {
		fmt.Fprintln(errs, usage)
		return 2
	}
	text, err := read(args[0], in)
	if err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	p, faults := plan.Read(text)
	if len(faults) > 0 {
		fmt.Fprintln(errs, faults)
		return 2
	}
	text = report.JSON(report.Build(p))
	if advise {
		a, _ := advice.Of(p, nil)
		text = advice.JSON(report.Build(p), a)
	}
	if _, err := out.Write(text); err != nil {
		fmt.Fprintln(errs, err)
		return 2
	}
	return 0
}

// read takes the plan from a file, or from standard input when name is "-".
func read(name string, in io.Reader) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(in)
	}
	return os.ReadFile(name)
}
