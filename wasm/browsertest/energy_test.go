//go:build !js

package browsertest

import (
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
)

// How long they hold: the fact beside the verdict leads to the section, a row opens its working, a field changes the answer, and a static test
// that lacks a column, has decimal commas and repeats a row is opened with clear words and used.
func TestHowLongTheyHold(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Beam for the landing")
	p.wait(`document.getElementById("fact-hold").textContent.includes("9\u202fmin 33\u202fs")`)
	p.do(chromedp.Click(chromedp.CSS("#fact-hold button")))
	p.wait(`document.querySelectorAll("#energy-list details").length === 2`)
	p.do(chromedp.Click(chromedp.CSS("#energy-0 > summary")))
	p.wait(`document.querySelector("#energy-0 .steps").getBoundingClientRect().height > 100`)
	eval[any](p, `document.querySelectorAll("#energy .fold").forEach(g => { g.open = true })`)
	p.write("f-vehicles-field-quad-battery-capacity-ah", "4,5")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("fact-hold").textContent.includes("4\u202fmin") && document.getElementById("energy-0").open`) // what is opened stays so
	paste := func(text string) {
		p.wait(`document.getElementById("energy-bench-0-text") !== null`)
		eval[any](p, `(() => { const a = document.getElementById("energy-bench-0-text"); a.value = `+strconv.Quote(text)+`; a.dispatchEvent(new Event("change", {bubbles: true})) })()`)
	}
	says := func(text string) {
		p.wait(`document.getElementById("energy").textContent.includes(` + quote(text) + `)`)
	}
	paste("thrust (g);amps (A)\n100,5;2\n300,5;4\n")
	says("The file has no column for power, and none for voltage and current to compute it from.")
	paste("Schub;Leistung (W)\n200;14,2\n500;46,5\n500;46,9\n900;103,8\n1400;196,5\n1900;311,0\n")
	says("The file has no column for thrust.")
	p.choose("energy-bench-0-col-thrust", "0")
	says("Choose the unit of thrust")
	p.choose("energy-bench-0-unit-thrust", "gf")
	says("The file has no column for power")
	p.choose("energy-bench-0-col-power", "1")
	says("Its numbers have decimal commas.")
	says("1 row repeats a throttle or a thrust and was averaged with it.")
	p.wait(`document.querySelector("#energy .en-plot svg") !== null`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.click("energy-bench-0-use")
	says("The plan uses a static test of field-quad with 5 rows.")
	p.click("undo")
	says("The plan has no static test of field-quad.")
}

// The longest hold is a way to share that the sentence offers: verdict, drawing and section follow, undo brings even effort back, and where packs are not
// known the page says what lacks and gets it. A propeller's coefficients are used by a button.
func TestTheLongestHold(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Crate of lamp")
	p.wait(`document.getElementById("fact-hold").textContent.includes("E ends first")`)
	p.choose("s-policy", "equal-endurance")
	p.wait(`document.getElementById("fact-hold").textContent.includes("A ends first")`)
	p.wait(`document.body.textContent.includes("The load is shared for equal endurance: it is held for 11 min, 1 % longer than with even effort.")`)
	p.do(chromedp.Click(chromedp.CSS("#fact-hold button")))
	p.wait(`document.querySelector("#energy-even-1 summary") !== null && document.getElementById("energy-even").textContent.includes("The plan shares for the longest hold")`)
	p.do(chromedp.Click(chromedp.CSS("#energy-even-1 > summary")))
	p.wait(`document.querySelector("#energy-even-1 .steps").getBoundingClientRect().height > 100`)
	eval[any](p, `document.querySelectorAll("#energy .fold").forEach(g => { g.open = true })`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	p.write("f-vehicles-field-quad-battery-capacity-ah", "")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.body.textContent.includes("vehicles.field-quad.battery.energy_wh is missing")`)
	p.write("f-vehicles-field-quad-battery-energy-wh", "200")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("fact-hold") !== null && document.getElementById("fact-hold").textContent.includes("min")`)
	coef := func(name string) string {
		return eval[string](p, `[...document.querySelectorAll("[id^='set-energy-coef']")].map(e => e.id).find(id => id.endsWith(".`+name+`"))`)
	}
	p.write(coef("ct"), "0.1")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("energy").textContent.includes("Both C_T and C_P are wanted.")`)
	p.write(coef("cp"), "0.04")
	eval[any](p, `document.activeElement.blur()`)
	p.wait(`document.getElementById("energy-bench-0-coef-use") !== null`)
	p.click("energy-bench-0-coef-use")
	p.wait(`document.getElementById("f-vehicles-field-quad-figure-of-merit").value === "0.630783"`)
	for range 2 {
		p.click("undo")
	}
	p.wait(`document.body.textContent.includes("vehicles.field-quad.battery.energy_wh is missing")`)
}
