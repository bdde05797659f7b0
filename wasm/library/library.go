//go:build js && wasm

// Command library is the calculation without a page, for other pages and for Node: public/cohoist.mjs loads it,
// public/cohoist.d.mts says what it can do.
package main

import (
	"errors"

	"cohoist/core/advice"
	"cohoist/core/handover"
	"cohoist/core/link"
	"cohoist/core/plan"
	"cohoist/core/report"
)

// calls are what the library does with a text, by name.
var calls = map[string]func(string) (string, error){
	"report": func(text string) (string, error) {
		p, err := read(text)
		if err != nil {
			return "", err
		}
		return string(report.JSON(report.Build(p))), nil
	},
	"advice": func(text string) (string, error) {
		p, err := read(text)
		if err != nil {
			return "", err
		}
		a, _ := advice.Of(p, nil)
		return string(advice.JSON(report.Build(p), a)), nil
	},
	"encode": func(text string) (string, error) {
		p, err := read(text)
		if err == nil && !link.Fits(p) {
			err = errors.New("The plan is too long for a link; plans above 1 MB travel as files.")
		}
		if err != nil {
			return "", err
		}
		return link.Encode(p), nil
	},
	"decode": func(fragment string) (string, error) {
		p, err := link.Decode(fragment)
		if err != nil {
			return "", err
		}
		return string(plan.Encode(p)), nil
	},
}

// files are the documents of core/handover for a plan.
func files(text string) ([]handover.File, error) {
	p, err := read(text)
	if err != nil {
		return nil, err
	}
	l, err := handover.Of(p)
	if err != nil {
		return nil, err
	}
	return l.Files(), nil
}

// read takes a plan; the error has a line a fault.
func read(text string) (plan.Plan, error) {
	p, faults := plan.Read([]byte(text))
	if len(faults) > 0 {
		return p, faults
	}
	return p, nil
}
