//go:build !js

package browsertest

import (
	"fmt"
	"testing"
)

// chance does something to the page: a button, a section, a choice, a text in an input, at random. It returns what.
const chance = `(r, s) => {
	const list = [...document.querySelectorAll("main button, main summary, main input, main select, main textarea, #undo, #redo, #new, .units select")]
		.filter(e => e.checkVisibility() && !e.disabled && e.type !== "file" && !e.closest("#hand-on") && !/open|file/i.test(e.textContent));
	const e = list[Math.floor(r * list.length)];
	if (!e) return "nothing";
	const say = () => { for (const t of ["input", "change"]) e.dispatchEvent(new Event(t, {bubbles: true})); };
	const name = e.tagName + " " + (e.id || (e.closest("[id]") || {}).id);
	if (e.tagName === "SELECT") {
		e.value = e.options[Math.floor(s * e.options.length)].value; say();
	} else if (e.tagName === "TEXTAREA" || e.tagName === "INPUT" && !["checkbox", "radio", "range"].includes(e.type)) {
		const texts = ["0", "-1", "1e9", "3", "0.5", "abc", "", "12,5", "1e-9", "99999999999999", "4", "2.5 kg", "<b>x</b>", "∞"];
		e.focus(); e.value = texts[Math.floor(s * texts.length)]; say();
	} else if (e.type === "range") {
		e.value = +e.min + s * (e.max - e.min); say();
	} else e.click();
	return name + " " + (e.value || e.textContent || "").slice(0, 40);
}`

// odd is what no person should ever read on the page.
const odd = `[...document.querySelectorAll("body *")].filter(e => e.children.length === 0 && e.checkVisibility() &&
	/NaN|undefined|\[object|[^a-z]Inf[^a-z]|%!|<nil>|went wrong|stopped with an error|has ended|could not be drawn/.test(e.textContent))
	.map(e => (e.closest("[id]") || {}).id + ": " + e.textContent.slice(0, 120)).join("\n")`

// Whatever is done to the page, in whatever order, it goes on, says nothing that makes no sense, and is no wider than the
// window. An error on the console fails it too.
func TestChance(t *testing.T) {
	for seed := range 2 {
		p := open(t, desktop, "")
		done := eval[[]string](p, fmt.Sprintf(`(async () => {
			let x = %d; const rnd = () => (x = (Math.imul(x, 1664525) + 1013904223) >>> 0) / 4294967296;
			const act = %s, done = [];
			for (let i = 0; i < 120; i++) {
				if (i %% 40 === 20) { // another example
					if (!document.getElementById("examples").open) document.querySelector("#examples > summary").click();
					await new Promise(r => setTimeout(r, 50));
					const all = document.querySelectorAll("#examples button");
					if (all.length) all[Math.floor(rnd() * all.length)].click();
				}
				done.push(act(rnd(), rnd()));
				await new Promise(r => setTimeout(r, rnd() < 0.1 ? 200 : 15));
			}
			await new Promise(r => setTimeout(r, 500));
			return done;
		})()`, seed+1, chance))
		last := fmt.Sprintf("%q", done[max(0, len(done)-12):])
		if bad := eval[string](p, odd); bad != "" {
			t.Errorf("seed %d: %s\nafter %s", seed, bad, last)
		}
		if over := eval[int](p, `document.documentElement.scrollWidth - document.documentElement.clientWidth`); over > 0 {
			t.Errorf("seed %d: %d px too wide after %s", seed, over, last)
		}
		p.drawn()
	}
}
