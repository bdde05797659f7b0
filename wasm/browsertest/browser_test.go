//go:build !js

// Package browsertest uses the page as a person does, in headless Chromium. The site is built anew, without
// compression, into a folder of its own and served with the headers of the local server.
package browsertest

import (
	"context"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"cohoist/wasm/serve/site"
)

var (
	browser context.Context
	address string
	built   string // folder of the site
)

func TestMain(m *testing.M) { os.Exit(run(m)) }

func run(m *testing.M) int {
	dir, err := os.MkdirTemp("", "cohoist-site-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(dir)
	built = dir
	build := exec.Command("go", "run", "./wasm/site", "-plain", "-out", dir)
	build.Dir = filepath.Join("..", "..")
	if text, err := build.CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "the site does not build: %v\n%s", err, text)
		return 1
	}
	server := httptest.NewServer(site.Handler(dir))
	defer server.Close()
	address = server.URL + "/"

	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true))
	alloc, stop := chromedp.NewExecAllocator(context.Background(), opts...)
	defer stop()
	var end context.CancelFunc
	browser, end = chromedp.NewContext(alloc)
	defer end()
	if err := chromedp.Do(browser); err != nil {
		fmt.Fprintln(os.Stderr, "Chromium does not start:", err)
		return 1
	}
	return m.Run()
}

// page is a tab of its own, with its own storage. What goes to the console as an error fails the
// test when it ends.
type page struct {
	t   *testing.T
	ctx context.Context

	mu     sync.Mutex
	errors []string
}

// phone and dark are what a tab can be.
type look struct {
	width, height int64
	phone, dark   bool
	print         bool
}

var desktop = look{width: 1440, height: 900}

// open opens the page and waits until the program runs.
func open(t *testing.T, l look, fragment string) *page {
	t.Helper()
	p := tab(t, l)
	p.visit(fragment)
	return p
}

// tab opens an empty tab.
func tab(t *testing.T, l look) *page {
	t.Helper()
	ctx, cancel := chromedp.NewContext(browser, chromedp.WithNewBrowserContext())
	ctx, stop := context.WithTimeout(ctx, 60*time.Second)
	p := &page{t: t, ctx: ctx}
	t.Cleanup(func() {
		p.mu.Lock()
		for _, e := range p.errors {
			t.Errorf("console: %s", e)
		}
		p.mu.Unlock()
		stop()
		cancel()
	})
	p.do()
	messages := chromedp.Console(ctx)
	go func() {
		for m, err := range messages {
			if err != nil {
				return
			}
			if m.Type == chromedp.ConsoleError || m.IsException() {
				p.mu.Lock()
				p.errors = append(p.errors, m.Text)
				p.mu.Unlock()
			}
		}
	}()
	var how []chromedp.EmulateViewportOption
	if l.phone {
		how = append(how, chromedp.EmulateScale(2), chromedp.EmulateMobile, chromedp.EmulateTouch)
	}
	p.do(chromedp.EmulateViewport(l.width, l.height, how...))
	p.media(l)
	return p
}

// media sets the colour scheme and whether the page is on paper.
func (p *page) media(l look) {
	m := emulation.SetEmulatedMediaParams{}
	scheme := "light"
	if l.dark {
		scheme = "dark"
	}
	m.Features = []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}}
	if l.print {
		m.Media = "print"
	}
	p.do(func(ctx context.Context, _ *chromedp.Target) (chromedp.Void, error) {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, m)
		return chromedp.Void{}, err
	})
}

// visit goes to the page, with a fragment or none, and waits until the program runs.
func (p *page) visit(fragment string) {
	p.t.Helper()
	p.do(chromedp.Navigate(address + fragment))
	p.ready()
}

func (p *page) ready() {
	p.t.Helper()
	p.wait(`document.getElementById("boot") && document.getElementById("boot").hidden`)
}

func (p *page) do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	if err := chromedp.Do(p.ctx, steps...); err != nil {
		p.t.Fatal(err)
	}
}

// wait waits until a condition holds.
func (p *page) wait(condition string) {
	p.t.Helper()
	if _, err := chromedp.Run(p.ctx, chromedp.Poll[bool](condition, chromedp.WithPollingTimeout(15*time.Second))); err != nil {
		p.t.Fatalf("waiting for %s: %v", condition, err)
	}
}

// drawn waits until what was done is on the screen: the page draws in the browser's next frame, and
// waits some frames for a report that is due.
func (p *page) drawn() {
	p.t.Helper()
	said := eval[string](p, `new Promise(done => { let n = 6; const next = () => n-- ? requestAnimationFrame(next) : done(document.getElementById("boot").textContent); next() })`)
	if said != "" {
		p.t.Errorf("the page says: %s", said)
	}
}

// eval runs JavaScript and returns its value; promises are awaited.
func eval[T any](p *page, expression string) T {
	p.t.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		p.t.Fatalf("%s: %v", expression, err)
	}
	return v
}

// text is the text of the element with an id; "" when there is none.
func (p *page) text(id string) string {
	p.t.Helper()
	return eval[string](p, `(document.getElementById("`+id+`")||{textContent:""}).textContent`)
}

// value is the text in an input.
func (p *page) value(id string) string {
	p.t.Helper()
	return eval[string](p, `document.getElementById("`+id+`").value`)
}

// write puts text into an input as a person does: select all, type, one key after another.
func (p *page) write(id, text string) {
	p.t.Helper()
	eval[any](p, `(()=>{const e=document.getElementById("`+id+`");e.focus();e.select()})()`)
	if text == "" {
		text = "\b"
	}
	p.do(chromedp.KeyEvent(text))
	p.drawn()
}

func (p *page) click(id string) {
	p.t.Helper()
	p.do(chromedp.Click(chromedp.CSS("#" + id)))
	p.drawn()
}

// choose picks an option of a select.
func (p *page) choose(id, value string) {
	p.t.Helper()
	eval[any](p, `(()=>{const e=document.getElementById("`+id+`");e.value="`+value+`";e.dispatchEvent(new Event("change",{bubbles:true}))})()`)
	p.drawn()
}

// key presses a key with Ctrl, and Shift when it is an upper-case letter.
func (p *page) ctrl(key string) {
	p.t.Helper()
	shift := strings.ToUpper(key) == key
	eval[any](p, fmt.Sprintf(`document.activeElement.dispatchEvent(new KeyboardEvent("keydown",{key:%q,ctrlKey:true,shiftKey:%v,bubbles:true,cancelable:true}))`, key, shift))
	p.drawn()
}
