package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"regexp"
	"strconv"
)

// icons draws icon.svg as the bitmaps that a web app manifest names. A maskable one is cut to any shape within
// a circle of 40 % of its width (W3C, Web Application Manifest, "icon masks and safe zone"), so that its ground
// fills the square and the rest is smaller.
func icons(svg []byte) (map[string][]byte, error) {
	shapes, err := drawing(svg)
	if err != nil {
		return nil, fmt.Errorf("icon.svg: %w", err)
	}
	out := map[string][]byte{}
	for name, how := range map[string]struct {
		size int
		mask bool
	}{"icon-192.png": {192, false}, "icon-512.png": {512, false}, "icon-mask-512.png": {512, true}} {
		var b bytes.Buffer
		if err := png.Encode(&b, dots(shapes, how.size, how.mask)); err != nil {
			return nil, err
		}
		out[name] = b.Bytes()
	}
	return out, nil
}

const (
	viewBox  = 32.0
	safeZone = 0.8 // the drawing reaches 15.4 of 16 from the middle: 0.8 of that is within the circle
)

// shape is an ink and how far a point is outside of it, in units of the view box.
type shape struct {
	ink     color.NRGBA
	outside func(x, y float64) float64
}

// drawing reads the few elements that the icon is made of: rectangles, and strokes with round ends.
func drawing(svg []byte) ([]shape, error) {
	var shapes []shape
	var stroke color.NRGBA
	var width float64
	for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
		token, err := d.Token()
		if err == io.EOF {
			return shapes, nil
		}
		if err != nil {
			return nil, err
		}
		e, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		text := map[string]string{}
		for _, a := range e.Attr {
			text[a.Name.Local] = a.Value
		}
		number := func(key string) float64 { x, _ := strconv.ParseFloat(text[key], 64); return x }
		switch e.Name.Local {
		case "svg":
			if text["viewBox"] != "0 0 32 32" {
				return nil, fmt.Errorf("its view box is %q", text["viewBox"])
			}
		case "g":
			stroke, width = ink(text["stroke"]), number("stroke-width")
		case "rect":
			shapes = append(shapes, rectangle(ink(text["fill"]), number("x"), number("y"), number("width"), number("height"), number("rx")))
		case "path":
			lines, err := strokes(text["d"], stroke, width)
			if err != nil {
				return nil, err
			}
			shapes = append(shapes, lines...)
		default:
			return nil, fmt.Errorf("<%s> is not drawn", e.Name.Local)
		}
	}
}

// ink reads #rrggbb.
func ink(s string) color.NRGBA {
	var c color.NRGBA
	fmt.Sscanf(s, "#%02x%02x%02x", &c.R, &c.G, &c.B)
	c.A = 255
	return c
}

func rectangle(c color.NRGBA, x, y, w, h, r float64) shape {
	return shape{c, func(px, py float64) float64 {
		dx, dy := math.Abs(px-x-w/2)-w/2+r, math.Abs(py-y-h/2)-h/2+r
		return math.Hypot(math.Max(dx, 0), math.Max(dy, 0)) + math.Min(math.Max(dx, dy), 0) - r
	}}
}

var pathPart = regexp.MustCompile(`[a-zA-Z]|-?\d+(\.\d+)?`)

// strokes reads a path of M x y, h x and l x y.
func strokes(d string, c color.NRGBA, width float64) (list []shape, err error) {
	parts := pathPart.FindAllString(d, -1)
	at := 0
	next := func() float64 {
		if at++; at >= len(parts) {
			err = fmt.Errorf("the path %q ends too early", d)
			return 0
		}
		x, wrong := strconv.ParseFloat(parts[at], 64)
		if wrong != nil {
			err = wrong
		}
		return x
	}
	x, y := 0.0, 0.0
	for ; at < len(parts) && err == nil; at++ {
		x0, y0 := x, y
		switch parts[at] {
		case "M":
			x, y = next(), next()
			continue
		case "h":
			x += next()
		case "l":
			x, y = x+next(), y+next()
		default:
			return nil, fmt.Errorf("%q in the path %q is not drawn", parts[at], d)
		}
		list = append(list, line(c, x0, y0, x, y, width))
	}
	return list, err
}

func line(c color.NRGBA, x0, y0, x1, y1, width float64) shape {
	dx, dy := x1-x0, y1-y0
	return shape{c, func(x, y float64) float64 {
		t := math.Min(math.Max(((x-x0)*dx+(y-y0)*dy)/(dx*dx+dy*dy), 0), 1)
		return math.Hypot(x-x0-t*dx, y-y0-t*dy) - width/2
	}}
}

// paint draws the shapes over one another; the edge of each is a pixel wide.
func dots(shapes []shape, size int, mask bool) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, size, size))
	scale := float64(size) / viewBox
	for py := range size {
		for px := range size {
			x, y := (float64(px)+0.5)/scale, (float64(py)+0.5)/scale
			grain := 1 / scale
			if mask {
				x, y, grain = (x-viewBox/2)/safeZone+viewBox/2, (y-viewBox/2)/safeZone+viewBox/2, grain/safeZone
			}
			var c color.NRGBA
			for i, s := range shapes {
				cover := math.Min(math.Max(0.5-s.outside(x, y)/grain, 0), 1)
				if mask && i == 0 {
					cover = 1 // the ground
				}
				c = over(c, s.ink, cover)
			}
			img.SetNRGBA(px, py, c)
		}
	}
	return img
}

// over lays an ink that covers a part of a pixel over what is there.
func over(under, ink color.NRGBA, cover float64) color.NRGBA {
	a := float64(under.A) / 255
	alpha := cover + a*(1-cover)
	if alpha == 0 {
		return color.NRGBA{}
	}
	mix := func(u, i uint8) uint8 {
		return uint8(math.Round((float64(i)*cover + float64(u)*a*(1-cover)) / alpha))
	}
	return color.NRGBA{mix(under.R, ink.R), mix(under.G, ink.G), mix(under.B, ink.B), uint8(math.Round(255 * alpha))}
}
