//go:build !js

package browsertest

import (
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"cohoist/core/example"
	"cohoist/core/link"
	"cohoist/core/plan"
)

// openWhere opens the section on where to attach.
func (p *page) openWhere() {
	p.t.Helper()
	eval[any](p, `document.querySelector("#where > summary").click()`)
	p.wait(`!!document.getElementById("where-find") && document.getElementById("where-pitch").value !== ""`)
}

// linked is an example, changed, as the fragment of an address.
func linked(t *testing.T, name string, change func(*plan.Plan)) string {
	t.Helper()
	p, faults := example.Plan(name)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	change(&p)
	return "#" + link.Encode(p)
}

// A newcomer opens the handrail example and asks where to attach: the answer is proved, and taking it is one
// step that undo takes back.
func TestWhereToAttachTheHandrail(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Handrail")
	p.openWhere()
	if got := p.value("where-pitch"); got != "0.15" {
		t.Errorf("holes every %q m", got)
	}
	p.click("where-find")
	p.wait(`!!document.getElementById("where-take")`)
	if got := p.text("where-proof"); !strings.HasPrefix(got, "Proved: none of 10\u202f660 placements is better") {
		t.Errorf("the proof is %q", got)
	}
	p.click("where-take")
	p.wait(`document.getElementById("where-gist").textContent.startsWith("Taken")`)
	eval[any](p, `document.getElementById("undo").click()`)
	p.wait(`!document.getElementById("where-gist").textContent.startsWith("Taken")`)
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
}

// The same with the vehicles badly placed: the plan fails, and holds with the places taken. A number typed just
// before the button is pressed counts.
func TestTakingPlacesMakesItLift(t *testing.T) {
	p := open(t, desktop, linked(t, "handrail-beam", func(q *plan.Plan) { q.Team[0].Attach[0], q.Team[1].Attach[0] = 1.05, -0.6 }))
	p.wait(`document.getElementById("verdict").classList.contains("is-fail")`)
	p.openWhere()
	p.write("where-pitch", "0,3")
	p.click("where-find")
	p.wait(`!!document.getElementById("where-take")`)
	if got := p.text("where-proof"); !strings.Contains(got, "of 1\u202f330 placements") { // 3 of 21 holes
		t.Errorf("the proof is %q", got)
	}
	p.click("where-take")
	p.wait(`!document.getElementById("verdict").classList.contains("is-fail")`)
}

// What is typed wrong is said in a sentence and disables the search.
func TestABadPitch(t *testing.T) {
	p := open(t, desktop, "")
	p.openWhere()
	p.write("where-pitch", "wide")
	eval[any](p, `document.getElementById("where-pitch").blur()`)
	p.wait(`document.getElementById("where-find").disabled`)
	if got := eval[string](p, `document.querySelector("[data-piece=where-fault-pitch]").textContent`); !strings.Contains(got, "“wide” is not a number") {
		t.Errorf("it says %q", got)
	}
}

// Four of forty holes, the centre of mass uncertain and any one lost: within five seconds, while the page goes on
// drawing. Frames are asserted with COHOIST_PACE only; the machine may be busy with other things.
func TestFourOfFortyHoles(t *testing.T) {
	p := open(t, desktop, linked(t, "handrail-beam", func(q *plan.Plan) {
		d := q.Team[0]
		d.ID, d.Attach[0] = "D", 1.05
		q.Team = append(q.Team, d)
	}))
	p.openWhere()
	eval[any](p, `document.getElementById("where-lost").click()`)
	p.write("where-spacing", "0.45")
	p.write("where-pitch", "0.1538")
	eval[any](p, `document.getElementById("where-pitch").blur()`)
	p.wait(`document.querySelector("[data-piece=where-count]").textContent.startsWith("40 holes")`)
	took := eval[float64](p, `new Promise(done => {
		const from = performance.now();
		new MutationObserver((_, o) => { if (document.getElementById("where-take")) { o.disconnect(); done(performance.now() - from) } }).observe(document.getElementById("where"), {childList: true, subtree: true});
		document.getElementById("where-find").click() })`)
	proof := p.text("where-proof")
	t.Logf("four of forty: %.0f ms. %s", took, proof)
	if took > 5000 || !strings.HasPrefix(proof, "Proved: none of 91\u202f390") {
		t.Errorf("took %.0f ms: %s", took, proof)
	}
}

