package study

import (
	img "image"
	"image/color"
	"strings"
	"testing"
	"time"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"rsc.io/qr"

	"cohoist/core/example"
	"cohoist/core/link"
	"cohoist/core/plan"
	"cohoist/core/report"
	"cohoist/ui/talk"
)

// The QR code of every example reads back, by another's reader, as a link that opens the same plan; and its
// picture has as many black modules as the symbol.
func TestTheCodeOpensThePlan(t *testing.T) {
	for _, e := range example.All {
		p := named(t, e.Name)
		c := &Paper{Plan: p, Report: report.Build(p), Here: "https://tower.example/lift/", Now: time.Unix(0, 0)}
		symbol, err := qr.Encode(c.address(), qr.L)
		if err != nil {
			t.Fatal(err)
		}
		const scale = 5
		side := (symbol.Size + 2*quiet) * scale
		picture := img.NewGray(img.Rect(0, 0, side, side))
		for y := range side {
			for x := range side {
				if !symbol.Black(x/scale-quiet, y/scale-quiet) {
					picture.SetGray(x, y, color.Gray{Y: 255})
				}
			}
		}
		bits, err := gozxing.NewBinaryBitmapFromImage(picture)
		if err != nil {
			t.Fatal(err)
		}
		read, err := qrcode.NewQRCodeReader().Decode(bits, map[gozxing.DecodeHintType]any{gozxing.DecodeHintType_PURE_BARCODE: true})
		if err != nil {
			t.Errorf("%s: %v", e.Name, err)
			continue
		}
		_, fragment, _ := strings.Cut(read.GetText(), "#")
		if back, err := link.Decode(fragment); err != nil || !plan.Same(back, p) {
			t.Errorf("%s: the code reads %q, %v", e.Name, read.GetText(), err)
		}
	}
}

// The end of the sheet names the link, the digest and who signs; it comes when the plan has rested.
func TestPaper(t *testing.T) {
	p := newPage(talk.Live)
	plan := named(t, "beam-pair")
	p.Hear(Message{Here: "https://tower.example/lift/"})
	p.ask(plan)
	p.settle()
	piece := p.pieces[talk.Paper]
	c := &Paper{Plan: plan}
	for _, want := range []string{"https://tower.example/lift/#p1.", "Checked by", c.digest(), `class="qr"`} {
		if !strings.Contains(piece, want) {
			t.Errorf("the end of the sheet does not hold %q", want)
		}
	}
	other := plan
	other.Title += " "
	if d := (&Paper{Plan: other}).digest(); d == c.digest() || len(d) != 19 {
		t.Errorf("the digest of another plan is %q", d)
	}
}
