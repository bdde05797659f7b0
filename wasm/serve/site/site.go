// Package site serves a built site: strict headers, right types, compressed forms when asked for.
package site

import (
	"net/http"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// Policy is the Content-Security-Policy of the site: nothing from elsewhere, no evaluated text, no
// inline script or style.
const Policy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; " +
	"connect-src 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none'"

var types = map[string]string{".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8",
	".js": "text/javascript; charset=utf-8", ".mjs": "text/javascript; charset=utf-8", ".mts": "text/plain; charset=utf-8", ".wasm": "application/wasm", ".svg": "image/svg+xml",
	".json": "application/json", ".png": "image/png", ".webmanifest": "application/manifest+json", "": "text/plain; charset=utf-8"}

// Handler serves the files of dir.
func Handler(dir string) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
			return
		}
		name := path.Clean("/" + r.URL.Path)
		if name == "/" {
			name = "/index.html"
		}
		kind, known := types[path.Ext(name)]
		if !known {
			http.NotFound(w, r)
			return
		}
		h := w.Header()
		h.Set("Content-Security-Policy", Policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cache-Control", "no-cache")
		h.Set("Vary", "Accept-Encoding")
		h.Set("Content-Type", kind)
		file := filepath.Join(dir, filepath.FromSlash(name))
		for _, c := range []struct{ coding, ext string }{{"br", ".br"}, {"gzip", ".gz"}} {
			if accepts(r, c.coding) && exists(file+c.ext) {
				h.Set("Content-Encoding", c.coding)
				file += c.ext
				break
			}
		}
		f, err := os.Open(file)
		if err != nil {
			h.Del("Content-Encoding")
			http.NotFound(w, r)
			return
		}
		defer f.Close()
		i, err := f.Stat()
		if err != nil || i.IsDir() {
			http.NotFound(w, r)
			return
		}
		http.ServeContent(w, r, "", i.ModTime(), f)
	})
}

func accepts(r *http.Request, coding string) bool {
	for _, part := range strings.Split(r.Header.Get("Accept-Encoding"), ",") {
		name, q, _ := strings.Cut(strings.TrimSpace(part), ";")
		if name == coding && strings.ReplaceAll(q, " ", "") != "q=0" {
			return true
		}
	}
	return false
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