// While a search runs the page draws every frame, and the search stops when asked.
func TestThePageDrawsWhileItSearches(t *testing.T) {
	p := open(t, desktop, linked(t, "deck-of-eight", func(*plan.Plan) {}))
	p.openWhere()
	p.choose("where-goal", "0 2") // a front over 118 million placements takes hours
	p.write("where-spacing", "0")
	p.wait(`document.getElementById("where-find").textContent === "Find the front"`)
	p.click("where-find")
	p.wait(`!!document.querySelector("#where progress")`)
	rate := eval[float64](p, `new Promise(done => { let n = 0; const from = performance.now();
		const next = () => { n++; const d = performance.now() - from; d < 3000 ? requestAnimationFrame(next) : done(1000 * n / d) }; requestAnimationFrame(next) })`)
	t.Logf("%.1f frames a second while a front is searched for", rate)
	if os.Getenv("COHOIST_PACE") != "" && rate < 50 {
		t.Errorf("%.1f frames a second, wanted 50", rate)
	}
	took := eval[float64](p, `new Promise(done => { const from = performance.now();
		new MutationObserver((_, o) => { if (!document.querySelector("#where progress")) { o.disconnect(); done(performance.now() - from) } }).observe(document.getElementById("where"), {childList: true, subtree: true});
		document.getElementById("where-stop").click() })`)
	t.Logf("stopped after %.0f ms", took)
	if took > 2000 {
		t.Errorf("it took %.0f ms to stop", took)
	}
}

// The strip follows the vehicle that is dragged, beside the page: the drag goes on being answered.
func TestADragBesideTheCostOfAShift(t *testing.T) {
	p := open(t, desktop, "")
	p.example("Handrail")
	p.openWhere()
	p.wait(`!!document.getElementById("where-range")`)
	before := p.text("where-range")
	got := p.drag(2 * time.Second)
	t.Logf("%.1f frames a second with the section open, %.0f answers, an event takes %.1f ms (median)", got.Frames/got.Seconds, got.Answers, got.Median)
	p.wait(`document.getElementById("where-range").textContent !== ` + strconv.Quote(before))
	if got.Answers < 2 {
		t.Error("the answer does not follow the pointer")
	}
	if os.Getenv("COHOIST_PACE") != "" && got.Frames/got.Seconds < 50 {
		t.Errorf("%.1f frames a second, wanted 50", got.Frames/got.Seconds)
	}
}

// On a phone nothing is wider than the screen, whatever the section shows; in the dark all can be read.
func TestWhereOnAPhone(t *testing.T) {
	p := open(t, look{width: 390, height: 844, phone: true, dark: true}, "")
	p.example("Handrail")
	p.openWhere()
	p.click("where-many")
	p.wait(`!!document.getElementById("where-team-3-take")`)
	p.choose("where-goal", "1 2")
	p.wait(`document.getElementById("where-find").textContent === "Find the front"`)
	p.click("where-find")
	p.wait(`!!document.getElementById("where-point-1")`)
	if w := eval[float64](p, `document.documentElement.scrollWidth`); w > 390 {
		t.Errorf("the page is %v wide", w)
	}
	if bad := eval[string](p, contrast); bad != "" {
		t.Error(bad)
	}
	if bad := eval[string](p, `(() => {
		const out = [], seen = new Set();
		for (const e of document.querySelectorAll("#where input, #where select, #where textarea, #where button, #where progress"))
			if (!(e.getAttribute("aria-label") || (e.labels && [...e.labels].map((l) => l.textContent).join("")) || e.textContent).trim()) out.push("no name: " + e.outerHTML);
		for (const e of document.querySelectorAll("[id]")) { if (seen.has(e.id)) out.push("twice: " + e.id); seen.add(e.id); }
		return out.join("\n") })()`); bad != "" {
		t.Error(bad)
	}
	eval[any](p, `document.getElementById("where-point-7").click()`)
	p.wait(`document.getElementById("where-gist").textContent.startsWith("Taken")`)
}
