//go:build !js

package browsertest

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"cohoist/wasm/serve/site"
)

// host serves a copy of the site from a sub-path, as a plain host might, and ends with the test.
type host struct {
	*httptest.Server
	dir  string
	home string // address of the page
}

func serve(t *testing.T) *host {
	t.Helper()
	h := &host{dir: t.TempDir()}
	if err := os.CopyFS(h.dir, os.DirFS(built)); err != nil {
		t.Fatal(err)
	}
	mux := http.NewServeMux()
	mux.Handle("/lifts/sheet/", http.StripPrefix("/lifts/sheet", site.Handler(h.dir)))
	h.Server = httptest.NewServer(mux)
	t.Cleanup(h.Close)
	h.home = h.URL + "/lifts/sheet/"
	return h
}

// kept visits the page and waits until its files are kept.
func (p *page) kept(h *host) {
	p.t.Helper()
	p.do(chromedp.Navigate(h.home))
	p.ready()
	p.wait(`navigator.serviceWorker.controller !== null`)
}

// offline takes the network from the page; the host is shut as well, which the service worker feels.
func (p *page) offline(h *host) {
	p.t.Helper()
	h.CloseClientConnections()
	h.Close()
	p.do(func(ctx context.Context, _ *chromedp.Target) (chromedp.Void, error) {
		if _, err := chromedp.Call(ctx, network.Enable, network.EnableParams{}); err != nil {
			return chromedp.Void{}, err
		}
		_, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule, network.EmulateNetworkConditionsByRuleParams{
			MatchedNetworkConditions: []*network.Conditions{{Offline: true, DownloadThroughput: -1, UploadThroughput: -1}}})
		return chromedp.Void{}, err
	})
}

// After one visit the page opens and calculates without a network: itself, its second copy for long calculations and
// the studies.
func TestThePageWorksOffline(t *testing.T) {
	h := serve(t)
	p := tab(t, desktop)
	p.kept(h)
	p.offline(h)
	p.do(chromedp.Navigate(h.home + "?again"))
	p.ready()
	if eval[bool](p, `fetch("schema/liftplan-1.json").then(() => true, () => false)`) {
		t.Fatal("there is a network")
	}
	defer p.forgive("ERR_INTERNET_DISCONNECTED")
	p.write("s-mass", "1")
	p.wait(`document.getElementById("verdict").className.includes("is-ok")`)
	p.write("s-mass", "900")
	p.wait(`document.getElementById("verdict").className.includes("is-fail")`)
	p.wait(`document.querySelector("#studies [data-piece]") !== null && document.querySelector("#studies [data-piece]").textContent !== ""`)
	p.example("eight") // worked out in a worker
}

// The service worker keeps the files that it lists, by their content, and nothing else.
func TestNothingElseIsKept(t *testing.T) {
	h := serve(t)
	p := tab(t, desktop)
	p.kept(h)
	eval[any](p, `Promise.all(["sheet.png", "schema/liftplan-1.json", "boot.js?v=000000000000", "nothing.json"].map(f => fetch(f))).then(() => 0)`)
	kept := eval[[]string](p, `caches.keys().then(names => Promise.all(names.map(n => caches.open(n).then(c => c.keys())))).then(all => all.flat().map(r => r.url))`)
	if len(kept) < 15 {
		t.Fatalf("only %d files are kept", len(kept))
	}
	for _, address := range kept {
		name, hash, found := strings.Cut(strings.TrimPrefix(address, h.home), "?sha256=")
		text, err := os.ReadFile(filepath.Join(h.dir, filepath.FromSlash(name)))
		sum := sha256.Sum256(text)
		if err != nil || !found || hex.EncodeToString(sum[:]) != hash {
			t.Errorf("%s is kept: %v", address, err)
		}
	}
	p.forgive("404") // the file that is not there
}

// forgive forgets what the test itself made go wrong.
func (p *page) forgive(word string) {
	p.mu.Lock()
	p.errors = slices.DeleteFunc(p.errors, func(e string) bool { return strings.Contains(e, word) })
	p.mu.Unlock()
}

// A newer version is offered, is not forced, and is taken when asked for.
func TestANewerVersionIsOffered(t *testing.T) {
	h := serve(t)
	p := tab(t, desktop)
	p.kept(h)
	if !eval[bool](p, `document.getElementById("newer").hidden`) {
		t.Error("a first visit is offered a newer version")
	}
	h.publish(t, "<title>Cohoist", "<title>Newer Cohoist")
	p.do(chromedp.Navigate(h.home + "?again"))
	p.ready()
	p.wait(`!document.getElementById("newer").hidden`)
	if title := eval[string](p, `document.title`); strings.HasPrefix(title, "Newer") {
		t.Error("the newer version is there without being asked for")
	}
	if got := p.text("newer"); got != "A newer version is here. Reload" {
		t.Errorf("the offer says %q", got)
	}
	p.write("s-mass", "3.5")
	p.wait(`(localStorage.getItem("cohoist/plan") || "").includes("3.5")`)
	p.do(chromedp.Click(chromedp.CSS("#newer button")))
	for range 100 { // the page that is asked may be the one that goes away
		newer, err := chromedp.Run(p.ctx, chromedp.Evaluate[bool](`document.title.startsWith("Newer")`))
		if err == nil && newer {
			break
		}
		time.Sleep(50 * time.Millisecond)
	}
	p.wait(`document.title.startsWith("Newer")`)
	p.ready()
	if got := p.value("s-mass"); got != "3.5" {
		t.Errorf("after the reload the mass is %q", got)
	}
	if !eval[bool](p, `document.getElementById("newer").hidden`) {
		t.Error("the newer version is offered again")
	}
}

// A host that has a part of a newer version only: nothing is mixed, the old version stays.
func TestHalfAVersionIsNotTaken(t *testing.T) {
	h := serve(t)
	p := tab(t, desktop)
	p.kept(h)
	before := h.read(t, "index.html")
	h.publish(t, "<title>Cohoist", "<title>Newer Cohoist")
	h.write(t, "index.html", before)
	if taken := eval[bool](p, `navigator.serviceWorker.getRegistration().then(r => r.update()).then(r => new Promise(done => {
		const w = r.installing; if (!w) return done(r.waiting !== null); w.onstatechange = () => done(w.state === "installed") }))`); taken {
		t.Error("a version was taken whose files are not those that it lists")
	}
	if !eval[bool](p, `document.getElementById("newer").hidden`) {
		t.Error("half a version is offered")
	}
}

// publish changes the page and the service worker's list, as the builder would.
func (h *host) publish(t *testing.T, was, is string) {
	t.Helper()
	old := h.read(t, "index.html")
	now := strings.Replace(old, was, is, 1)
	if now == old {
		t.Fatalf("%q is not in the page", was)
	}
	hash := func(s string) string { sum := sha256.Sum256([]byte(s)); return hex.EncodeToString(sum[:]) }
	list := h.read(t, "offline.js")
	if !strings.Contains(list, hash(old)) {
		t.Fatal("the page is not on the list")
	}
	h.write(t, "index.html", now)
	h.write(t, "offline.js", strings.Replace(list, hash(old), hash(now), 1))
}

func (h *host) read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(h.dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func (h *host) write(t *testing.T, name, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(h.dir, name), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
