package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"strings"
	"testing"
)

func drawn(t *testing.T) map[string]image.Image {
	t.Helper()
	svg, err := os.ReadFile("../../public/icon.svg")
	if err != nil {
		t.Fatal(err)
	}
	files, err := icons(svg)
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]image.Image{}
	for name, data := range files {
		if out[name], err = png.Decode(bytes.NewReader(data)); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// Points of the picture by its coordinates in icon.svg: corner, ground, payload, a rotor, a cable at half its height.
func TestIconsAreThePicture(t *testing.T) {
	ground, blue := color.NRGBA{0xf7, 0xf5, 0xef, 255}, color.NRGBA{0x20, 0x40, 0x6b, 255}
	for name, img := range drawn(t) {
		size, mask := img.Bounds().Dx(), strings.Contains(name, "mask")
		if img.Bounds().Dy() != size || !strings.Contains(name, fmt.Sprint(size)) {
			t.Errorf("%s is %v", name, img.Bounds())
		}
		for _, p := range []struct {
			x, y float64
			want color.NRGBA
		}{{16, 16, ground}, {16, 23.5, blue}, {5, 8, blue}, {10, 14.5, blue}, {22, 14.5, blue}, {16, 8, ground}} {
			x, y := p.x, p.y
			if mask {
				x, y = (x-16)*safeZone+16, (y-16)*safeZone+16
			}
			at := color.NRGBAModel.Convert(img.At(int(x/32*float64(size)), int(y/32*float64(size))))
			if at != p.want {
				t.Errorf("%s has %v at %v, %v, want %v", name, at, p.x, p.y, p.want)
			}
		}
		corner := color.NRGBAModel.Convert(img.At(0, 0)).(color.NRGBA)
		if mask && corner != ground || !mask && corner.A != 0 {
			t.Errorf("the corner of %s is %v", name, corner)
		}
	}
}

// A mask may cut off everything outside a circle of 40 % of the width.
func TestTheMaskCutsOnlyGround(t *testing.T) {
	img := drawn(t)["icon-mask-512.png"]
	for y := range 512 {
		for x := range 512 {
			if c := color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA); c.R < 0xf0 && math.Hypot(float64(x)-255.5, float64(y)-255.5) > 0.4*512 {
				t.Fatalf("%v at %d, %d would be cut off", c, x, y)
			}
		}
	}
}

func TestOtherPicturesAreRefused(t *testing.T) {
	for _, svg := range []string{`<svg viewBox="0 0 32 32"><circle r="3"/></svg>`, `<svg viewBox="0 0 16 16"/>`, `<svg viewBox="0 0 32 32"><path d="M1 2c3 4"/></svg>`,
		`<svg viewBox="0 0 32 32"><path d="M1"/></svg>`, `<svg`} {
		if _, err := icons([]byte(svg)); err == nil {
			t.Errorf("%s was drawn", svg)
		}
	}
}

// The manifest names icons that are there, in their sizes, and starts where the page is.
func TestManifest(t *testing.T) {
	text, err := os.ReadFile("../../public/manifest.webmanifest")
	if err != nil {
		t.Fatal(err)
	}
	var m struct {
		Name      string `json:"name"`
		StartURL  string `json:"start_url"`
		Scope     string `json:"scope"`
		ShortName string `json:"short_name"`
		Icons     []struct{ Src, Sizes, Type, Purpose string }
	}
	if err := json.Unmarshal(text, &m); err != nil || m.Name == "" || m.ShortName == "" || m.StartURL != "./" || m.Scope != "./" {
		t.Fatalf("%+v, %v", m, err)
	}
	there, maskable := drawn(t), 0
	for _, i := range m.Icons {
		if i.Src == "icon.svg" {
			continue
		}
		img := there[i.Src]
		if img == nil || i.Sizes != fmt.Sprintf("%[1]dx%[1]d", img.Bounds().Dx()) || i.Type != "image/png" {
			t.Errorf("icon %+v", i)
		}
		if i.Purpose == "maskable" {
			maskable++
		}
	}
	if len(m.Icons) != len(there)+1 || maskable != 1 {
		t.Errorf("%d icons, %d of them maskable", len(m.Icons), maskable)
	}
}
