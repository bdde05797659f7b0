package study

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"
	"time"

	"github.com/vugu/vugu"
	"rsc.io/qr"

	"cohoist/core/link"
	"cohoist/core/plan"
	"cohoist/ui/figure"
	"cohoist/ui/talk"
)

// paper is the end of the printed sheet: who answers for it, and how to open it again.
type paper struct{}

func (paper) See(t *Turn) {
	if !t.Rested() {
		return
	}
	t.Show(talk.Paper, &Paper{Plan: t.Plan, Report: t.Report, Here: t.Here, Now: time.Now()})
}

func (paper) Do(*Turn, string) {}

// address is the link to the plan.
func (c *Paper) address() string { return c.Here + "#" + link.Encode(c.Plan) }

// digest is the start of the SHA-256 (FIPS 180-4) of the plan's canonical text, in groups of four.
func (c *Paper) digest() string {
	sum := sha256.Sum256(plan.Compact(c.Plan))
	h := hex.EncodeToString(sum[:8])
	return h[:4] + " " + h[4:8] + " " + h[8:12] + " " + h[12:]
}

func (c *Paper) date() string { return c.Now.Format("2006-01-02 15:04") }

// sources are the published sources of the numbers in the checks' working; THEORY names the others.
func (c *Paper) sources() []string {
	var list []string
	seen := map[string]bool{"the plan": true}
	for _, r := range c.Report.Checks {
		for _, s := range r.Steps {
			if !seen[s.Source] && !strings.HasPrefix(s.Source, "THEORY") {
				list = append(list, s.Source)
			}
			seen[s.Source] = true
		}
	}
	return list
}

// quiet is the white rim of a QR symbol, in modules (ISO/IEC 18004).
const quiet = 4

// code is the link as a QR symbol, nothing when it is too long for one.
func (c *Paper) code() vugu.Builder {
	symbol, err := qr.Encode(c.address(), qr.L)
	if err != nil {
		return node{figure.HTML("span", figure.Attrs{"class", "qr"})}
	}
	var d []byte
	for y := range symbol.Size {
		for x := 0; x < symbol.Size; x++ {
			from := x
			for x < symbol.Size && symbol.Black(x, y) {
				x++
			}
			if x > from {
				d = append(d, 'M')
				d = figure.Append(d, float64(from+quiet))
				d = append(d, ' ')
				d = figure.Append(d, float64(y+quiet))
				d = append(d, 'h')
				d = figure.Append(d, float64(x-from))
				d = append(d, "v1h-"...)
				d = figure.Append(d, float64(x-from))
				d = append(d, 'z')
			}
		}
	}
	size := figure.Num(float64(symbol.Size + 2*quiet))
	return node{figure.SVG("svg", figure.Attrs{"class", "qr", "viewBox", "0 0 " + size + " " + size, "role", "img", "aria-label", "The link as a QR code", "shape-rendering", "crispEdges"},
		figure.SVG("path", figure.Attrs{"fill", "#fff", "d", "M0 0h" + size + "v" + size + "H0z"}),
		figure.SVG("path", figure.Attrs{"fill", "#000", "d", string(d)}))}
}
